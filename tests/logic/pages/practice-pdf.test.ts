import { beforeAll, describe, expect, test } from 'vitest';
import { rulesCurrent } from '../../../db/rules/index.ts';
import { pictureDrawings, pictureOfWord } from '../../../renderer/logic/pages/drawings/picture-words.ts';
import { letterStyles } from '../../../renderer/logic/pages/practice/letter-styles.ts';
import { marginMm, type SheetName, writingArea } from '../../../renderer/logic/pages/practice/sheet-sizes.ts';
import { type PracticeSheet, practiceSheets } from '../../../renderer/logic/pages/practice/practice.ts';
import { type PracticeRequest } from '../../../renderer/logic/pages/practice/practice-steps.ts';
import { inks, type RulingCode, rulings } from '../../../renderer/logic/pages/practice/ruling-drawings.ts';
import SheetView from '../../../renderer/window/pages/SheetView.svelte';
import { chromiumPath, htmlOf, noChromium, printHtml } from './html.ts';
import { type PdfPage, readPdf } from './pdf-lines.ts';
import { practiceAsked } from './practice-asked.ts';

const tolerance = 0.05;

const request = (sheet: SheetName, ruling: RulingCode, more: Partial<PracticeRequest> = {}): PracticeRequest =>
  practiceAsked({ sheet, ruling, ...more });

const codes = Object.keys(rulings) as RulingCode[];
const models: PracticeSheet[] = (['A4', 'Letter'] as const).flatMap((sheet) => [
  ...codes.flatMap((code) => practiceSheets(request(sheet, code))),
  ...practiceSheets(
    request(sheet, 'dashed-10', { bold: true, startLine: 'left', letters: 'joined', models: ['hello'] }),
  ),
]);

describe.skipIf(!chromiumPath)(`practice pages in the printed PDF${noChromium}`, () => {
  let pages: PdfPage[] = [];
  const pageOf = (sheet: SheetName, ruling: RulingCode, bold = false) =>
    pages[models.findIndex((m) => m.sheet === sheet && m.ruling === ruling && m.bold === bold)]!;

  beforeAll(async () => {
    const printed = await printHtml(htmlOf(SheetView, { sheets: models }));
    expect(printed.overflow.every((px) => px === 0)).toBe(true);
    pages = (await readPdf(printed.pdf)).map((page) => ({
      ...page,
      // The yes and no boxes at the foot are nothing to write on.
      lines: page.lines.filter((l) => Math.hypot(l.x2 - l.x1, l.y2 - l.y1) > 4),
    }));
  });

  test('one sheet a model, each on the paper it was laid out for', () => {
    expect(pages).toHaveLength(models.length);
    pages.forEach((page, i) => {
      // ISO 216 and US Letter; Chromium rounds pages to 1/8 unit of its own.
      const [width, height] = models[i]!.sheet === 'A4' ? [210, 297] : [215.9, 279.4];
      expect(Math.abs(page.widthMm - width!)).toBeLessThan(0.15);
      expect(Math.abs(page.heightMm - height!)).toBeLessThan(0.15);
    });
  });

  test('every line lies where the model says, within 0.05 mm', () => {
    let compared = 0;
    models.forEach((model, i) => {
      for (const line of model.lines) {
        const found = line.dashed
          ? // A dashed line arrives as filled dashes.
            pages[i]!.boxes.some(
              (box) => Math.abs(box.y + box.height / 2 - line.y1) < tolerance && Math.abs(box.x - line.x1) < tolerance,
            )
          : pages[i]!.lines.some(
              (l) =>
                Math.abs(l.x1 - line.x1) < tolerance &&
                Math.abs(l.y1 - line.y1) < tolerance &&
                Math.abs(l.x2 - line.x2) < tolerance &&
                Math.abs(l.y2 - line.y2) < tolerance,
            );
        expect(found, `${model.sheet} ${model.ruling} ${JSON.stringify(line)}`).toBe(true);
        compared++;
      }
    });
    expect(compared).toBeGreaterThan(1000);
  });

  test.each([
    ['ruled-8.7', 8.7],
    ['ruled-7.1', 7.1],
    ['ruled-6.35', 6.35],
    ['dashed-12', 12],
    ['dashed-10', 10],
    ['dashed-8.7', 8.7],
    ['guide-8.7', 8.7],
  ] as const)('%s: solid lines are %d mm apart from the first to the last', (ruling, mm) => {
    for (const sheet of ['A4', 'Letter'] as const) {
      const ys = [...new Set(pageOf(sheet, ruling).lines.map((l) => l.y1))].sort((a, b) => a - b);
      expect(ys.length).toBeGreaterThan(8);
      ys.forEach((y, i) => expect(Math.abs(y - ys[0]! - i * mm)).toBeLessThan(tolerance));
    }
  });

  test.each([
    ['squares-10', 10],
    ['squares-7', 7],
    ['squares-5', 5],
  ] as const)('%s: squares are %d mm both ways', (ruling, mm) => {
    for (const along of ['x1', 'y1'] as const) {
      const lines = pageOf('A4', ruling).lines.filter((l) => (along === 'x1' ? l.x1 === l.x2 : l.y1 === l.y2));
      const at = [...new Set(lines.map((l) => l[along]))].sort((a, b) => a - b);
      expect(at.length).toBeGreaterThan(15);
      at.forEach((v, i) => expect(Math.abs(v - at[0]! - i * mm)).toBeLessThan(tolerance));
    }
  });

  test('the check bar is 100 mm long on every sheet', () => {
    pages.forEach((page) => {
      const bars = page.boxes.filter((b) => Math.abs(b.height - 1.2) < tolerance && b.width > 50 && b.y > 240);
      expect(bars).toHaveLength(1);
      expect(Math.abs(bars[0]!.width - 100)).toBeLessThan(tolerance);
    });
  });

  test('nothing to write on lies nearer than 15 mm to an edge', () => {
    pages.forEach((page) => {
      for (const l of page.lines) {
        expect(Math.min(l.x1, l.x2)).toBeGreaterThan(marginMm - tolerance);
        expect(Math.max(l.x1, l.x2)).toBeLessThan(page.widthMm - marginMm + 0.15);
      }
    });
  });

  test('model letters have the x-height of their paper', () => {
    models.forEach((model, i) => {
      // A check has labels, and no letters to follow.
      if (rulings[model.ruling].kind === 'check') return;
      for (const text of model.texts.filter((t) => t.style !== 'page-bold' && t.anchor === 'start')) {
        const ratio = letterStyles[text.style].xHeight;
        const printed = pages[i]!.texts.find((t) => Math.abs(t.y - text.y) < 0.05 && Math.abs(t.x - text.x) < 0.05);
        expect(printed, `${model.ruling} ${text.text}`).toBeDefined();
        expect(Math.abs(printed!.sizeMm * ratio - rulings[model.ruling].xHeightMm)).toBeLessThan(0.02);
      }
    });
  });

  test('bold lines for low vision are bold on paper too', () => {
    const widest = Math.max(
      ...pageOf('A4', 'dashed-10', true)
        .lines.filter((l) => l.y1 === l.y2)
        .map((l) => l.widthMm),
    );
    expect(Math.abs(widest - inks.baseline.bold.width)).toBeLessThan(tolerance);
  });
});

test('rows carry the mark that the line speaks of, on the rows to write on only', () => {
  const [stop] = practiceSheets(request('A4', 'ruled-8.7', { marks: 'stop' }));
  const written = stop!.lines.filter(({ ink }) => ink === 'ruled').length - 2;
  expect(stop!.lines.filter(({ ink }) => ink === 'mark')).toHaveLength(written);
  const [dots] = practiceSheets(request('A4', 'ruled-8.7', { marks: 'dots' }));
  expect(dots!.dots).toHaveLength(2 * written);
  const [squares] = practiceSheets(request('A4', 'squares-10', { marks: 'dots' }));
  expect(squares!.dots).toEqual([]);
});

test('the dose is on the sheet as many lines as it says, and no sheet is left mostly empty', () => {
  for (const ruling of ['ruled-8.7', 'dashed-8.7', 'dashed-12', 'boxes-8'] as const)
    for (const linesPerBout of [2, 5, 8, 12, 31])
      for (const bouts of [1, 3]) {
        const sheets = practiceSheets(request('A4', ruling, { linesPerBout, bouts }));
        const texts = sheets.flatMap((sheet) => sheet.texts.map(({ text }) => text));
        expect(texts.filter((text) => text === 'Stop here. Rest 2 minutes.')).toHaveLength(bouts - 1);
        const { sizeMm } = rulings[ruling];
        const last = sheets.at(-1)!;
        const lowest = Math.max(...last.lines.map((line) => Math.max(line.y1, line.y2)));
        const area = writingArea('A4');
        // A few rows may stay free, half a sheet never.
        expect(area.y + area.height - lowest, `${ruling} ${linesPerBout} ${bouts}`).toBeLessThan(9 * sizeMm);
        if (!texts.includes('Stop here for today.') || rulings[ruling].kind !== 'ruled') continue;
        const end = Math.min(...last.texts.filter(({ text }) => text === 'Stop here for today.').map(({ y }) => y));
        const before = [
          ...sheets.slice(0, -1).flatMap((sheet) => sheet.lines),
          ...last.lines.filter(({ y1 }) => y1 < end),
        ];
        const rows = before.filter(({ ink }) => ink === 'ruled').length;
        expect(rows - 2 * bouts, `${ruling} ${linesPerBout} ${bouts}`).toBe(linesPerBout * bouts);
      }
});

test('a model stands on the sheet with the lines it is for', () => {
  const models = ['h h h', 'train ticket', 'map coat'];
  for (const ruling of ['dashed-12', 'dashed-10', 'ruled-8.7'] as const)
    for (let linesPerBout = 2; linesPerBout < 20; linesPerBout++)
      for (const { texts, lines } of practiceSheets(request('Letter', ruling, { models, linesPerBout, bouts: 3 }))) {
        const lowest = Math.max(...texts.filter(({ text }) => models.includes(text)).map(({ y }) => y));
        const below = lines.filter(({ y1 }) => y1 > lowest + 1);
        expect(below.length, `${ruling} ${linesPerBout}`).toBeGreaterThan(0);
      }
});

test('a sentence of several rows of squares has as many rows to be copied to, and no sheet is empty', () => {
  const models = ['Llame a Elena al 555 7922', 'Pida los archivos y llame a Clara el lunes', 'Vea a Ana'];
  const sheets = practiceSheets(request('A4', 'squares-10', { models, linesPerBout: 4, bouts: 3 }));
  for (const { texts } of sheets) {
    const rows = [...new Set(texts.filter(({ style }) => style === 'print').map(({ y }) => Math.round(y)))];
    const [top, ...later] = rows.sort((a, b) => a - b);
    expect(top).toBeDefined();
    // Rows from one sentence to the next: twice its own, or more.
    let [start, end] = [top!, top!];
    for (const row of [...later, 277]) {
      if (row - end > 10.5) {
        expect(row - end).toBeGreaterThan(end - start + 19);
        start = row;
      }
      end = row;
    }
  }
});

test('sheets to lie under and dots to join fill the sheet and say what they are', () => {
  for (const ruling of ['guide-8.7', 'dots-30', 'lean-10'] as const) {
    const sheets = practiceSheets(request('Letter', ruling, { linesPerBout: 3, bouts: 3 }));
    expect(sheets).toHaveLength(1);
    expect(sheets[0]!.formId).toBe(ruling.toUpperCase());
    expect(sheets[0]!.lines.length + (sheets[0]!.dots?.length ?? 0)).toBeGreaterThan(12);
    expect(sheets[0]!.texts).toEqual([]);
  }
});

test('a picture sheet has every word of every language beside its picture', () => {
  const words = rulesCurrent().contents.filter(({ kind }) => kind === 'pictures');
  expect(words.length).toBeGreaterThan(1);
  for (const { lines, language } of words)
    for (const sheet of ['A4', 'Letter'] as const) {
      const sheets = practiceSheets(request(sheet, 'dashed-10', { models: lines, pictures: pictureOfWord }));
      expect(
        sheets.flatMap(({ texts }) => texts.map(({ text }) => text)),
        language,
      ).toEqual(lines);
      for (const { name } of sheets.flatMap(({ pictures }) => pictures ?? []))
        expect(pictureDrawings).toHaveProperty(name);
    }
});
