/** What the client wants to write: the occasions that are ticked, and the item of the program that each one is practiced by. */
import type { OccasionCode, WritingOccasion } from '../../../db/types/occasions.ts';
import type { ClientRecord } from '../../../db/types/record.ts';

/** Item of the program for each occasion. */
export const itemOfOccasion: Readonly<Record<OccasionCode, string>> = {
  signature: 'signature-in-place',
  check: 'check-practice',
  list: 'list-practice',
  message: 'message-practice',
  form: 'form-boxes',
  card: 'card-practice',
  diary: 'diary-practice',
  work: 'work-note-practice',
  recipe: 'recipe-practice',
  'name-address': 'own-name-address',
  numbers: 'dates-numbers-practice',
  board: 'board-practice',
  other: 'own-text',
};

const oftenFirst: readonly (WritingOccasion['often'] | null)[] = ['daily', 'weekly', 'monthly', 'seldom', null];

/** Ticked occasions, what is written most often first. */
export const occasionsWanted = (record: Pick<ClientRecord, 'writingOccasions'>): WritingOccasion[] =>
  record.writingOccasions
    .filter((each) => each.on)
    .sort((a, b) => oftenFirst.indexOf(a.often) - oftenFirst.indexOf(b.often) || a.at.localeCompare(b.at));

/** As the program takes them: codes with words and topics. */
export const occasionInput = (record: Pick<ClientRecord, 'writingOccasions'>) =>
  occasionsWanted(record).map(({ code, words, topics }) => ({
    code,
    words: words.slice(0, 60).map((word) => word.text),
    topics: [...topics],
  }));

/** Topics of all occasions, each once. */
export const topicsOf = (record: Pick<ClientRecord, 'writingOccasions'>): string[] => [
  ...new Set(occasionsWanted(record).flatMap((each) => each.topics)),
];
