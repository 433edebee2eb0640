/** Samples and practice pages by what the client wants to write: CLINICAL notes 2, a2, a5, a8. */
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { OccasionCode } from '../../../db/types/occasions.ts';
import { occasionTask } from '../../../renderer/logic/pages/practice/occasion-sample.ts';
import { paperOfOccasion } from '../../../renderer/logic/pages/practice/daily-pages.ts';
import { checkModels, practiceLines } from '../../../renderer/logic/pages/practice/practice-lines.ts';
import { practiceSheets } from '../../../renderer/logic/pages/practice/practice.ts';
import { selfCheckCard } from '../../../renderer/logic/pages/kinds/self-check-card.ts';
import { textsOf } from '../../../renderer/logic/pages/sheet/fit-sheets.ts';
import { texts } from '../../../renderer/logic/texts/en.ts';
import { input, programLine, record } from './record.ts';
import { practiceAsked } from './practice-asked.ts';

const rules = rulesInUse(null);
const none = { words: [], topics: [] };

test('every occasion has a sample; signature and address keep no text; the same draw gives the same words', () => {
  const client = record();
  for (const code of OccasionCode.options) {
    const task = occasionTask(client, { code, ...none }, rules.texts, 0);
    expect(task.occasion).toBe(code);
    expect(task.text === '').toBe(code === 'signature' || code === 'name-address');
    expect(occasionTask(client, { code, ...none }, rules.texts, 0)).toEqual(task);
    if (task.text !== '') expect(occasionTask(client, { code, ...none }, rules.texts, 1).text).not.toBe(task.text);
  }
  expect(occasionTask(client, { code: 'list', ...none }, rules.texts, 0).text.split('\n')).toHaveLength(6);
  expect(occasionTask(client, { code: 'numbers', ...none }, rules.texts, 0).text.split('\n')).toHaveLength(6);
});

test('a list without topics asks for food and things of the house, and the client’s shops stand in it', () => {
  const words = [{ kind: 'place' as const, text: 'the corner market' }];
  const lines = practiceLines(rules.texts, {
    language: 'en',
    occasion: 'list',
    words,
    topics: [],
    seed: 3,
    count: 200,
    used: new Set(),
    lastFrames: new Set(),
    phraseShare: 30,
    mostLetters: null,
  }).map(({ text }) => text);
  const strange = rules.texts.topics.find((topic) => topic.code === 'music' && topic.language === 'en')!.words;
  expect(lines.filter((line) => strange.some((word) => line.split(/[ ,]+/).includes(word)))).toEqual([]);
  expect(lines.some((line) => line.includes('the corner market'))).toBe(true);
});

test('checks are printed as checks, large before true size, each with new words and PRACTICE across it', () => {
  expect(paperOfOccasion('check', 2)).toBe('check-large');
  expect(paperOfOccasion('check', 4)).toBe('check-true');
  expect(paperOfOccasion('form', 3)).toBe('boxes-6');
  expect(paperOfOccasion('list', 3)).toBeNull();
  const models = checkModels(
    rules.texts,
    [{ kind: 'person', text: 'Mr. Olin' }],
    { seed: 1, count: 40, language: 'en' },
    new Set(),
  );
  expect(new Set(models).size).toBe(40);
  expect(models.some((model) => model.includes('Mr. Olin'))).toBe(true);
  const request = practiceAsked({ ruling: 'check-true', models: models.slice(0, 3) });
  for (const sheet of ['A4', 'Letter'] as const) {
    const [first] = practiceSheets({ ...request, sheet });
    expect(first!.texts.filter(({ text }) => text === 'PRACTICE')).not.toHaveLength(0);
    const xs = first!.lines.flatMap((line) => [line.x1, line.x2]);
    // 6 by 2 3/4 inches, from memory.
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(152, 5);
    const [top, bottom] = [first!.lines[0]!, first!.lines[1]!];
    expect(bottom.y1 - top.y1).toBe(70);
  }
});

test('the check card of somebody who only signs asks whose signature it is, not whether words can be read', () => {
  const card = (...items: string[]): string => {
    const lines = items.map((item) => programLine({ kind: 'writing', item }));
    const from = input({ record: record((r) => (r.programs[0]!.lines = lines)) });
    return selfCheckCard(from, 14, texts).flatMap(textsOf).join(' ');
  };
  expect(card('signature-in-place')).toContain('Is it mine?');
  expect(card('signature-in-place')).not.toMatch(/\bread\b|words/);
  expect(card('signature-in-place', 'list-practice')).toContain('Can I read every word?');
});

test('each turn of a page has a line of its own, and none comes again while there is another', () => {
  const asked = { linesPerBout: 1, bouts: 3, restText: 'rest', nextTimeText: '' };
  const request = practiceAsked({ ...asked, models: ['one', 'two', 'three'] });
  const shown = practiceSheets(request).flatMap((sheet) => sheet.texts.map(({ text }) => text));
  expect(shown).toEqual(['one', 'rest', 'two', 'rest', 'three']);
});
