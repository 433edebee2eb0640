import { expect, test } from 'vitest';
import type { Reading } from '../../../db/types/reading.ts';
import { agreementSentence, readersApart, readerAgreement } from '../../../renderer/logic/readback/agreement.ts';
import { assignLines } from '../../../renderer/logic/readback/assign-lines.ts';
import { exposureOf, exposureSentence, type TextMet } from '../../../renderer/logic/readback/exposure.ts';
import { readingQueue, type QueueSample } from '../../../renderer/logic/readback/queue.ts';
import { openLines, withLine } from '../../../renderer/logic/readback/reading-lines.ts';
import { sampleLegibility } from '../../../renderer/logic/record/sample-legibility.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { limits } from '../../limits.ts';

const words = toldEnglish.reading;

const reading = (over: Partial<Reading>): Reading => ({
  id: crypto.randomUUID(),
  at: '2026-03-01T10:00:00.000Z',
  by: 'KT',
  clientId: 'c',
  visitId: 'v',
  sampleId: 's1',
  readAt: '2026-03-01T10:00:00.000Z',
  reader: 'unfamiliar',
  readerInitials: 'AB',
  blind: true,
  lines: [{ intended: 'buy milk and bread', read: 'buy milk and bread', seconds: 4 }],
  counted: null,
  ...over,
});

const line = (read: string) => [{ intended: 'buy milk and bread', read, seconds: null }];

test('nobody has read it yet: no legibility, no number', () => {
  expect(sampleLegibility([])).toBeNull();
});

test('two strangers are averaged and compared, family stays apart', () => {
  const found = sampleLegibility([
    reading({ lines: line('buy milk and bread') }),
    reading({ readerInitials: 'CD', lines: line('buy mulk and breed') }),
    reading({ reader: 'family', readerInitials: 'EF', lines: line('? ? ? ?') }),
  ])!;
  expect(found).toMatchObject({ reader: 'unfamiliar', readers: 2, accuracy: 0.75, wordsRight: 3, words: 4 });
  expect(found.agreement).toMatchObject({ both: 2, onlyFirst: 2, neither: 0, agree: 0.5 });
  expect(found.readersApart).toBe(50);
});

test('a reader counts once, with the latest reading', () => {
  const found = sampleLegibility([
    reading({ lines: line('? ? ? ?') }),
    reading({ readerInitials: 'ab', readAt: '2026-03-02T10:00:00.000Z', lines: line('buy milk and bread') }),
  ])!;
  expect(found).toMatchObject({ readers: 1, accuracy: 1 });
});

test('a count made on paper is kept as it is', () => {
  expect(sampleLegibility([reading({ lines: [], counted: { right: 18, of: 24 } })])).toMatchObject({
    accuracy: 0.75,
    words: 24,
    agreement: null,
  });
});

test('agreement where all words can be read has no kappa but says so in words', () => {
  const all = readerAgreement([true, true, true], [true, true, true])!;
  expect(all).toMatchObject({ agree: 1, kappa: null, ac1: 1, agreeUnreadable: null });
  expect(agreementSentence(all, limits, words)).toBe('The two readers agree: the same answer for 3 of 3 words.');
  expect(readerAgreement([], [])).toBeNull();
});

test('a third reader is asked when a line differs by more than 20 points', () => {
  expect(readersApart([0.8, 0.9], [0.6, 0.9])).toBe(20);
  expect(readersApart([0.8, 0.9], [0.55, 0.9])).toBe(25);
});

const sample = (id: string, over: Partial<QueueSample> = {}): QueueSample => ({
  sampleId: id,
  clientId: `client of ${id}`,
  visitId: 'v',
  takenAt: '2026-03-01T09:00:00.000Z',
  textCodes: ['P1'],
  text: (over.lines ?? ['buy milk', 'and bread']).join('\n'),
  lines: ['buy milk', 'and bread'],
  ...over,
});

const read = (sampleId: string, at: string, text = 'buy milk', codes = ['P1']): TextMet => ({
  sampleId,
  how: 'read',
  at,
  codes,
  text,
});

const done = (sampleId: string) => reading({ sampleId, lines: [], counted: { right: 1, of: 4 } });

const counting = () => {
  let i = 0;
  return () => [0.1, 0.7, 0.3, 0.9, 0.5][i++ % 5]!;
};

test('the queue mixes clients, leaves out what was read and what has no text', () => {
  const samples = [
    sample('s1'),
    sample('s2', { textCodes: ['P2'], lines: ['buy tea', 'and cake'] }),
    sample('s3', { textCodes: ['P3'], lines: ['', 'x'] }),
  ];
  const who = { reader: 'unfamiliar', initials: 'AB', now: '2026-03-20T09:00:00.000Z' } as const;
  const met = [read('s1', '2026-03-01T10:00:00.000Z')];
  const queue = readingQueue(samples, [done('s1')], who, met, counting(), limits);
  expect(queue).toHaveLength(3);
  expect(new Set(queue.map((q) => q.sampleId))).toEqual(new Set(['s2', 's3']));
  expect(words.linesWaiting(queue.length)).toBe('3 lines waiting');
});

test('a reader who met the same text this week is not asked again', () => {
  const samples = [sample('s1'), sample('s2')];
  const who = { reader: 'unfamiliar', initials: 'AB', now: '2026-03-03T09:00:00.000Z' } as const;
  const met = [read('s1', '2026-03-01T10:00:00.000Z')];
  expect(readingQueue(samples, [done('s1')], who, met, counting(), limits)).toEqual([]);
  // Not even where the same sentence came from another client, under another code.
  const elsewhere = [read('s9', '2026-03-01T10:00:00.000Z', 'Something else\nAnd bread!', ['X'])];
  expect(readingQueue([sample('s2')], [], who, elsewhere, counting(), limits)).toEqual([]);
  expect(
    readingQueue([sample('s2')], [], { ...who, now: '2026-03-08T10:00:00.000Z' }, elsewhere, counting(), limits),
  ).toHaveLength(2);
});

test('a reading that was paused goes on where it stopped, in the order of the page', () => {
  const begun = reading({ lines: [{ intended: 'and bread', read: 'and broad', seconds: 3 }] });
  const who = { reader: 'unfamiliar', initials: 'ab', now: '2026-03-01T11:00:00.000Z' } as const;
  expect(readingQueue([sample('s1')], [begun], who, [], counting(), limits)).toEqual([{ sampleId: 's1', line: 0 }]);
  const lines = withLine(['buy milk', 'and bread'], begun.lines, 0, ' buy mulk ', 2);
  expect(lines.map((l) => l.read)).toEqual(['buy mulk', 'and broad']);
  expect(openLines(['buy milk', 'and bread', 'buy milk', ''], { lines, counted: null })).toEqual([2]);
});

test('the therapist waits a week', () => {
  const early = { reader: 'therapist', initials: 'KT', now: '2026-03-05T09:00:00.000Z' } as const;
  expect(readingQueue([sample('s1')], [], early, [], counting(), limits)).toEqual([]);
  expect(
    readingQueue([sample('s1')], [], { ...early, now: '2026-03-09T09:00:00.000Z' }, [], counting(), limits),
  ).toHaveLength(2);
});

test('a reader who knows a text is warned of it, and a text that waits twice', () => {
  const met = [
    read('s8', '2025-11-02T09:00:00.000Z'),
    read('s9', '2026-01-05T09:00:00.000Z'),
    { ...read('s1', '2025-12-24T09:00:00.000Z'), how: 'took' as const },
    // Reading this very sample is what is being done, not what went before.
    read('s1', '2026-02-01T09:00:00.000Z'),
  ];
  const known = exposureOf([sample('s1')], met)!;
  expect(known).toEqual({ samples: 1, taken: 1, times: 3, last: '2026-01-05T09:00:00.000Z', repeated: 0 });
  expect(exposureSentence(known, (iso) => iso.slice(0, 10), words)).toBe(
    'The text of one waiting sample is known to this reader: met up to 3 times, last on 2026-01-05. One of them was ' +
      'taken by this person. Who knows a text reads more of it than is written. Ask somebody else where you can; each ' +
      'reading keeps how often.',
  );
  expect(exposureOf([sample('s1'), sample('s2')], [])).toMatchObject({ samples: 0, repeated: 1, last: '' });
  expect(exposureOf([sample('s1'), sample('s2', { textCodes: [], lines: ['other words'] })], [])).toBeNull();
});

test('intended words find their written line', () => {
  const words = (...texts: (string | null)[]) => ({ words: texts.map((text) => ({ text })) });
  expect(assignLines('buy milk\nand bread', [])).toEqual(['buy milk', 'and bread']);
  expect(assignLines('buy milk and bread', [words('buy', 'milk'), words('and', 'bread')])).toEqual([
    'buy milk',
    'and bread',
  ]);
  expect(assignLines('buy milk and bread', [words(null, null, null), words(null)])).toEqual(['buy milk and', 'bread']);
  expect(assignLines('', [words(null)])).toEqual(['']);
});
