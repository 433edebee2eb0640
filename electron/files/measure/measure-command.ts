import { readFile, stat, writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import type { MeasureOptions, PageResult } from '../../../renderer/measure/index.ts';
import { rulesCurrent } from '../../../db/rules/index.ts';
import { withHand } from '../../../renderer/logic/record/hand-ranges.ts';
import { sentenceFor } from '../../contract/messages.ts';
import { DecodeError } from '../decode/decode-error.ts';
import { DECODE_LIMITS } from '../decode/decode.ts';
import { measureInWorker } from './page-file.ts';
import type { PageJobExtras, WorkerHooks } from './page-file.ts';
import { overlayPng } from './overlay-picture.ts';

export interface CommandOutcome {
  exit: 0 | 1 | 2;
  /** The answer as JSON. */
  json?: unknown;
  /** The answer as readable text. */
  text?: string;
  /** One sentence for stderr. */
  error?: string;
}

const USAGE = 'Usage: measure PAGE --dpi N [--text FILE] [--overlay OUT.png] [--gray --width W --height H].';
const HIGHEST_DPI = 2400;

/** Wrong use: becomes exit 2 with its sentence. */
class WrongUse extends Error {}

interface MeasureArguments {
  page: string;
  dpi: number | null;
  text: string | null;
  overlay: string | null;
  rawSize: { width: number; height: number } | null;
}

function wholeNumber(value: string | undefined, name: string): number {
  const number = Number(value);
  if (value === undefined || !Number.isInteger(number) || number < 1)
    throw new WrongUse(`--gray needs --width and --height as whole numbers of pixels; ${name} is missing or wrong.`);
  return number;
}

function readArguments(argv: readonly string[]): MeasureArguments {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        dpi: { type: 'string' },
        text: { type: 'string' },
        overlay: { type: 'string' },
        gray: { type: 'boolean' },
        width: { type: 'string' },
        height: { type: 'string' },
        json: { type: 'boolean' },
      },
    });
  } catch (error) {
    const first = (error instanceof Error ? error.message : '').split(/[.\n]/)[0] ?? '';
    throw new WrongUse(`${first || 'An option is not known'}. ${USAGE}`);
  }
  const { values, positionals } = parsed;
  const [page, ...more] = positionals;
  if (page === undefined) throw new WrongUse(`No page was named. ${USAGE}`);
  if (more.length > 0) throw new WrongUse(`One page at a time, please. ${USAGE}`);
  const dpi = values.dpi === undefined ? null : Number(values.dpi);
  if (dpi !== null && !(dpi > 0 && dpi <= HIGHEST_DPI))
    throw new WrongUse(`--dpi must be a number above 0 and at most ${HIGHEST_DPI}; "${values.dpi}" is not.`);
  if (!values.gray && (values.width !== undefined || values.height !== undefined))
    throw new WrongUse('--width and --height go with --gray only.');
  const rawSize = values.gray
    ? { width: wholeNumber(values.width, '--width'), height: wholeNumber(values.height, '--height') }
    : null;
  return { page, dpi, text: values.text ?? null, overlay: values.overlay ?? null, rawSize };
}

async function readInput(file: string, what: string): Promise<Uint8Array> {
  try {
    const about = await stat(file);
    if (!about.isFile()) throw new WrongUse(`${what} is not a file. Name a file and try again.`);
    if (about.size > DECODE_LIMITS.maxBytes) throw new WrongUse(sentenceFor('too-large'));
    return await readFile(file);
  } catch (error) {
    if (error instanceof WrongUse) throw error;
    throw new WrongUse(`${what} cannot be read. Check that the file is there and may be opened.`);
  }
}

/** Before a client has repeats of their own: what ordinary writers vary from page to page. */
const withOthers = ({ measures }: PageResult) => withHand(measures, () => [], rulesCurrent().thresholds);

/** The documented answer: what COMMANDS names, nothing that only the overlay needs. */
export function answerOf(result: PageResult): Record<string, unknown> {
  const { widthMm, heightMm, dpi, rotationDeg } = result.page;
  return {
    page: { widthMm, heightMm, dpi, rotationDeg },
    lines: result.lines.map((line) => ({
      box: line.box,
      xHeightMm: line.xHeightMm,
      baselineAngleDeg: line.baselineAngleDeg,
      baselineRmsMm: line.baselineRmsMm,
      words: line.words.map(({ box, xHeightMm, gapBeforeMm, text, doubt }) => ({
        box,
        xHeightMm,
        gapBeforeMm,
        text,
        ...(doubt ? { doubt } : {}),
      })),
    })),
    measures: withOthers(result).map(({ code, value, unit, n, low, high, handLow, handHigh, method }) => ({
      code,
      value,
      unit,
      n,
      low,
      high,
      handLow,
      handHigh,
      method,
    })),
    warnings: result.warnings.map(({ code, message }) => ({ code, message })),
  };
}

const shortly = (value: number | null): string => (value === null ? 'not known' : String(Number(value.toPrecision(4))));

/** The answer for a person at a terminal. */
export function readableAnswer(result: PageResult): string {
  const words = result.lines.reduce((sum, line) => sum + line.words.length, 0);
  const between = (name: string, low: number | null, high: number | null): string =>
    low !== null && high !== null ? `, ${name} ${shortly(low)} to ${shortly(high)}` : '';
  const rows = withOthers(result).map(({ code, value, unit, n, low, high, handLow, handHigh }) => {
    const intervals = between('this page', low, high) + between('this hand', handLow, handHigh);
    return `${code.padEnd(24)} ${shortly(value)} ${value === null ? '' : unit}${intervals}, n ${n}`;
  });
  return [
    `Lines ${result.lines.length}, words ${words}.`,
    ...rows,
    ...result.warnings.map(({ message }) => `Note: ${message}`),
  ].join('\n');
}

/**
 * The `measure` command: reads a page file, measures it in a worker, answers as JSON and as text.
 * Never throws: wrong use and unreadable input are exit 2 with one sentence, a fault of ours is exit 1.
 * @param argv arguments after the command's name
 */
export async function measureCommand(argv: readonly string[], hooks: WorkerHooks = {}): Promise<CommandOutcome> {
  try {
    const { page, dpi, text, overlay, rawSize } = readArguments(argv);
    const bytes = await readInput(page, 'The page');
    const options: MeasureOptions = { scale: dpi === null ? null : { pxPerMm: dpi / 25.4, source: 'dpi' } };
    if (text !== null) options.text = new TextDecoder().decode(await readInput(text, 'The text file'));
    if (rawSize && bytes.length !== rawSize.width * rawSize.height)
      throw new WrongUse(
        `The gray page has ${bytes.length} bytes, not width times height. Check --width and --height.`,
      );
    const extras: PageJobExtras = { wantGray: overlay !== null };
    if (rawSize) extras.rawSize = rawSize;
    const measured = await measureInWorker(bytes, options, hooks, extras);
    if (overlay !== null && measured.gray) {
      const { width, height, gray } = measured;
      const png = await overlayPng(measured.result, { width, height, data: gray });
      await writeFile(overlay, png).catch(() => {
        throw new WrongUse('The overlay cannot be written there. Choose another place.');
      });
    }
    return { exit: 0, json: answerOf(measured.result), text: readableAnswer(measured.result) };
  } catch (error) {
    if (error instanceof WrongUse) return { exit: 2, error: error.message };
    if (error instanceof DecodeError) return { exit: 2, error: sentenceFor(error.code) };
    return { exit: 1, error: 'Something went wrong inside Fairhand while it measured this page. Nothing was changed.' };
  }
}
