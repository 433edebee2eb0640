/** See console.js. */
export function say(line: string): void;
export function during<T>(line: string, work: () => Promise<T>): Promise<T>;
