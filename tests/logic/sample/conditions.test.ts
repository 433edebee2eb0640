import { expect, test } from 'vitest';
import { conditionDifferences } from '../../../renderer/logic/record/condition-changes.ts';
import { carriedOver, noConditions, notNoted, rulingOf } from '../../../renderer/logic/sample/carried-conditions.ts';
import { isFirst, nextTexts, usedLately, usualTask } from '../../../renderer/logic/sample/next-text.ts';
import { parseReadings, summarize } from '../../../renderer/logic/sample/typed.ts';
import { pxPerMm, toPage, toPicture } from '../../../renderer/logic/sample/overlay-shapes.ts';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { Program } from '../../../db/types/program.ts';
import type { Conditions, Sample } from '../../../db/types/sample.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

const words = toldEnglish.conditions;

const sample = (takenAt: string, conditions: Partial<Conditions>, textCodes: string[] = []): Sample => ({
  id: '018f7c1e-0000-4000-8000-000000000001',
  at: takenAt,
  by: 'QM',
  clientId: '018f7c1e-0000-4000-8000-000000000002',
  visitId: '018f7c1e-0000-4000-8000-000000000003',
  takenAt,
  task: { kind: 'pangram', textCodes, text: '', spellingNoted: false },
  conditions: { ...noConditions, ...conditions },
  fatigueBefore: null,
  fatigueAfter: null,
  painBefore: null,
  painAfter: null,
  seconds: null,
  baseline: false,
  typed: {},
  note: '',
});

test('conditions are carried over except what belongs to the hour', () => {
  const last = sample('2026-03-02T09:00:00Z', { pen: 'felt pen', time: '09:00', minutesSinceDose: 50 });
  const older = sample('2026-02-02T09:00:00Z', { pen: 'pencil' });
  expect(carriedOver([last, older], '14:10')).toMatchObject({ pen: 'felt pen', time: '14:10', minutesSinceDose: null });
});

test('unequal conditions are named; within an hour of the clock counts as equal, over midnight too', () => {
  const full = { pen: 'felt pen', time: '23:40', hand: 'right', paper: 'plain', doseState: 'on', cue: 'none' } as const;
  const a = sample('2026-03-01T09:00:00Z', full);
  const b = sample('2026-03-08T09:00:00Z', { ...full, time: '00:20' });
  const limits = { sameTimeMinutes: 60 };
  expect(conditionDifferences(a, b, limits, words)).toEqual([]);
  expect(notNoted(a, b, words)).toEqual([]);
  const c = sample('2026-03-09T09:00:00Z', { ...full, pen: 'ballpoint', doseState: 'off' });
  expect(conditionDifferences(a, c, limits, words).map((d) => d.name)).toEqual(['pen', 'medicine']);
  // Two therapists at one client: their samples compare, and it says who took them.
  expect(conditionDifferences(a, { ...b, by: 'KT' }, limits, words)).toEqual([
    { code: 'therapist', name: 'therapist', before: a.by, now: 'KT' },
  ]);
  expect(notNoted(a, sample('2026-03-10T09:00:00Z', { ...full, pen: '' }), words)).toEqual(['pen']);
});

test('the ruling that the paper’s name tells is used, anything else is not', () => {
  expect(rulingOf('ruled 8.7 mm')).toBe(8.7);
  expect(rulingOf('dashed midline 12 mm')).toBe(12);
  expect(rulingOf('squares, 5,0 mm')).toBe(5);
  expect(rulingOf('plain')).toBeNull();
  expect(rulingOf('felt pen 0.7 mm')).toBeNull();
  expect(rulingOf('ruled 87 mm')).toBeNull();
});

const { texts } = rulesInUse(null).sampleTexts;

test('every pangram has all 26 letters in lower case, and the counts of each text are true', () => {
  for (const t of texts) {
    const letters = t.text.toLowerCase().match(/\p{L}/gu)!;
    const count = (set: string) => letters.filter((l) => set.includes(l)).length;
    expect([t.code, letters.length, t.text.split(' ').length]).toEqual([t.code, t.letters, t.words]);
    expect([t.code, count('bdfhklt'), count('gjpqy')]).toEqual([t.code, t.ascenders, t.descenders]);
    if (t.kind === 'pangram') expect(new Set(t.text.match(/[a-z]/g)).size, t.code).toBe(26);
  }
});

test('a text that was written lately is not proposed again', () => {
  const seen = ['P1', 'P2', 'P3'].map((code, n) => sample(`2026-03-0${n + 1}T09:00:00Z`, {}, [code]));
  expect(nextTexts(texts, 'pangram', seen, 1).map((t) => t.code)).toEqual(['P4']);
  const all = ['P4', 'P2', 'P5', 'P6', 'P1', 'P3'].map((code, n) => sample(`2026-03-0${n + 1}T09:00:00Z`, {}, [code]));
  expect(nextTexts(texts, 'pangram', all, 2).map((t) => t.code)).toEqual(['P4', 'P2']);
  const four = sample('2026-03-01T09:00:00Z', {}, ['F1', 'F2', 'F3', 'F4']);
  expect(nextTexts(texts, 'sentences', [four], 4).map((t) => t.code)).toEqual(['F5', 'F6', 'F1', 'F2']);
  expect(
    usedLately(
      texts.find((t) => t.code === 'P4')!,
      all,
    ),
  ).toBe(false);
  expect(
    usedLately(
      texts.find((t) => t.code === 'P3')!,
      all,
    ),
  ).toBe(true);
});

test('ruler readings: decimal commas, a word that is no number, the statistics of a scan', () => {
  expect(parseReadings('2,5 2.4; 3')).toEqual([2.5, 2.4, 3]);
  expect(parseReadings('2.5 about 3')).toBeNull();
  const ten = [3, 3, 3, 3, 3, 2.7, 2.7, 2.7, 2.7, 2.7];
  expect(summarize(ten)).toMatchObject({ n: 10, median: 2.85 });
  expect(summarize(ten)!.decrement).toBeCloseTo(10, 6);
  expect(summarize([])).toBeNull();
});

test('page millimeters and picture pixels map both ways, also through perspective', () => {
  const map = [11.8, 0.3, 40, -0.25, 11.7, 55, 0.00012, -0.00008, 1];
  const at = toPicture(map, 123.4, 56.7);
  const back = toPage(map, at);
  expect(back.xMm).toBeCloseTo(123.4, 8);
  expect(back.yMm).toBeCloseTo(56.7, 8);
  expect(pxPerMm({ x: 0, y: 0 }, { x: 300, y: 400 }, 50)).toBe(10);
  expect(pxPerMm({ x: 5, y: 5 }, { x: 5, y: 5 }, 50)).toBeNull();
});

test('the task of the last sample comes again; a baseline is the first of its task before any program', () => {
  const older = sample('2026-02-02T09:00:00Z', {});
  const last = sample('2026-03-02T09:00:00Z', {});
  last.task = { ...last.task, kind: 'sentences' };
  expect(usualTask([])).toBe('pangram');
  expect(usualTask([last, older])).toBe('sentences');
  const signed = sample('2026-03-09T09:00:00Z', {});
  signed.task = { ...signed.task, kind: 'signature' };
  expect(usualTask([signed, last, older])).toBe('sentences');
  expect(isFirst('pangram', [], [])).toBe(true);
  expect(isFirst('pangram', [older], [])).toBe(false);
  expect(isFirst('digits', [older], [{ status: 'draft' } as Program])).toBe(true);
  expect(isFirst('digits', [older], [{ status: 'approved' } as Program])).toBe(false);
});
