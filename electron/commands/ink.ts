/** `fairhand ink`: measures pen ink from an InkML file, without a window. */
import { readFile, stat, writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import sharp from 'sharp';
import type { InkDocument, InkPage, InkResult, InkTask } from '../../renderer/ink/index.ts';
import {
  drawInk,
  INK_LIMITS,
  INK_REFUSALS,
  INK_TASKS,
  InkRefusal,
  measureInk,
  readInkml,
} from '../../renderer/ink/index.ts';
import { answerOf } from '../files/measure/measure-command.ts';
import { measureInWorker } from '../files/measure/page-file.ts';
import type { CommandAnswer } from './answer.ts';
import { optionProblem, wrongUse } from './answer.ts';

const usage = `Use: fairhand ink FILE.inkml [--json] [--task ${INK_TASKS.join('|')}] [--text FILE] [--page OUT.png]`;

/** Wrong use: becomes exit 2 with its sentence. */
class WrongUse extends Error {}

interface InkArguments {
  file: string;
  task: InkTask | null;
  text: string | null;
  page: string | null;
}

function readArguments(argv: readonly string[]): InkArguments {
  let parsed;
  try {
    const text = { type: 'string' } as const;
    const options = { json: { type: 'boolean' }, task: text, text, page: text } as const;
    parsed = parseArgs({ args: [...argv], allowPositionals: true, options });
  } catch (error) {
    throw new WrongUse(`${optionProblem(error)} ${usage}`);
  }
  const { values, positionals } = parsed;
  const [file, ...more] = positionals;
  if (file === undefined) throw new WrongUse(`No ink file was named. ${usage}`);
  if (more.length > 0) throw new WrongUse(`One ink file at a time, please. ${usage}`);
  const task = values.task === undefined ? null : INK_TASKS.find((known) => known === values.task);
  if (task === undefined) throw new WrongUse(`There is no task ${JSON.stringify(values.task)}. ${usage}`);
  return { file, task, text: values.text ?? null, page: values.page ?? null };
}

async function readInput(file: string, what: string): Promise<Uint8Array> {
  let about;
  try {
    about = await stat(file);
  } catch {
    throw new WrongUse(`${what} cannot be read. Check that the file is there and may be opened.`);
  }
  if (!about.isFile()) throw new WrongUse(`${what} is not a file. Name a file and try again.`);
  if (about.size > INK_LIMITS.bytes) throw new WrongUse(INK_REFUSALS['file-too-large']);
  return readFile(file).catch(() => {
    throw new WrongUse(`${what} cannot be read. Check that the file may be opened.`);
  });
}

async function savePicture(page: InkPage | null, file: string): Promise<void> {
  if (!page) throw new WrongUse('This ink has no scale or no strokes, so no page can be drawn. Nothing was written.');
  const raw = { width: page.width, height: page.height, channels: 1 as const };
  const png = await sharp(page.data, { raw }).withMetadata({ density: page.dpi }).png().toBuffer();
  await writeFile(file, png).catch(() => {
    throw new WrongUse('The page cannot be written there. Choose another place.');
  });
}

/** The drawn ink, measured as a scanned page is; null where nothing can be drawn. */
async function measuredPage(page: InkPage | null, text: string | null): Promise<Record<string, unknown> | null> {
  if (!page) return null;
  const { width, height, data, dpi } = page;
  const scale = { pxPerMm: dpi / 25.4, source: 'dpi' as const };
  const { result } = await measureInWorker(
    data,
    text === null ? { scale } : { scale, text },
    {},
    { rawSize: { width, height } },
  );
  return answerOf(result);
}

const shortly = (value: number | null): string => (value === null ? 'not known' : String(Number(value.toPrecision(4))));

/** The answer for a person at a terminal. */
function inWords({ source, quality, measures, tremor, warnings }: InkResult): string {
  const rows = measures.map(({ code, value, unit, low, high, reliable, why }) => {
    const interval = low === null || high === null ? '' : ` (95 %: ${shortly(low)} to ${shortly(high)})`;
    const doubt = reliable ? '' : ` [${value === null ? 'not told' : 'not reliable'}: ${why}]`;
    return `${code.padEnd(20)} ${shortly(value)}${value === null ? '' : ` ${unit}`}${interval}${doubt}`;
  });
  const shaking =
    tremor.reason === null
      ? `Rhythm at ${shortly(tremor.frequencyHz)} Hz, ${shortly(tremor.amplitudeRmsMm)} mm rms.`
      : `No rhythm reported (${tremor.reason}).`;
  return [
    `${source.contacts} contacts, ${source.samples} samples, task ${source.task}; signal ${quality.verdict}, ${shortly(quality.rateHz)} samples a second.`,
    ...rows,
    shaking,
    ...warnings.map(({ message }) => `Note: ${message}`),
  ].join('\n');
}

/**
 * Runs `ink` with the arguments after the command's name.
 * Wrong use and files that are refused are exit 2 with one sentence; nothing is kept of them.
 */
export async function inkCommand(argv: readonly string[]): Promise<CommandAnswer> {
  try {
    const { file, task, text: textFile, page: picture } = readArguments(argv);
    const document: InkDocument = readInkml(await readInput(file, 'The ink file'));
    const text =
      textFile === null ? document.text : new TextDecoder().decode(await readInput(textFile, 'The text file'));
    const drawn = drawInk(document);
    if (picture !== null) await savePicture(drawn, picture);
    const page = await measuredPage(drawn, text);
    const boxes = (page?.['lines'] as { words: { box: never }[] }[] | undefined)?.flatMap(({ words }) =>
      words.map(({ box }) => box),
    );
    const result = measureInk(document, {
      ...(task && { task }),
      ...(text !== null && { text }),
      page: drawn && { boxes: boxes ?? [], origin: drawn.origin },
    });
    const { source, quality, measures, tremor, stops, pauses, words, warnings } = result;
    return {
      exit: 0,
      json: { source, quality, measures, tremor, stops, pauses, words, page, warnings },
      text: inWords(result),
    };
  } catch (error) {
    if (error instanceof WrongUse || error instanceof InkRefusal) return wrongUse(error.message);
    throw error;
  }
}
