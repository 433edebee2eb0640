/**
 * Marks read on drawn logs: scans and photos turned, tilted, curled, shaded, noisy; pencils from faint to dark, pens,
 * strokes that slipped. DEVELOPERS.md gives the rates of these six pages; LOG_PAGES=40 runs about 15,000 circles.
 */
import { expect, test } from 'vitest';
import { logLayout, readPrintedPage } from '../../../renderer/measure/index.ts';
import { choiceFrom } from '../../../renderer/logic/sample/seeded-choice.ts';
import { type Drawn, logSvg, type Mark, phone, rastered, scanner, taken, type Taking } from './log-picture.ts';

const code = '10a1b2c3d4e509e901123456';
const pages = Number(process.env['LOG_PAGES'] ?? 6);
/** The limits of mark reading were set on seeds 1 to 40. */
const first = Number(process.env['LOG_FROM'] ?? 1);
const layout = logLayout(210, 297, false);
const fields = ['done', 'minutes', 'before', 'after', 'pain', 'felt'] as const;

/** Pencil of three strengths and a pen: gray and width in mm. */
const pens = [
  { name: 'faint pencil', gray: 185, pen: 0.5 },
  { name: 'pencil', gray: 130, pen: 0.5 },
  { name: 'dark pencil', gray: 80, pen: 0.7 },
  { name: 'pen', gray: 30, pen: 0.5 },
] as const;

interface Tally {
  circles: number;
  marked: number;
  falseFilled: number;
  falseEmpty: number;
  doubtful: number;
  wrongSure: number;
  fields: number;
}

/** Pages that were told to be unreadable: nothing of them is taken for a mark. */
const unread: string[] = [];

async function onePage(seed: number, how: Taking, tally: Record<string, Tally>) {
  const choice = choiceFrom(seed);
  const drawn: Drawn[] = [];
  const meant = new Map<string, { value: number | null; mark: Mark | null; pen: string }>();
  for (let row = 0; row < layout.rows; row += 1) {
    const pen = pens[(row + seed) % pens.length]!;
    for (const field of fields) {
      const circles = layout.circles.filter((circle) => circle.row === row && circle.field === field);
      const key = `${row} ${field}`;
      if (choice.chance(0.25)) {
        meant.set(key, { value: null, mark: null, pen: pen.name });
        // A pen that slipped over a field that was left empty.
        if (choice.chance(0.15)) {
          drawn.push({ circle: choice.of(circles), mark: 'stray', gray: pen.gray, pen: pen.pen });
          meant.set(key, { value: null, mark: 'stray', pen: pen.name });
        }
        continue;
      }
      const circle = choice.of(circles);
      const mark = choice.of(['filled', 'filled', 'cross', 'cross', 'slash', 'ring'] as const);
      drawn.push({ circle, mark, gray: pen.gray, pen: pen.pen });
      meant.set(key, { value: circle.value, mark, pen: pen.name });
    }
  }
  const read = readPrintedPage(await taken(await rastered(logSvg(code, drawn)), how, seed), null, {});
  if (read.kind !== 'log') return void unread.push(`${seed} ${read.kind === 'not-read' ? read.why : read.kind}`);
  expect(read.text).toBe(code);
  for (const { row, field, value, doubt } of read.fields) {
    const truth = meant.get(`${row} ${field}`)!;
    for (const name of ['all', truth.pen, `mark ${truth.mark}`]) {
      const t = (tally[name] ??= {
        circles: 0,
        marked: 0,
        falseFilled: 0,
        falseEmpty: 0,
        doubtful: 0,
        wrongSure: 0,
        fields: 0,
      });
      t.fields += 1;
      t.circles += layout.circles.filter((circle) => circle.row === 0 && circle.field === field).length;
      if (truth.value !== null) t.marked += 1;
      if (doubt) t.doubtful += 1;
      else if (value === null && truth.value !== null) t.falseEmpty += 1;
      else if (value !== null && truth.value === null) t.falseFilled += 1;
      else if (value !== truth.value) t.wrongSure += 1;
    }
  }
}

test('marks of drawn logs are read, and what is not sure is said to be doubtful', { timeout: 900_000 }, async () => {
  const tally: Record<string, Tally> = {};
  for (let seed = first; seed < first + pages; seed += 1) {
    const base = seed % 2 ? scanner : phone;
    const choice = choiceFrom(seed * 77);
    const turned = {
      ...base,
      turnDeg: base.turnDeg + choice.below(5) - 2,
      pxPerMm: base.pxPerMm * (0.8 + choice.below(5) / 10),
    };
    await onePage(seed, turned, tally);
  }
  if (process.env['LOG_PAGES']) console.table(tally);
  if (process.env['LOG_PAGES']) console.log(`Not read: ${unread.join(', ') || 'none'}`);
  expect(unread.length / pages).toBeLessThan(0.1);
  const { all } = tally;
  expect(all!.circles).toBeGreaterThan(2000);
  // Nothing that was not marked is taken for marked, no mark for another.
  expect(all!.falseFilled / all!.circles).toBeLessThan(0.001);
  expect(all!.wrongSure / all!.circles).toBeLessThan(0.001);
  expect(all!.falseEmpty / all!.marked).toBeLessThan(0.01);
  expect(tally['mark filled']!.doubtful / tally['mark filled']!.marked).toBeLessThan(0.1);
});
