/** See run.js. */
interface Options {
  env?: NodeJS.ProcessEnv;
  cwd?: string;
}
export function quietly(
  program: string,
  args: readonly string[],
  options?: Options & { timeout?: number },
): Promise<{ code: number; output: string }>;
export function openly(program: string, args: readonly string[], options?: Options): Promise<number>;
export function npm(args: readonly string[]): [program: string, args: string[]];
