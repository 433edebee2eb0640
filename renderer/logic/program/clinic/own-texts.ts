/** A clinic's own frames, words and topics over the shipped ones. Each change counts the revision up; none takes a shipped row away. */
import type { ClinicRules } from '../../../../db/types/rules.ts';
import type { TextFrame, TextLibrary } from '../../../../db/types/rule-table/text-frames.ts';
import { seedOf } from '../../sample/seeded-choice.ts';
import { withOwn } from './own-rules.ts';

type List = TextLibrary['lists'][number];
type Topic = TextLibrary['topics'][number];

const put = <T>(all: readonly T[] | undefined, one: T | null, isSame: (each: T) => boolean): T[] => [
  ...(all ?? []).filter((each) => !isSame(each)),
  ...(one === null ? [] : [one]),
];

/** A frame of the clinic's own; its code follows from its place and words, so that the same frame is never kept twice. */
export const frameOf = (at: Pick<TextFrame, 'language' | 'stream' | 'occasion'>, text: string): TextFrame => ({
  ...at,
  code: `own-${at.language}-${seedOf(`${at.stream} ${at.occasion ?? ''} ${text.trim()}`).toString(36)}`,
  text: text.trim(),
  source: 'clinic',
  sourceNote: '',
});

export const withFrame = (clinic: ClinicRules, frame: TextFrame): ClinicRules => ({
  ...withOwn(clinic, {}),
  frames: put(clinic.frames, frame, ({ code }) => code === frame.code),
});

export const withoutFrame = (clinic: ClinicRules, code: string): ClinicRules => ({
  ...withOwn(clinic, {}),
  frames: put(clinic.frames, null, (each) => each.code === code),
});

export const topicKey = ({ language, code }: Pick<Topic, 'language' | 'code'>): string => `topic ${language} ${code}`;

/** Switches a frame (by its code) or a topic (by its key) off, or on again. */
export const withOff = (clinic: ClinicRules, key: string, off: boolean): ClinicRules =>
  withOwn(clinic, { off: [...clinic.off.filter((each) => each !== key), ...(off ? [key] : [])] });

const sameList = (list: Pick<List, 'language' | 'stream' | 'code'>) => (each: List) =>
  each.language === list.language && each.stream === list.stream && each.code === list.code;

/** @param words null = the shipped list again */
export const withWords = (clinic: ClinicRules, list: List, words: string[] | null): ClinicRules => ({
  ...withOwn(clinic, {}),
  wordLists: put(clinic.wordLists, words && { ...list, words }, sameList(list)),
});

/** @param words null = the shipped topic again */
export const withTopic = (clinic: ClinicRules, topic: Topic, words: string[] | null): ClinicRules => ({
  ...withOwn(clinic, {}),
  topics: put(
    clinic.topics,
    words && { ...topic, words, onlyNamed: topic.onlyNamed.filter((word) => words.includes(word)) },
    (each) => topicKey(each) === topicKey(topic),
  ),
});

/** Words as they were typed, one a line or parted by commas. */
export const wordsTyped = (typed: string): string[] =>
  typed
    .split(/[\n,]/)
    .map((word) => word.trim())
    .filter(Boolean);

/** Slots that a frame of this stream may use: its lists. */
export const slotsFor = (texts: TextLibrary, at: Pick<TextFrame, 'language' | 'stream'>): string[] =>
  texts.lists
    .filter(({ language, stream }) => language === at.language && stream === at.stream)
    .map(({ code }) => code);
