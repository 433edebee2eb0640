/** What was said after each visit: the same model asked with what was known then. */
import { examineChange, type ChangeLimits, type ReadSample, type RepeatPair } from '../../change/index.ts';
import type { Language } from '../texts/languages.ts';
import { changeHeadline } from '../texts/change/change-words.ts';

export interface PastVerdict {
  day: string;
  words: string;
}

export interface PastQuestion {
  samples: readonly ReadSample[];
  pairs: readonly RepeatPair[];
  limits: ChangeLimits;
  language: Language;
}

/** Oldest first. 156 visits take seconds: asked in a worker. */
export function pastVerdicts({ samples, pairs, limits, language }: PastQuestion): PastVerdict[] {
  const days = [...new Set(samples.map(({ day }) => day))].sort();
  return days.map((day) => {
    const known = samples.filter((sample) => sample.day <= day);
    return { day, words: changeHeadline(examineChange({ samples: known, pairs }, limits), language) };
  });
}
