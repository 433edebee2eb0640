/**
 * `npm run accuracy -- --people N [--seed S]`: N pages drawn like those that people write (tests/measure/pages/people-specs.ts):
 * uneven letters, three kinds of gap, marks apart, slips, faint pencil, notebooks. Words without and with the text, height and
 * unevenness against what was drawn.
 */
import { measurePage } from '../../renderer/measure/measure-page.ts';
import type { PageResult } from '../../renderer/measure/types.ts';
import type { MeasureOptions } from '../../renderer/measure/measure-options.ts';
import { median } from '../../renderer/statistics/order-statistics.ts';
import { makePage } from '../../tests/measure/pages/generate.ts';
import { peopleSpecs } from '../../tests/measure/pages/people-specs.ts';
import { placedLetters } from './accuracy-letters.ts';
import { Tally, wordsIn } from './accuracy-pages.ts';

const valueOf = (result: PageResult, code: string): number =>
  result.measures.find((measure) => measure.code === code)?.value ?? Infinity;

/** Median and largest of absolute errors, and how many lie within a limit. */
function spreadOf(name: string, errors: readonly number[], limit: number, unit: string): string {
  const sizes = errors.map(Math.abs);
  const within = sizes.filter((error) => error <= limit).length;
  return `${name}: median error ${median(sizes)!.toFixed(1)} ${unit}, largest ${Math.max(...sizes).toFixed(1)}, within ${limit} ${unit} ${within} of ${errors.length}`;
}

/** Prints a page a line and the sums; answers the exit code. */
export async function judgePeople(seed: number, count: number): Promise<number> {
  const [plain, known] = [new Tally(), new Tally()];
  const errors = { height: [] as number[], knownHeight: [] as number[], cv: [] as number[], knownCv: [] as number[] };
  let accepted = 0;
  let [placed, letters] = [0, 0];
  for (const spec of peopleSpecs(seed, count)) {
    const { truth, gray, width, height } = await makePage(spec);
    const scale = { pxPerMm: spec.picture.dpi / 25.4, source: 'dpi' as const };
    const measured = (more: Partial<MeasureOptions>): PageResult =>
      measurePage({ width, height, data: gray }, { scale, ...more });
    const text = truth.lines.map(({ words }) => words.map((word) => word.text).join(' ')).join('\n');
    const [alone, laid] = [measured({}), measured({ text })];
    const words = truth.lines.reduce((sum, line) => sum + line.words.length, 0);
    plain.add(wordsIn(alone), words, alone.warnings.length > 0);
    known.add(wordsIn(laid), words, laid.warnings.length > 0);
    if (laid.textFits) accepted += 1;
    const own = placedLetters(spec, laid);
    [placed, letters] = [placed + own.placed, letters + own.letters];
    const cv = 100 * spec.people!.letterCv;
    const off = (result: PageResult): number => 100 * (valueOf(result, 'x-height') / truth.xHeightMm - 1);
    errors.height.push(off(alone));
    errors.knownHeight.push(off(laid));
    errors.cv.push(valueOf(alone, 'x-height-cv') - cv);
    errors.knownCv.push(valueOf(laid, 'x-height-cv') - cv);
    const said = alone.warnings.map(({ code }) => code).join(' ');
    console.log(
      `${spec.name} ${spec.writing.font} ${truth.xHeightMm.toFixed(2)} mm: ${truth.lines.length} lines, ${alone.lines.length} found; ${words} words, ${wordsIn(alone)} found, ${wordsIn(laid)} with the text${laid.textFits ? '' : ' (refused)'}; height ${off(alone).toFixed(1)} %, ${off(laid).toFixed(1)} %; CV ${cv.toFixed(0)}, ${valueOf(alone, 'x-height-cv').toFixed(1)}${said ? ` [${said}]` : ''}`,
    );
  }
  console.log(
    `\nWithout the text: ${plain.toString()}.\nWith the text: ${known.toString()}; it was taken on ${accepted} of ${count}.`,
  );
  console.log(`Letters that should close, found where they were drawn: ${placed} of ${letters}.`);
  console.log(spreadOf('Height of small letters', errors.height, 8, '%'));
  console.log(spreadOf('The same with the text', errors.knownHeight, 8, '%'));
  console.log(spreadOf('Unevenness of height', errors.cv, 3, 'points'));
  console.log(spreadOf('The same with the text', errors.knownCv, 3, 'points'));
  return 0;
}
