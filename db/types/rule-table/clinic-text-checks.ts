/** What a clinic's own frames and lists must hold beside `checkTextLibrary`: length, agreement, and a year without repeats. */
import { slotsOf, type TextProblem } from './text-frame-checks.ts';
import type { TextFrame, TextLibrary } from './text-frames.ts';

/** Letters and spaces of the longest sentence that the shipped frames make: what a line of the papers was laid out for. */
const MOST_LETTERS = 64;
/** Letters taken for a slot that is drawn anew (a date, a sum) or comes from the client's topics. */
const DRAWN_LETTERS = 10;
/** Different values of such a slot, at least: a topic has 40 words. */
const DRAWN_VALUES = 40;
/**
 * Sentences that 365 days without a repeat need (computed in the clinical notes): of measured ones for a sole reader of
 * 20 clients, of practice ones for an occasion of one client.
 */
const NEEDED = { measured: 3120, practice: 1920 } as const;
/** Frames that keep one from coming again within two texts of three sentences. */
const LEAST_FRAMES = 9;

type Gender = 'm' | 'f' | 'n';
const genderWords: Record<Gender, string> = { m: 'masculine', f: 'feminine', n: 'neuter' };
/** Lists whose slot stands behind an article or an adjective say so at the end of their code. */
const genderOfList = (code: string): Gender | null => (/-([mfn])$/.exec(code)?.[1] as Gender | undefined) ?? null;

/** Endings that tell the gender; what does not follow them. */
const endings: Record<string, readonly (readonly [ending: RegExp, gender: Gender])[]> = {
  es: [
    [/^(mano|foto|moto|radio)$/, 'f'],
    [/^(día|mapa|clima|planeta|idioma|tranvía|sofá)$|ema$|ama$/, 'm'],
    [/o$/, 'm'],
    [/a$|ción$|sión$|dad$|tad$/, 'f'],
  ],
  de: [
    [/erin$|ung$|heit$|keit$|schaft$/, 'f'],
    [/lein$/, 'n'],
  ],
};

/** Genders of the words that stand in shipped lists; a word of two lists of different gender fits both. */
function knownGenders(shipped: TextLibrary, language: string): Map<string, Gender | null> {
  const known = new Map<string, Gender | null>();
  for (const list of shipped.lists) {
    const gender = genderOfList(list.code);
    if (list.language !== language || gender === null) continue;
    for (const word of list.words) {
      const key = word.toLowerCase();
      known.set(key, known.has(key) && known.get(key) !== gender ? null : gender);
    }
  }
  return known;
}

function agreement({ code, language, words }: TextLibrary['lists'][number], shipped: TextLibrary): TextProblem[] {
  const wanted = genderOfList(code);
  if (wanted === null) return [];
  const known = knownGenders(shipped, language);
  const of = (word: string): Gender | null | undefined => {
    const key = word.toLowerCase();
    if (known.has(key)) return known.get(key);
    return endings[language]?.find(([ending]) => ending.test(key))?.[1];
  };
  const wrong = words.find((word) => (of(word) ?? wanted) !== wanted);
  return wrong === undefined
    ? []
    : [
        {
          path: ['lists', code],
          reason: `"${wrong}" is ${genderWords[of(wrong)!]}, and the words of "${code}" stand where a ${genderWords[wanted]} one belongs.`,
        },
      ];
}

const wordsOf = (library: TextLibrary, frame: TextFrame) => {
  const lists = library.lists.filter(({ language, stream }) => language === frame.language && stream === frame.stream);
  return (slot: string): readonly string[] | undefined => lists.find(({ code }) => code === slot)?.words;
};

/** Letters of the longest sentence that a frame makes. */
function longestOf(library: TextLibrary, frame: TextFrame): number {
  const words = wordsOf(library, frame);
  return slotsOf(frame.text).reduce((sum, slot) => {
    const list = words(slot);
    return sum - slot.length - 2 + (list ? Math.max(...list.map(({ length }) => length)) : DRAWN_LETTERS);
  }, frame.text.length);
}

const streamOf = (frame: TextFrame): string => `${frame.language} ${frame.stream} ${frame.occasion ?? ''}`;

/** Streams that a change leaves with too few sentences for a year. */
function shortages(library: TextLibrary, shipped: TextLibrary): TextProblem[] {
  const streams = new Map<string, { frame: TextFrame; frames: number; sentences: number }>();
  for (const frame of shipped.frames) streams.set(streamOf(frame), { frame, frames: 0, sentences: 0 });
  for (const frame of library.frames) {
    const words = wordsOf(library, frame);
    const stream = streams.get(streamOf(frame)) ?? { frame, frames: 0, sentences: 0 };
    stream.frames += 1;
    stream.sentences += [...new Set(slotsOf(frame.text))].reduce(
      (product, slot) => product * (words(slot)?.length ?? DRAWN_VALUES),
      1,
    );
    streams.set(streamOf(frame), stream);
  }
  return [...streams.values()].flatMap(({ frame, frames, sentences }) => {
    const needed = NEEDED[frame.stream];
    const of = frame.occasion === null ? 'measured texts' : `practice of "${frame.occasion}"`;
    const path = ['frames'];
    // A stream of the clinic's own language begins with one frame.
    if (!shipped.frames.some((each) => streamOf(each) === streamOf(frame))) return [];
    if (frames < LEAST_FRAMES)
      return [
        {
          path,
          reason: `${frames} frames are left for ${of} (${frame.language}), and ${LEAST_FRAMES} are needed so that none comes again within two texts.`,
        },
      ];
    return sentences >= needed
      ? []
      : [
          {
            path,
            reason: `${sentences} sentences are left for ${of} (${frame.language}), and 365 days without a repeat need ${needed}.`,
          },
        ];
  });
}

/** Everything wrong with a clinic's own frames and lists in the merged library; an empty list = they may be used. */
export function clinicTextProblems(
  merged: TextLibrary,
  shipped: TextLibrary,
  own: { frames: readonly TextFrame[]; lists: TextLibrary['lists'] },
): TextProblem[] {
  return [
    ...own.frames.flatMap((frame): TextProblem[] => {
      const path = ['frames', frame.code];
      const longest = longestOf(merged, frame);
      if (longest > MOST_LETTERS)
        return [
          { path, reason: `"${frame.text}" makes up to ${longest} letters, and a line has room for ${MOST_LETTERS}.` },
        ];
      const same = merged.frames.some(
        (each) =>
          each.code !== frame.code &&
          streamOf(each) === streamOf(frame) &&
          each.text.toLowerCase() === frame.text.toLowerCase(),
      );
      return same ? [{ path, reason: `"${frame.text}" stands there already.` }] : [];
    }),
    ...own.lists.flatMap((list) => agreement(list, shipped)),
    ...shortages(merged, shipped),
  ];
}
