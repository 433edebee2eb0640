/** What a clinic's own frames and lists must hold beside `checkTextLibrary`: length, agreement, and a year without repeats. */
import { slotsOf, type TextLimits, type TextProblem } from './text-frame-checks.ts';
import type { TextFrame, TextLibrary } from './text-frames.ts';
import { threshold } from './threshold.ts';

type Gender = 'm' | 'f' | 'n';
const genderWords: Record<Gender, string> = { m: 'masculine', f: 'feminine', n: 'neuter' };
/** Lists whose slot stands behind an article or an adjective say so at the end of their code. */
const genderOfList = (code: string): Gender | null => (/-([mfn])$/.exec(code)?.[1] as Gender | undefined) ?? null;

/** Endings that tell the gender, after the words that do not follow them; null = fits both. School grammar, from memory. */
const endings: Record<string, readonly (readonly [ending: RegExp, gender: Gender | null])[]> = {
  es: [
    [/^(mano|foto|moto|radio|lista|pista|vista|revista|entrevista|autopista)$/, 'f'],
    [/^(día|mapa|clima|planeta|idioma|tranvía|sofá)$/, 'm'],
    // Not the many others: cama, rama, crema, yema.
    [/^(lema|dilema|problema|poema|esquema|pijama|drama|panorama)$|tema$|grama$/, 'm'],
    // People of both genders, and colors that do not change.
    [/ista$|^(colega|atleta|guía|policía|poeta|rosa|naranja|violeta|lila)$/, null],
    [/o$/, 'm'],
    [/a$|ción$|sión$|dad$|tad$/, 'f'],
  ],
  de: [
    [/sprung$|schwung$/, 'm'],
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

/** Letters of the longest sentence that a frame makes. @param drawn letters of a word that is drawn anew or of a topic */
function longestOf(library: TextLibrary, frame: TextFrame, drawn: number): number {
  const words = wordsOf(library, frame);
  return slotsOf(frame.text).reduce((sum, slot) => {
    const list = words(slot);
    return sum - slot.length - 2 + (list ? Math.max(...list.map(({ length }) => length)) : drawn);
  }, frame.text.length);
}

const streamOf = (frame: TextFrame): string => `${frame.language} ${frame.stream} ${frame.occasion ?? ''}`;

/** Shipped streams that a change leaves with too few sentences for a year. A stream of the clinic's own begins with one frame. */
function shortages(library: TextLibrary, shipped: TextLibrary, limits: TextLimits): TextProblem[] {
  const leastFrames = threshold(limits, 'text-frames-least');
  // What is drawn anew has at least as many values as a topic has words.
  const drawnValues = threshold(limits, 'text-topic-words');
  const left = Map.groupBy(library.frames, streamOf);
  const path = ['frames'];
  return [...new Map(shipped.frames.map((frame) => [streamOf(frame), frame]))].flatMap(([stream, first]) => {
    const frames = left.get(stream) ?? [];
    const words = wordsOf(library, first);
    const of = `${first.occasion === null ? 'measured texts' : `practice of "${first.occasion}"`} (${first.language})`;
    if (frames.length < leastFrames) {
      const reason = `${frames.length} frames are left for ${of}, and ${leastFrames} are needed so that none comes again within two texts.`;
      return [{ path, reason }];
    }
    const sentences = frames
      .map(({ text }) => new Set(slotsOf(text)))
      .reduce((sum, slots) => sum + [...slots].reduce((all, slot) => all * (words(slot)?.length ?? drawnValues), 1), 0);
    const needed = threshold(limits, `text-year-${first.stream}`);
    if (sentences >= needed) return [];
    const reason = `${sentences} sentences are left for ${of}, and 365 days without a repeat need ${needed}.`;
    return [{ path, reason }];
  });
}

/** Everything wrong with a clinic's own frames and lists in the merged library; an empty list = they may be used. */
export function clinicTextProblems(
  merged: TextLibrary,
  shipped: TextLibrary,
  own: { frames: readonly TextFrame[]; lists: TextLibrary['lists'] },
  limits: TextLimits,
): TextProblem[] {
  const mostLetters = threshold(limits, 'text-line-letters');
  const drawnLetters = threshold(limits, 'text-line-drawn');
  return [
    ...own.frames.flatMap((frame): TextProblem[] => {
      const path = ['frames', frame.code];
      const longest = longestOf(merged, frame, drawnLetters);
      if (longest > mostLetters)
        return [
          { path, reason: `"${frame.text}" makes up to ${longest} letters, and a line has room for ${mostLetters}.` },
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
    ...shortages(merged, shipped, limits),
  ];
}
