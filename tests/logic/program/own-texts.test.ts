/** A clinic's own frames, words and topics: merged over the shipped ones, and refused with a sentence where they do not fit. */
import { expect, test } from 'vitest';
import { textLibrary, type ClinicTexts } from '../../../db/rules/library/text-library.ts';
import { slotsOf } from '../../../db/types/rule-table/text-frame-checks.ts';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { rulesCurrent } from '../../../db/rules/index.ts';
import {
  frameOf,
  withFrame,
  withOff,
  withoutFrame,
  withTopic,
  withWords,
  wordsTyped,
} from '../../../renderer/logic/program/clinic/own-texts.ts';
import { noClinicRules } from '../../../renderer/logic/program/clinic/own-rules.ts';

const shipped = textLibrary();
const none = noClinicRules(rulesCurrent());
const measured = { language: 'en', stream: 'measured', occasion: null } as const;
const list = (language: string, code: string) =>
  shipped.lists.find((each) => each.language === language && each.stream === 'measured' && each.code === code)!;
const why = (clinic: ClinicTexts): string => {
  try {
    textLibrary(clinic);
    return '';
  } catch (error) {
    return (error as Error).message;
  }
};

test('a frame of the clinic is added, changed and taken back, and a shipped one is switched off and on', () => {
  const own = withFrame(none, frameOf(measured, ' Our {trade} sings in the {room} on Sundays. '));
  expect(own.revision).toBe(none.revision + 1);
  const library = textLibrary(own);
  expect(library.frames).toHaveLength(shipped.frames.length + 1);
  expect(library.frames.at(-1)).toMatchObject({
    source: 'clinic',
    text: 'Our {trade} sings in the {room} on Sundays.',
  });
  expect(textLibrary(withoutFrame(own, own.frames![0]!.code)).frames).toEqual(shipped.frames);
  const first = shipped.frames.find(({ language, stream }) => language === 'en' && stream === 'measured')!;
  const off = withOff(none, first.code, true);
  expect(textLibrary(off).frames.some(({ code }) => code === first.code)).toBe(false);
  expect(textLibrary(withOff(off, first.code, false))).toEqual(shipped);
  // In place of a shipped one.
  const instead = withFrame(none, {
    ...frameOf(measured, 'Our {trade} sings in the {room} on Sundays.'),
    code: first.code,
  });
  expect(textLibrary(instead).frames).toHaveLength(shipped.frames.length);
});

test('words and topics are the clinic’s where it changed them', () => {
  const trade = list('en', 'trade');
  const fewer = withWords(none, trade, trade.words.slice(1));
  expect(textLibrary(fewer).lists.find((each) => each.code === 'trade' && each.language === 'en')!.words).not.toContain(
    trade.words[0],
  );
  expect(textLibrary(withWords(fewer, trade, null)).lists).toEqual(shipped.lists);
  const topic = shipped.topics[0]!;
  const more = withTopic(none, topic, [...topic.words, 'marmalade']);
  expect(
    textLibrary(more).topics.find(({ code, language }) => code === topic.code && language === topic.language)!.words,
  ).toContain('marmalade');
  const off = withOff(none, `topic ${topic.language} ${topic.code}`, true);
  expect(textLibrary(off).topics).toHaveLength(shipped.topics.length - 1);
  expect(wordsTyped(' a, b\nc ,, ')).toEqual(['a', 'b', 'c']);
});

test('what does not fit is told by a sentence', () => {
  const frame = (text: string) => why(withFrame(none, frameOf(measured, text)));
  expect(frame('The {ghost} will be here at ten tomorrow morning')).toContain('there is no such list');
  expect(frame('The {trade} comes')).toContain('must have 8 words');
  expect(frame('The extraordinarily well-remembered {trade} sings unbelievably beautifully nowadays')).toContain(
    'a line has room for 64',
  );
  const twice = shipped.frames.find(({ language, stream }) => language === 'en' && stream === 'measured')!.text;
  expect(frame(twice)).toContain('stands there already');
  const trade = list('en', 'trade');
  expect(why(withWords(none, trade, ['plumber', 'baker']))).toContain('has 2 words and needs 8');
  expect(why(withWords(none, trade, [...trade.words, trade.words[0]!]))).toContain('A word stands twice');
  const topic = shipped.topics[0]!;
  expect(why(withTopic(none, topic, topic.words.slice(0, 12)))).toContain('has 12 words and needs 40');
});

test('a word of the wrong gender is found by the shipped lists and by its ending; no shipped word is', () => {
  const brothers = list('es', 'familiar-m');
  expect(why(withWords(none, brothers, [...brothers.words, 'hermana']))).toContain('"hermana" is feminine');
  expect(why(withWords(none, brothers, [...brothers.words, 'vendedora']))).toContain('"vendedora" is feminine');
  expect(why(withWords(none, brothers, [...brothers.words, 'cartero']))).toBe('');
  const trades = list('de', 'beruf-m');
  expect(why(withWords(none, trades, [...trades.words, 'Metzgerin']))).toContain('"Metzgerin" is feminine');
  expect(why({ ...none, wordLists: shipped.lists })).toBe('');
  // Endings that tell nothing: cama is feminine like most words in -ama, problema is not; an electricista may be either.
  const things = list('es', 'cosa-f');
  expect(why(withWords(none, things, [...things.words, 'cama', 'rama', 'yema']))).toBe('');
  expect(why(withWords(none, things, [...things.words, 'problema']))).toContain('"problema" is masculine');
  expect(why(withWords(none, brothers, [...brothers.words, 'electricista', 'colega']))).toBe('');
  const colors = list('es', 'color-m');
  expect(why(withWords(none, colors, [...colors.words, 'rosa']))).toBe('');
});

test('a change that ends the year without repeats is refused', () => {
  const english = shipped.frames.filter(({ language, stream }) => language === 'en' && stream === 'measured');
  const off = english.slice(0, english.length - 5).map(({ code }) => code);
  expect(why({ ...none, off })).toContain('5 frames are left for measured texts (en)');
  const few = Object.fromEntries(shipped.lists.map((each) => [each.code, each.words.slice(0, 8)]));
  const lists = shipped.lists
    .filter(({ language, stream }) => language === 'en' && stream === 'practice')
    .map((each) => ({ ...each, words: few[each.code]! }));
  // The frames that make most are switched off.
  const forms = shipped.frames
    .filter(({ language, occasion }) => language === 'en' && occasion === 'form')
    .sort((a, b) => slotsOf(b.text).length - slotsOf(a.text).length);
  expect(why({ ...none, wordLists: lists, off: forms.slice(0, 11).map(({ code }) => code) })).toMatch(
    /sentences are left for practice of "form" \(en\), and 365 days without a repeat need 1920/,
  );
  const own = textLibrary(withFrame(none, frameOf(measured, 'Our {trade} sings in the {room} on Sundays.')));
  expect(own.frames.length).toBe(shipped.frames.length + 1);
});

test('the limits are rows of the rule table, and the clinic’s value counts', () => {
  const own = withFrame(none, frameOf(measured, 'Our {trade} sings in the {room} on Sundays.'));
  expect(rulesInUse(own).texts.frames).toHaveLength(shipped.frames.length + 1);
  const shorter = { ...own, thresholds: { 'text-line-letters': 30 } };
  expect(() => rulesInUse(shorter)).toThrow('a line has room for 30');
});
