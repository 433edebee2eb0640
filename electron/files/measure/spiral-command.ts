/** `fairhand spiral PAGE --dpi N [--seconds S]`: the wobble of a spiral drawn on paper. */
import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { measureSpiral, type SpiralResult } from '../../../renderer/measure/index.ts';
import { sentenceFor } from '../../contract/messages.ts';
import { DecodeError } from '../decode/decode-error.ts';
import { decodePage } from '../decode/decode.ts';
import type { CommandOutcome } from './measure-command.ts';

const USAGE = 'Usage: spiral PAGE --dpi N [--seconds S].';
const HIGHEST_DPI = 2400;

const shown = (value: number | null, unit: string): string =>
  value === null ? 'not known' : `${String(Number(value.toPrecision(3)))}${unit}`;

function readable(result: SpiralResult): string {
  return [
    `Turns ${shown(result.turns, '')}.`,
    `Distance from an even spiral: ${shown(result.radialRmsMm, ' mm')}, ${shown(result.radialRmsPercent, ' % of the distance between turns')}.`,
    `Swings a turn ${shown(result.swingsPerTurn, '')}, a cm ${shown(result.swingsPerCm, '')}, a second ${shown(result.frequencyHz, '')}.`,
    ...result.warnings.map(({ message }) => `Note: ${message}`),
  ].join('\n');
}

/** Never throws: wrong use and unreadable input are exit 2 with one sentence. @param argv arguments after the name */
export async function spiralCommand(argv: readonly string[]): Promise<CommandOutcome> {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: { dpi: { type: 'string' }, seconds: { type: 'string' }, json: { type: 'boolean' } },
    });
  } catch (error) {
    const first = (error instanceof Error ? error.message : '').split(/[.\n]/)[0] ?? '';
    return { exit: 2, error: `${first || 'An option is not known'}. ${USAGE}` };
  }
  const [page, ...more] = parsed.positionals;
  if (page === undefined || more.length > 0) return { exit: 2, error: `One page, please. ${USAGE}` };
  const dpi = Number(parsed.values.dpi);
  if (!(dpi > 0 && dpi <= HIGHEST_DPI))
    return { exit: 2, error: `--dpi must be a number above 0 and at most ${HIGHEST_DPI}. ${USAGE}` };
  const seconds = parsed.values.seconds === undefined ? null : Number(parsed.values.seconds);
  if (seconds !== null && !(seconds > 0 && Number.isFinite(seconds)))
    return { exit: 2, error: `--seconds must be a number above 0. ${USAGE}` };
  try {
    const { gray } = await decodePage(await readFile(page));
    const result = measureSpiral(gray, dpi / 25.4, seconds);
    return { exit: 0, json: result, text: readable(result) };
  } catch (error) {
    if (error instanceof DecodeError) return { exit: 2, error: sentenceFor(error.code) };
    if (error instanceof Error && 'code' in error)
      return { exit: 2, error: 'The page cannot be read. Check that the file is there and may be opened.' };
    return {
      exit: 1,
      error: 'Something went wrong inside Fairhand while it measured this spiral. Nothing was changed.',
    };
  }
}
