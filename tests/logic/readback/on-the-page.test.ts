import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { expect, test } from 'vitest';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { PageMeasurement, SamplePage } from '../../../db/types/sample.ts';
import { matchedLines, pagesThenAndNow } from '../../../renderer/logic/progress/then-now.ts';
import { confusionTable } from '../../../renderer/logic/readback/confusions.ts';
import { linesOnPages } from '../../../renderer/logic/readback/line-pictures.ts';
import { marksOnPage } from '../../../renderer/logic/readback/marks-on-page.ts';
import { spellingProblem } from '../../../renderer/logic/readback/own-spelling.ts';
import { sampleLegibility } from '../../../renderer/logic/record/sample-legibility.ts';
import { turnedView, turnPoint, type Turns } from '../../../renderer/logic/sample/turned-boxes.ts';
import { limits } from '../../limits.ts';
import { reading, record, sample, stamp } from '../progress/facts.ts';

/** A page of 100 x 200 px at 1 px a mm, with one word of four letters on each line. */
const page = (id: string, sampleId: string, over: Partial<SamplePage> = {}) =>
  ({
    ...stamp,
    id,
    visitId: 'v',
    sampleId,
    order: 0,
    blob: `blob ${id}`,
    view: `view ${id}`,
    widthPx: 100,
    heightPx: 200,
    scale: { pxPerMm: 1, source: 'dpi' },
    quarterTurns: 0,
    ...over,
  }) as SamplePage;
const box = (xMm: number, yMm: number, widthMm: number, heightMm: number) => ({ xMm, yMm, widthMm, heightMm });
const measured = (pageId: string, sampleId: string, words: readonly string[]) =>
  ({
    ...stamp,
    id: `m ${pageId}`,
    visitId: 'v',
    sampleId,
    pageId,
    method: 'page',
    version: '1',
    uncorrected: null,
    corrections: [],
    result: {
      page: { widthMm: 100, heightMm: 200, dpi: 25, rotationDeg: 0, toPicture: [1, 0, 0, 0, 1, 0, 0, 0, 1] },
      measures: [],
      warnings: [],
      lines: words.map((text, i) => ({
        box: box(10, 20 + 20 * i, 40, 10),
        xHeightMm: 3,
        baselineAngleDeg: 0,
        baselineRmsMm: 0,
        words: [
          {
            box: box(10, 20 + 20 * i, 40, 10),
            xHeightMm: 3,
            gapBeforeMm: null,
            text,
            letters: [...text].map((letter, j) => ({ box: box(10 + 10 * j, 20 + 20 * i, 10, 10), text: letter })),
          },
        ],
      })),
    },
  }) as unknown as PageMeasurement;

const written = (id: string, day: string, text: string, over = {}) =>
  sample(id, day, { task: { kind: 'sentences', textCodes: [], text, spellingNoted: false }, ...over });

function facts(turns: Turns = 0): ClientRecord {
  return record({
    samples: [written('a', '2026-01-05', 'milk\nrice', { baseline: true }), written('b', '2026-02-05', 'Rice.\nbeans')],
    samplePages: [page('pa', 'a', { quarterTurns: turns }), page('pb', 'b')],
    pageMeasurements: [measured('pa', 'a', ['milk', 'rice']), measured('pb', 'b', ['Rice', 'bean'])],
  });
}

test('a letter read as another is marked at its own place, the word around it', () => {
  const read = reading('a', 0, { counted: null, lines: [{ intended: 'milk', read: 'mulk', seconds: null }] });
  const found = marksOnPage(facts(), read)!;
  expect(found.marks).toEqual([
    {
      points: '10.0,20.0 50.0,20.0 50.0,30.0 10.0,30.0',
      letters: ['20.0,20.0 30.0,20.0 30.0,30.0 20.0,30.0'],
      x: 10,
      y: 30,
      intended: 'milk',
      read: 'mulk',
    },
  ]);
  const own = marksOnPage(facts(), read, [{ meant: 'milk', written: 'mulk' }])!;
  expect(own.marks).toEqual([]);
});

test('the outline of a rising line leaves out the next line, though that one reaches into its box', () => {
  const made = facts();
  const [first, second] = made.pageMeasurements[0]!.result.lines;
  const word = (x: number, y: number) => ({ ...first!.words[0]!, box: box(x, y, 10, 10) });
  // The first line rises from y 40 to y 20; the next one begins under its right end, at y 36.
  first!.box = box(10, 20, 80, 30);
  first!.words = [word(10, 40), word(80, 20)];
  second!.box = box(80, 36, 10, 10);
  second!.words = [word(80, 36)];
  const { outline } = linesOnPages(made, 'a')[0]!;
  const inside = (x: number, y: number) =>
    outline.every(({ x: ax, y: ay }, i) => {
      const b = outline[(i + 1) % outline.length]!;
      return (b.x - ax) * (y - ay) - (b.y - ay) * (x - ax) >= 0;
    });
  for (const [x, y] of [
    [10, 40],
    [20, 50],
    [80, 20],
    [90, 30],
  ] as const)
    expect(inside(x, y)).toBe(true);
  for (const [x, y] of [
    [80, 36],
    [90, 46],
    [10, 20],
  ] as const)
    expect(inside(x, y)).toBe(false);
});

test('a page that was turned upright is marked and cut where the eye sees it', () => {
  const read = reading('a', 0, { counted: null, lines: [{ intended: 'milk', read: 'mulk', seconds: null }] });
  const found = marksOnPage(facts(1), read)!;
  expect(found).toMatchObject({ width: 200, height: 100, pictureWidth: 100, transform: 'translate(200 0) rotate(90)' });
  // What stood left at x 20, y 20 to 30 stands after a quarter turn clockwise at x 170 to 180, y 20 to 30.
  expect(found.marks[0]!.letters).toEqual(['180.0,20.0 180.0,30.0 170.0,30.0 170.0,20.0']);
  const [line] = linesOnPages(facts(1), 'a');
  expect(line!.picture).toMatchObject({ turns: 1, x: 8, y: 18, width: 44, height: 14 });
  expect(turnedView(line!.picture!, 1, 100, 200)).toMatchObject({ x: 168, y: 8, width: 14, height: 44 });
});

test('four quarter turns bring every point home', () => {
  for (const turns of [0, 1, 2, 3] as const) {
    const lies = turns % 2 === 1;
    const there = turnPoint(12, 34, turns, 100, 200);
    const back = turnPoint(there.x, there.y, ((4 - turns) % 4) as Turns, lies ? 200 : 100, lies ? 100 : 200);
    expect(back).toEqual({ x: 12, y: 34 });
  }
});

test('lines with the same words stand beside each other at their size on paper, whatever else the pages hold', () => {
  const pair = pagesThenAndNow(facts())!;
  expect([pair.then.sample.id, pair.now.sample.id, pair.sameScale]).toEqual(['a', 'b', true]);
  const lines = matchedLines(facts(), 'a', 'b');
  expect(lines.map((line) => line.text)).toEqual(['rice']);
  expect(lines[0]!.then).toMatchObject({ widthMm: 44, heightMm: 14, picture: { view: 'view pa', y: 38 } });
  expect(lines[0]!.now.picture).toMatchObject({ view: 'view pb', y: 18 });
  expect(matchedLines({ ...facts(), pageMeasurements: [] }, 'a', 'b')).toEqual([]);
});

test('a later sample can be chosen; an unknown one gives the latest of the same task', () => {
  const made = facts();
  made.samples.push(
    written('c', '2026-03-05', 'milk'),
    written('d', '2026-04-05', 'x', { task: { kind: 'free', textCodes: [], text: 'x', spellingNoted: false } }),
  );
  made.samplePages.push(page('pc', 'c'), page('pd', 'd', { scale: null }));
  expect(pagesThenAndNow(made)!.now.sample.id).toBe('c');
  expect(pagesThenAndNow(made, 'b')!.now.sample.id).toBe('b');
  expect(pagesThenAndNow(made, 'gone')!.now.sample.id).toBe('c');
  expect(pagesThenAndNow(made, 'd')).toMatchObject({ sameScale: false, now: { strip: { widthMm: 100 } } });
  expect(pagesThenAndNow(made)!.later.map((one) => one.sample.id)).toEqual(['b', 'c', 'd']);
});

test('confused letters stand with how often they were written; too seldom is said, not shown', () => {
  const confusions = [
    { intended: 'a', read: 'o', count: 2 },
    { intended: 'z', read: 's', count: 1 },
    { intended: '', read: 'e', count: 1 },
  ];
  const table = confusionTable(confusions, ['banana', 'zebra', 'cat'], limits);
  expect(table.tooSeldom).toBe(1);
  expect(table.rows).toMatchObject([
    { intended: 'a', count: 2, of: 5 },
    { intended: '', count: 1, of: null, low: null },
  ]);
  expect(table.rows[0]!.low).toBeGreaterThan(0);
  expect(table.rows[0]!.high).toBeLessThan(1);
});

test('the own spelling counts as read; what is no spelling is refused with a sentence', () => {
  const read = reading('a', 0, { counted: null, lines: [{ intended: 'buy rice', read: 'buy rize', seconds: null }] });
  expect(sampleLegibility([read])).toMatchObject({ wordsRight: 1, words: 2 });
  expect(sampleLegibility([read], [{ meant: 'rice', written: 'rize' }])).toMatchObject({ wordsRight: 2, words: 2 });
  const text = 'buy rice';
  const known = [{ meant: 'rice', written: 'rize' }];
  expect(spellingProblem({ meant: 'rice', written: 'ryce' }, known, text, toldEnglish.reading.spelling)).toBe('');
  for (const [meant, written] of [
    ['', 'rize'],
    ['rice', ''],
    ['buy rice', 'buyrice'],
    ['rice', 'Rice.'],
    ['RICE', 'rize'],
    ['beans', 'beens'],
  ] as const)
    expect(
      spellingProblem({ meant, written }, known, text, toldEnglish.reading.spelling),
      `${meant}/${written}`,
    ).toMatch(/[.]$/);
});
