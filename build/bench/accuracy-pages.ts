/**
 * Pages that people wrote, measured where they lie: truth.tsv names each page (columns page, text, wordsByEye,
 * wordsOfText, linesByEye; others are passed over), TEXT.txt is what was to be written, PAGE.png or another picture the
 * page. Says how many words are found without and with the text, and whether other pages' texts are refused.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decodePage } from '../../electron/files/decode/decode.ts';
import { measurePage } from '../../renderer/measure/measure-page.ts';
import type { PageResult } from '../../renderer/measure/types.ts';
import type { MeasureOptions } from '../../renderer/measure/measure-options.ts';

interface Row {
  page: string;
  text: string;
  words: number;
}

const PICTURES = ['.png', '.jpg', '.jpeg', '.tif', '.tiff', '.webp'];

function rowsOf(folder: string): Row[] {
  const [head = '', ...lines] = readFileSync(join(folder, 'truth.tsv'), 'utf8').trim().split(/\r?\n/);
  const names = head.split('\t');
  return lines.map((line) => {
    const cells = line.split('\t');
    const cell = (name: string): string => cells[names.indexOf(name)] ?? '';
    return { page: cell('page'), text: cell('text'), words: Number(cell('wordsByEye') || cell('wordsOfText')) };
  });
}

/** Words of all lines. */
export const wordsIn = (result: PageResult): number => result.lines.reduce((sum, line) => sum + line.words.length, 0);

/** Sum of errors, pages within one word, pages further off than a tenth without a warning. */
export class Tally {
  private off = 0;
  private words = 0;
  private near = 0;
  private silent = 0;
  private pages = 0;
  add(found: number, truth: number, isWarned: boolean): void {
    this.pages += 1;
    this.words += truth;
    this.off += Math.abs(found - truth);
    if (Math.abs(found - truth) <= 1) this.near += 1;
    if (Math.abs(found - truth) > 0.1 * truth && !isWarned) this.silent += 1;
  }
  toString(): string {
    const percent = ((100 * this.off) / Math.max(1, this.words)).toFixed(1);
    return `${this.off} of ${this.words} words off (${percent} %), ${this.near} of ${this.pages} pages within one word, ${this.silent} off by over a tenth without a warning`;
  }
}

/** Prints a page a line and the sums; answers the exit code. */
export async function judgeFolder(folder: string, dpi: number, wanted: readonly string[]): Promise<number> {
  if (!existsSync(join(folder, 'truth.tsv'))) {
    console.error('That folder has no truth.tsv. Name the folder that holds it beside the pages.');
    return 2;
  }
  const rows = rowsOf(folder).filter(({ page }) => wanted.length === 0 || wanted.some((part) => page.includes(part)));
  const texts = new Map<string, string>();
  for (const { text } of rows) {
    const file = join(folder, `${text}.txt`);
    if (text !== '' && !texts.has(text) && existsSync(file)) texts.set(text, readFileSync(file, 'utf8').trim());
  }
  const [plain, known] = [new Tally(), new Tally()];
  let [accepted, refused, withText, others] = [0, 0, 0, 0];
  for (const { page, text, words } of rows) {
    const file = PICTURES.map((end) => join(folder, page + end)).find((path) => existsSync(path));
    if (file === undefined) {
      console.log(`${page}: no picture beside truth.tsv.`);
      continue;
    }
    const { gray } = await decodePage(readFileSync(file));
    const measured = (more: Partial<MeasureOptions>): PageResult =>
      measurePage(gray, { scale: { pxPerMm: dpi / 25.4, source: 'dpi' }, ...more });
    const alone = measured({});
    plain.add(wordsIn(alone), words, alone.warnings.length > 0);
    const own = texts.get(text);
    let line = `${page}: ${words} words by eye, ${wordsIn(alone)} found`;
    if (own !== undefined) {
      const laid = measured({ text: own });
      known.add(wordsIn(laid), words, laid.warnings.length > 0);
      withText += 1;
      if (laid.textFits) accepted += 1;
      line += `, ${wordsIn(laid)} with the text${laid.textFits ? '' : ' (refused)'}`;
      // The longest other text: a short one is refused by its length alone.
      const other = [...texts].filter(([name]) => name !== text).sort((a, b) => b[1].length - a[1].length)[0];
      if (other) {
        others += 1;
        if (!measured({ text: other[1] }).textFits) refused += 1;
        else line += `, also takes ${other[0]}`;
      }
    }
    const said = alone.warnings.map(({ code }) => code).join(' ');
    console.log(said === '' ? line : `${line} [${said}]`);
  }
  console.log(`\nWithout the text: ${plain.toString()}.`);
  if (withText > 0) {
    console.log(`With the text: ${known.toString()}.`);
    console.log(
      `The right text was taken on ${accepted} of ${withText} pages, another refused on ${refused} of ${others}.`,
    );
  }
  return 0;
}
