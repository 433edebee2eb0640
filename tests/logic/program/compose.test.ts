import { expect, test } from 'vitest';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { dayMinutes } from '../../../renderer/logic/program/draft/program-line.ts';
import { client, itemsOf, rules } from './support.ts';

const draft = (...args: Parameters<typeof client>) => compose(client(...args), rules);
const mm = (code: string, value: number) => ({ code, value, unit: 'mm' });
const read = (value: number) => ({ code: 'legibility', value, unit: '%' });

test('a client with nothing tested gets no exercise and no writing', () => {
  const kinds = compose({ ...client(), findings: [] }, rules).lines.map((line) => line.kind);
  expect(kinds.filter((kind) => ['exercise', 'warm-up', 'writing', 'paper', 'content'].includes(kind))).toEqual([]);
});

test('an emergency gives no line at all; a flag of the same day leaves set-up, other ways to write and the referral', () => {
  const emergency = draft({ seating: 1 }, { redFlags: ['stroke-signs'] });
  expect(emergency).toMatchObject({ stopped: true, tier: 0, lines: [] });
  const sameDay = draft({ seating: 1, grasp: 0, 'in-hand': 0 }, { redFlags: ['hot-hand'] });
  expect(itemsOf(sameDay)).toEqual(['posture-line', 'other-ways', 'refer-page']);
  expect(sameDay.page.filter((each) => /line gets hard|miss a day|[Pp]ractice only/.test(each))).toEqual([]);
  expect(draft({ seating: 1 }).page.filter((each) => /line gets hard|miss a day/.test(each))).toHaveLength(2);
});

test('what two lines of a day have in common is said by one of them', () => {
  const measures = [{ code: 'legibility', value: 80, unit: '%' }];
  const said = (more: Parameters<typeof client>[1], words: string) =>
    draft({}, { measures, ...more })
      .lines.filter(({ text }) => text.includes(words))
      .map(({ item }) => item);
  const numbers = { occasions: [{ code: 'numbers', words: [] }], confusions: [{ intended: '1', read: '7', count: 2 }] };
  expect(said(numbers, 'figure its own box')).toEqual(['digits-and-money']);
  expect(said(numbers, '1, 4, 7 and 9')).toEqual(['dates-numbers-practice']);
  expect(said({ confusions: numbers.confusions }, '1, 4, 7 and 9')).toEqual(['digits-and-money']);
  expect(said({ interests: ['cooking'] }, 'one line at a time')).toEqual(['text-recipe-soup']);
});

test('pain of 5, fixed tone, broken skin and unexplained small writing raise their flags by themselves', () => {
  const worst: Parameters<typeof client>[0][] = [{ pain: 0 }, { tone: 0 }, { skin: 0 }, { 'small-writing': 2 }];
  for (const grades of worst) {
    expect(draft(grades).stopped, JSON.stringify(grades)).toBe(true);
  }
  expect(draft({ 'small-writing': 2 }, { diagnoses: ['parkinson'] }).stopped).toBe(false);
});

test('a flag that was reviewed lets the program go on with its vetoes active', () => {
  const reviewed = draft({ pain: 0, strength: 1 }, { redFlags: [{ code: 'pain-high', reviewed: true }] });
  expect(reviewed.stopped).toBe(false);
  expect(itemsOf(reviewed)).toContain('pen-line');
  expect(itemsOf(reviewed).filter((item) => item.startsWith('putty'))).toEqual([]);
});

test('raised tone: slow opening and slow thumb work, nothing brisk, no putty', () => {
  const lines = draft({ tone: 1, opposition: 1, strength: 2 }, { diagnoses: ['stroke'], cautions: ['helper'] });
  expect(itemsOf(lines)).toContain('slow-opening');
  expect(itemsOf(lines)).not.toContain('thumb-to-tips');
  expect(itemsOf(lines).filter((item) => item.startsWith('putty'))).toEqual([]);
});

test('weight through the open hand needs a cleared hand and 60 degrees of passive extension', () => {
  const cleared = { cautions: ['weight-bearing-cleared'], details: { wrist: 'sixty-or-more' } };
  const vetoes = (more: Parameters<typeof client>[1]) =>
    draft({ tone: 1 }, more)
      .vetoed.filter((each) => each.item === 'open-hand-lean')
      .map((each) => each.rule);
  expect(vetoes(cleared)).toEqual([]);
  expect(vetoes({ cautions: ['weight-bearing-cleared'] })).toContain('V14');
  expect(vetoes({ details: { wrist: 'sixty-or-more' } })).toContain('V13');
  expect(vetoes({ ...cleared, details: { wrist: 'under-sixty' } })).toContain('V14');
});

test('ataxia: support from elbow to hand, large supported strokes, letters printed apart', () => {
  const lines = draft({ tremor: 1 }, { diagnoses: ['ataxia'], details: { tremor: 'end-point' }, measures: [read(60)] });
  expect(itemsOf(lines)).toEqual(expect.arrayContaining(['posture-line', 'dot-to-dot', 'print-apart']));
});

test("small writing in Parkinson's disease: a size cue, short lines, paper for the size aimed at, the best time of the day", () => {
  const lines = draft(
    { tremor: 2 },
    {
      diagnoses: ['parkinson'],
      details: { tremor: 'rest' },
      measures: [
        mm('x-height', 1.5),
        mm('x-height-before', 2.6),
        { code: 'line-decrement', value: -0.03, unit: 'ln(x-height) per word' },
        read(80),
      ],
    },
  );
  expect(itemsOf(lines)).toEqual(
    expect.arrayContaining(['fill-the-space', 'short-lines', 'best-dose-time', 'paper-dashed-8-7']),
  );
  expect(itemsOf(lines)).not.toContain('weight-trial');
});

test('letters that readers confuse come before stroke drills; aphasia does not bar them', () => {
  const confusions = [{ intended: 'a', read: 'o', count: 4 }];
  expect(itemsOf(draft({}, { confusions, measures: [read(70)] }))).toContain('failing-letters');
  // Source: CLINICAL-2, b17.
  expect(itemsOf(draft({}, { confusions, measures: [read(70)], diagnoses: ['aphasia'] }))).toContain('failing-letters');
  const other = draft({}, { confusions, measures: [read(70)], cautions: ['other-script'] });
  expect(itemsOf(other)).not.toContain('failing-letters');
});

test('aphasia: pictures and few words, no dictation', () => {
  const lines = draft({ language: 1, 'spontaneous-worse': 1 }, { diagnoses: ['stroke', 'aphasia'] });
  expect(itemsOf(lines)).toEqual(expect.arrayContaining(['picture-words', 'picture-sheet', 'ask-speech']));
  expect(itemsOf(lines)).not.toContain('dictation-first');
});

test('left hand: own set-up and ink that dries fast; the hold is not forced', () => {
  expect(
    itemsOf(
      compose(
        { ...client(), hand: 'left', findings: client().findings.map((each) => ({ ...each, side: 'left' as const })) },
        rules,
      ),
    ),
  ).toEqual(expect.arrayContaining(['left-hand-set-up', 'pen-line']));
});

test("the other hand's findings do not count for the hand that writes", () => {
  const input = client();
  input.findings.push({ code: 'tone', grade: 1, side: 'left', source: 'screen' });
  expect(itemsOf(compose(input, rules))).not.toContain('slow-opening');
});

test('an unsteady letter of the tier: 60 % read starts on squares, 80 % on dashed lines, 95 % on ruled paper', () => {
  const paper = (value: number) =>
    draft({}, { measures: [read(value), mm('x-height', 2.2)] }).lines.find((line) => line.kind === 'paper')?.item;
  expect([paper(60), paper(80), paper(95)]).toEqual(['paper-squares-7', 'paper-dashed-8-7', 'paper-ruled-7-1']);
});

test('a fall along the lines of two bouts shortens the turns', () => {
  // Line 5 of 8: a fall from 8 to 4 words of 8, twice. Four fifths of the four lines before it are 3 lines.
  const bout = [8, 8, 7, 8, 4, 4, 3, 4].map((right) => ({ right, words: 8 }));
  const once = draft({}, { measures: [read(89)], bouts: [bout] }).lines;
  expect(once.find((line) => line.item === 'copy-lines')?.dose.lines, 'one bout tells nothing').not.toBe(3);
  const lines = draft({}, { measures: [read(89)], bouts: [bout, bout] }).lines;
  const main = lines.find((line) => line.item === 'copy-lines');
  // Three lines of a minute each; no rise of fatigue known: four turns of 3 minutes at most.
  expect(main?.dose).toMatchObject({ lines: 3, sets: 4, minutes: 12 });
  expect(lines.some((line) => line.item === 'bouts-with-rest')).toBe(true);
});

test('writing keeps its share: at most five items and 30 minutes, half of them writing', () => {
  const worst = draft(
    { 'in-hand': 1, opposition: 2, strength: 2, wrist: 1, 'arm-support': 1, 'position-sense': 1, touch: 2, grasp: 1 },
    { measures: [read(60), { code: 'closure', value: 40, unit: '%' }, { code: 'gap-ratio', value: 1.5, unit: '1' }] },
  );
  const counted = worst.lines.filter((line) => ['warm-up', 'exercise', 'writing'].includes(line.kind));
  const minutes = (kind?: string) =>
    counted.filter((line) => !kind || line.kind === kind).reduce((sum, line) => sum + dayMinutes(line.dose), 0);
  expect(counted.length).toBeLessThanOrEqual(5);
  expect(minutes()).toBeLessThanOrEqual(30);
  expect(minutes('writing') * 2).toBeGreaterThanOrEqual(minutes());
  expect(worst.leftOut.length).toBeGreaterThan(0);
});

test('every line says why, by which rule, with which source, and what would move it', () => {
  for (const line of draft({ tone: 1, 'in-hand': 1 }, { diagnoses: ['stroke'] }).lines) {
    expect(line.because).not.toBe('');
    expect(line.rule).toMatch(/^[A-Z]/);
    expect(line.source).toBeTruthy();
    expect(line.until).toMatch(/^Up: /);
  }
});

test('what is written in a box of its own needs no ruled paper; beside a list it does', () => {
  const signs = { code: 'signature', words: ['(own signature)'] };
  const papers = (more: Parameters<typeof client>[1]) => {
    const made = draft({ grasp: 1 }, { diagnoses: ['als'], ...more });
    const of = (kind: string) => made.lines.filter((line) => line.kind === kind).map((line) => line.item);
    return { writing: of('writing'), papers: of('paper').length, told: made.leftOut.map(({ because }) => because) };
  };
  const alone = papers({ occasions: [signs] });
  expect(alone.writing).toEqual(['signature-in-place']);
  expect(alone.papers).toBe(0);
  expect(alone.told).toContain('All that is written has its own place: no ruled paper is needed.');
  const withList = papers({ occasions: [signs, { code: 'list', words: ['oat milk', 'seeds'] }] });
  expect(withList.writing).toContain('list-practice');
  expect(withList.papers).toBe(1);
});
