/** `fairhand demo --out DIR`: the demo visit in the hidden window. */
import path from 'node:path';
import { parseArgs } from 'node:util';
import { runDemo } from '../browser/demo-run.ts';
import type { CommandAnswer } from './answer.ts';
import { optionProblem, wrongUse } from './answer.ts';

const usage = 'Use: fairhand demo --out DIR [--json]';

/** Runs `demo` with the arguments after the command's name. */
export async function demoCommand(argv: readonly string[]): Promise<CommandAnswer> {
  let out: string | undefined;
  try {
    const options = { out: { type: 'string' }, json: { type: 'boolean' } } as const;
    out = parseArgs({ args: [...argv], options, strict: true }).values.out;
  } catch (error) {
    return wrongUse(`${optionProblem(error)} ${usage}`);
  }
  if (!out) return wrongUse(`The folder for the pages and pictures is missing. ${usage}`);
  const tell = (line: string) => void (process.stderr.isTTY && process.stderr.write(`${line}\n`));
  const folder = path.resolve(out);
  const result = await runDemo(folder, tell);
  if ('error' in result) return wrongUse(result.error);
  const { files, problems } = result;
  const text = [...files.map((file) => path.join(folder, file)), ...problems].join('\n');
  if (problems.length > 0) return { exit: 1, error: problems.join(' ') };
  return { exit: 0, json: { out: folder, files }, text };
}
