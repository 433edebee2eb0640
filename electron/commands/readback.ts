/** `fairhand readback`: scores one blind reading of a text without a window. */
import { parseArgs } from 'node:util';
import type { ReadbackScore } from '../../renderer/logic/readback/score.ts';
import { scoreReadback } from '../../renderer/logic/readback/score.ts';
import type { CommandAnswer } from './answer.ts';
import { optionProblem, wrongUse } from './answer.ts';

const usage = 'Use: fairhand readback --text WHAT-WAS-WRITTEN --read WHAT-WAS-READ [--json]';

/** A page of writing is a few thousand characters; the comparison grows with the product of both lengths. */
const longest = 20_000;

const percent = (share: number | null): string => (share === null ? 'not known' : `${(share * 100).toFixed(1)} %`);

function inWords(score: ReadbackScore): string {
  const { low, high } = score.wilson95;
  return [
    `Words right    ${score.wordsRight} of ${score.wordsIntended}`,
    `Word accuracy  ${percent(score.wordAccuracy)} (95 %: ${percent(low)} to ${percent(high)})`,
    `Letter errors  ${percent(score.cerLettersOnly)} (with spaces ${percent(score.cerWithSpaces)})`,
    `Lost or added gaps  ${score.spaceErrors}`,
    ...score.confusions.map(({ intended, read, count }) => `  ${intended} read as ${read}: ${count}`),
  ].join('\n');
}

/** Runs `readback` with the arguments after the command's name. */
export async function readbackCommand(argv: readonly string[]): Promise<CommandAnswer> {
  let values: { text?: string | undefined; read?: string | undefined };
  try {
    const text = { type: 'string' } as const;
    // `--text -x` is a text that begins with a dash, as handwriting may.
    const joined = argv.flatMap((arg, at) => {
      const before = argv[at - 1];
      if (before === '--text' || before === '--read') return [];
      return arg === '--text' || arg === '--read' ? (at + 1 < argv.length ? [`${arg}=${argv[at + 1]}`] : [arg]) : [arg];
    });
    ({ values } = parseArgs({ args: joined, options: { text, read: text, json: { type: 'boolean' } }, strict: true }));
  } catch (error) {
    return wrongUse(`${optionProblem(error)} ${usage}`);
  }
  const { text, read } = values;
  if (text === undefined) return wrongUse(`The text that was written is missing. ${usage}`);
  if (read === undefined) return wrongUse(`What the reader read is missing. ${usage}`);
  if (text.length > longest || read.length > longest) {
    return wrongUse(`A text here has at most ${longest} characters. Give one page at a time.`);
  }
  const score = scoreReadback(text, read);
  return { exit: 0, json: score, text: inWords(score) };
}
