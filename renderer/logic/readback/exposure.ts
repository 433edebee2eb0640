/** What a reader knows of a text from earlier: read before, or from having taken the sample. */
import type { Told } from '../texts/screens/en/screens-en.ts';
import { sentenceKey } from '../sample/fill-frame.ts';

/** One meeting of a reader with a text. */
export interface TextMet {
  sampleId: string;
  how: 'read' | 'took';
  /** ISO 8601. */
  at: string;
  codes: readonly string[];
  /** Lines of the text. */
  text: string;
}

interface Text {
  sampleId: string;
  textCodes: readonly string[];
  text: string;
}

const sentences = (text: string): string[] => text.split(/\r?\n/).map(sentenceKey).filter(Boolean);

/**
 * Meetings with the same text: a shared text code or a shared sentence. Reading this very sample is no meeting before
 * it, taking it is.
 */
export function meetings({ sampleId, textCodes, text }: Text, met: readonly TextMet[]): TextMet[] {
  const own = new Set(sentences(text));
  return met.filter(
    (each) =>
      (each.sampleId !== sampleId || each.how === 'took') &&
      (each.codes.some((code) => textCodes.includes(code)) || sentences(each.text).some((line) => own.has(line))),
  );
}

/** What is known of the texts that wait for a reader. */
export interface Exposure {
  /** Samples among those waiting whose text the reader has met. */
  samples: number;
  /** Of these, samples that the reader has taken. */
  taken: number;
  /** Most times that one text was met. */
  times: number;
  /** Latest meeting, ISO 8601; '' without one. */
  last: string;
  /** Waiting samples whose text stands in another waiting one: who reads both knows the second. */
  repeated: number;
}

/** @returns null where the reader has met none of the texts, and none waits twice */
export function exposureOf(samples: readonly Text[], met: readonly TextMet[]): Exposure | null {
  const known = samples.map((sample) => ({ sample, met: meetings(sample, met) })).filter((each) => each.met.length > 0);
  const repeated = samples.filter((sample, i) => {
    const before = samples
      .slice(0, i)
      .map((each) => ({ ...each, how: 'read' as const, at: '', codes: each.textCodes }));
    return meetings(sample, before).length > 0;
  }).length;
  if (known.length === 0 && repeated === 0) return null;
  return {
    samples: known.length,
    taken: known.filter(({ sample, met: all }) => all.some((m) => m.how === 'took' && m.sampleId === sample.sampleId))
      .length,
    times: Math.max(0, ...known.map((each) => each.met.length)),
    last:
      known
        .flatMap((each) => each.met.map(({ at }) => at))
        .sort()
        .at(-1) ?? '',
    repeated,
  };
}

/**
 * The warning before somebody reads a text again.
 * @param day how an instant is written
 */
export function exposureSentence(
  { samples, taken, times, last, repeated }: Exposure,
  day: (iso: string) => string,
  words: Told['reading'],
): string {
  return [
    ...(samples > 0 ? [words.textKnown(samples, times, day(last))] : []),
    ...(taken > 0 ? [words.takenByReader(taken)] : []),
    ...(repeated > 0 ? [words.sameTextTwice] : []),
    words.whoKnowsReadsMore,
  ].join(' ');
}
