/** What stands over the progress page, to be taken in at a glance: how far words and fatigue have moved, and whether it is noise. */
import type { ChangeExamination, Visit } from '../../change/index.ts';
import type { Language } from '../texts/languages.ts';
import type { Telling } from '../texts/screens/telling.ts';
import { changeHeadline } from '../texts/change/change-words.ts';
import type { ProgressPicture } from './series.ts';

/** One measure, first and last; `last` is null with one day only. */
interface Moved {
  name: string;
  first: string;
  last: string | null;
  /** What the figures are made of. */
  detail: string;
}

export interface Headline {
  words: Moved | null;
  fatigue: Moved | null;
  /** A few words about the words read: up, down, or why neither can be said. */
  verdict: string;
}

const percent = (value: number): string => `${Math.round(value)} %`;

/** Levels before and now, as the verdict compares them; the latest visit alone where nothing is compared. */
function wordsMoved({ answer, visits }: ChangeExamination, { told, decimals }: Telling): Moved | null {
  const said = told.course;
  const { before, now, perWords } = answer;
  if (before !== null && now !== null && perWords !== null) {
    const about = (level: number): number => Math.round((level * perWords) / 100);
    return {
      name: said.wordsRead,
      first: percent(before),
      last: percent(now),
      detail: said.aboutThenNow(about(before), about(now), perWords),
    };
  }
  const latest = visits.at(-1);
  if (!latest) return null;
  const { right, words } = meanCount(latest);
  return {
    name: said.wordsRead,
    first: percent((100 * right) / words),
    last: null,
    detail: said.ofWords(decimals(right, 1, 0), words),
  };
}

function meanCount({ readers }: Visit): { right: number; words: number } {
  const read = [...readers.values()];
  const words = Math.max(...read.map((count) => count.words));
  return { right: (read.reduce((sum, count) => sum + count.right / count.words, 0) / read.length) * words, words };
}

/** @param found what the model says of the same record; after a long break its days alone are compared */
export function headline(
  { fatigue: series }: Pick<ProgressPicture, 'fatigue'>,
  found: ChangeExamination,
  language: Language,
  telling: Telling,
): Headline {
  const since = found.answer.sinceDay ?? '';
  const tired = (series.find(({ id }) => id === 'fatigue-after')?.points ?? []).filter(({ day }) => day >= since);
  const [rested, now] = [tired[0], tired.at(-1)];
  const fatigue: Moved | null =
    rested && now
      ? {
          name: telling.told.course.fatigueAfter,
          first: String(rested.value),
          last: rested === now ? null : String(now.value),
          detail: telling.told.course.ofTen,
        }
      : null;
  return { words: wordsMoved(found, telling), fatigue, verdict: changeHeadline(found, language) };
}
