/** Which samples are the bouts by which a fall along the lines is told, and what a line's legibility is. */
import { expect, test } from 'vitest';
import type { Reading } from '../../../db/types/reading.ts';
import { boutsOf, lineLegibility } from '../../../renderer/logic/program/facts/record-measures.ts';
import type { Occasion } from '../../../renderer/logic/record/occasions.ts';
import { sampleLegibility } from '../../../renderer/logic/record/sample-legibility.ts';

const TEXT = 'buy milk and bread';
const readingOf = (initials: string, lines: readonly string[]): Reading => ({
  id: crypto.randomUUID(),
  at: '2026-03-01T10:00:00.000Z',
  by: 'KT',
  clientId: 'c',
  visitId: 'v',
  sampleId: 's',
  readAt: '2026-03-01T10:00:00.000Z',
  reader: 'unfamiliar',
  readerInitials: initials,
  blind: true,
  lines: lines.map((read) => ({ intended: TEXT, read, seconds: null })),
  counted: null,
});

const occasion = (day: string, readings: Reading[], cue: 'none' | 'visual' = 'none'): Occasion =>
  ({
    day,
    sample: { task: { kind: 'sentences' }, conditions: { hand: 'right', cue, doseState: 'on' } },
    legibility: sampleLegibility(readings),
    probe: false,
  }) as unknown as Occasion;

const all = [TEXT, TEXT, 'buy milk ? ?', '? ? ? bread'];

test('the legibility of a line is the mean of its readers, words counted once', () => {
  const both = occasion('2026-03-01', [readingOf('AB', all), readingOf('CD', [TEXT, 'buy ? ? ?', TEXT, TEXT])]);
  expect(lineLegibility(both)).toEqual([
    { right: 4, words: 4 },
    { right: 2.5, words: 4 },
    { right: 3, words: 4 },
    { right: 2.5, words: 4 },
  ]);
  // A reader who paused after two lines says nothing of lines three and four.
  const paused = occasion('2026-03-01', [readingOf('AB', all), readingOf('CD', ['?', '?'])]);
  expect(lineLegibility(paused).map(({ right }) => right)).toEqual([4, 4, 2, 1]);
  expect(lineLegibility(occasion('2026-03-01', []))).toEqual([]);
});

test('bouts are the latest samples of four lines or more under the conditions of the last one', () => {
  const four = (day: string, cue?: 'visual') => occasion(day, [readingOf('AB', all)], cue);
  const short = occasion('2026-03-22', [readingOf('AB', all.slice(0, 3))]);
  expect(boutsOf([four('2026-03-01'), four('2026-03-08'), four('2026-03-15'), short], 2)).toHaveLength(2);
  expect(boutsOf([four('2026-03-01'), four('2026-03-08', 'visual')], 2)).toHaveLength(1);
  expect(boutsOf([short], 2)).toEqual([]);
});
