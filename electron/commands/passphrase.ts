/** The passphrase for a command: from the environment or standard input, never from an argument that others can see. */
import type { Readable } from 'node:stream';

/** Longest passphrase that is read, in characters; the contract has the same limit. */
const LONGEST = 400;

/**
 * @returns the passphrase, or null when there is none
 * @param input read only when FAIRHAND_PASSPHRASE is not set; its first line counts
 */
export async function readPassphrase(
  env: Readonly<Record<string, string | undefined>>,
  input: Readable & { isTTY?: boolean },
): Promise<string | null> {
  const given = env['FAIRHAND_PASSPHRASE'];
  if (given) return given;
  if (input.isTTY) process.stderr.write('Passphrase: ');
  let text = '';
  for await (const part of input) {
    text += String(part);
    if (text.includes('\n') || text.length > LONGEST) break;
  }
  const line = text.split(/\r?\n/)[0] ?? '';
  return line === '' || line.length > LONGEST ? null : line;
}
