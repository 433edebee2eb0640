/** `fairhand change`: JSON lines on standard input, one answer a line, each printed as soon as it is known. */
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import { parseArgs } from 'node:util';
import { rulesCurrent } from '../../db/rules/index.ts';
import {
  changeLimits,
  examineChange,
  fatigueOnset,
  slopeInterval,
  smallestChange,
  type ChangeLimits,
} from '../../renderer/change/index.ts';
import type { CommandAnswer } from './answer.ts';
import { optionProblem, wrongUse } from './answer.ts';
import { readChangeLine, type ChangeLine } from './change-input.ts';

const usage = 'Use: fairhand change < QUESTIONS, one JSON object a line';

function answerTo(line: ChangeLine, limits: ChangeLimits): object {
  if (line.ask === 'onset') return fatigueOnset(line.bouts, limits);
  if (line.ask === 'slopes') return slopeInterval(line.slopes);
  if (line.ask === 'smallest') return smallestChange(line.smallest, limits);
  return examineChange(line, limits).answer;
}

/** Four decimals: finer than anything that is said, free of floating-point tails. */
const rounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Math.round(value * 1e4) / 1e4 : value;

/**
 * Runs `change` with the arguments after the command's name.
 * @param streams for tests; standard input and output otherwise
 */
export async function changeCommand(
  argv: readonly string[],
  { input = process.stdin, output = process.stdout }: { input?: Readable; output?: Writable } = {},
): Promise<CommandAnswer> {
  try {
    parseArgs({ args: [...argv], options: { json: { type: 'boolean' } }, strict: true });
  } catch (error) {
    return wrongUse(`${optionProblem(error)} ${usage}`);
  }
  const limits = changeLimits(rulesCurrent().thresholds);
  // A reader that goes away in the middle ends the work without a complaint.
  let open = true;
  output.on('error', () => (open = false));
  let at = 0;
  for await (const text of createInterface({ input, crlfDelay: Infinity })) {
    at += 1;
    const line = text.replace(/^\uFEFF/, '').trim();
    if (line === '') continue;
    const read = readChangeLine(line);
    if ('problem' in read) return wrongUse(`Line ${at} cannot be read: ${read.problem}. ${after(at)}`);
    const room = output.write(`${JSON.stringify(answerTo(read.value, limits), rounded)}\n`);
    if (!room && open) await Promise.race([once(output, 'drain'), once(output, 'close')]).catch(() => undefined);
    if (!open) break;
  }
  return { exit: 0, written: true };
}

const after = (at: number): string =>
  at > 1 ? 'The answers to the lines before it stand; correct it and send it again with those after it.' : usage;
