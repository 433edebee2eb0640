/** Frames, word lists and topics of the texts that are made, as shipped, with the clinic's own laid over them. */
import { checkTextLibrary, type TextLimits, type TextProblem } from '../../types/rule-table/text-frame-checks.ts';
import { clinicTextProblems } from '../../types/rule-table/clinic-text-checks.ts';
import { TextLibrary } from '../../types/rule-table/text-frames.ts';
import measuredEnglish from './texts/measured-en.json' with { type: 'json' };
import measuredGerman from './texts/measured-de.json' with { type: 'json' };
import measuredSpanish from './texts/measured-es.json' with { type: 'json' };
import practiceEnglish from './texts/practice-en.json' with { type: 'json' };
import practiceGerman from './texts/practice-de.json' with { type: 'json' };
import practiceSpanish from './texts/practice-es.json' with { type: 'json' };
import topicsEnglish from './texts/topics-en.json' with { type: 'json' };
import topicsGerman from './texts/topics-de.json' with { type: 'json' };
import textThresholds from './texts/text-thresholds.json' with { type: 'json' };
import topicsSpanish from './texts/topics-es.json' with { type: 'json' };

const files = [measuredEnglish, measuredSpanish, measuredGerman, practiceEnglish, practiceSpanish, practiceGerman];

/** As it lies in the files, before any check. */
const shippedTexts = {
  frames: files.flatMap(({ frames, language, stream, source, sourceNote }) =>
    frames.map((frame) => ({ ...frame, language, stream, source, sourceNote })),
  ),
  lists: files.flatMap(({ lists, language, stream }) => lists.map((list) => ({ ...list, language, stream }))),
  topics: [topicsEnglish, topicsSpanish, topicsGerman].flatMap(({ topics, language }) =>
    topics.map((topic) => ({ ...topic, language })),
  ),
};

/** What a clinic changed: frames, lists and topics of its own or in place of shipped ones; frames and topics switched off. */
export interface ClinicTexts {
  frames?: TextLibrary['frames'] | undefined;
  wordLists?: TextLibrary['lists'] | undefined;
  topics?: TextLibrary['topics'] | undefined;
  off?: readonly string[] | undefined;
}

/** The frames or lists cannot be used; the message names the place and the reason. */
export class TextLibraryError extends Error {
  readonly problems: TextProblem[];
  constructor(problems: TextProblem[]) {
    const first = problems[0];
    super(first ? `The texts have an error at ${first.path.join('.')}: ${first.reason}` : 'The texts are wrong.');
    this.problems = problems;
  }
}

let shipped: TextLibrary | null = null;

/**
 * The texts in force.
 * @param limits rows of the rule table in force; as shipped where none are given
 * @throws TextLibraryError naming the first frame or list that is wrong
 */
export function textLibrary(clinic: ClinicTexts | null = null, limits: TextLimits = textThresholds): TextLibrary {
  shipped ??= checked(TextLibrary.parse(shippedTexts), textThresholds);
  const frames = clinic?.frames ?? [];
  const lists = clinic?.wordLists ?? [];
  const off = new Set(clinic?.off ?? []);
  const topics = clinic?.topics ?? [];
  if (frames.length + lists.length + topics.length + off.size === 0) return shipped;
  const own = new Set([...frames.map((frame) => frame.code), ...off]);
  const listKey = (list: TextLibrary['lists'][number]): string => `${list.language} ${list.stream} ${list.code}`;
  const ownLists = new Set(lists.map(listKey));
  const topicKey = (topic: TextLibrary['topics'][number]): string => `topic ${topic.language} ${topic.code}`;
  const ownTopics = new Set([...topics.map(topicKey), ...off]);
  const merged = {
    topics: [
      ...shipped.topics.filter((topic) => !ownTopics.has(topicKey(topic))),
      ...topics.filter((topic) => !off.has(topicKey(topic))),
    ],
    frames: [...shipped.frames.filter((frame) => !own.has(frame.code)), ...frames.filter((f) => !off.has(f.code))],
    lists: [...shipped.lists.filter((list) => !ownLists.has(listKey(list))), ...lists],
  };
  checked(merged, limits);
  const problems = clinicTextProblems(merged, shipped, { frames, lists }, limits);
  if (problems.length > 0) throw new TextLibraryError(problems);
  return merged;
}

function checked(library: TextLibrary, limits: TextLimits): TextLibrary {
  const problems = checkTextLibrary(library, limits);
  if (problems.length > 0) throw new TextLibraryError(problems);
  return library;
}
