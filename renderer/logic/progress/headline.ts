/** What stands over the progress page, to be taken in at a glance: how far words and fatigue have moved, and whether it is noise. */
import type { ChangeAnswer } from './change.ts';
import { byDay, type DayPoint } from './change-evidence.ts';
import { wordsReadOf } from '../record/sample-legibility.ts';
import type { ProgressPicture } from './series.ts';

/** One measure, first and last; `last` is null with one day only. */
export interface Moved {
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

type Picture = Pick<ProgressPicture, 'changePoints' | 'fatigue'>;

/** @param change what `describeChange` says of the same picture; after a long break its days alone are compared */
export function headline(picture: Picture, change: ChangeAnswer): Headline {
  const usable = picture.changePoints.filter((p) => p.words > 0 && p.right >= 0 && p.right <= p.words);
  const days = change.evidence?.days ?? byDay(usable).slice(-1);
  const [first, last] = [days[0], days.at(-1)];
  // Two readers can differ: their mean is no whole number of words.
  const count = (day: DayPoint) => wordsReadOf({ accuracy: day.percent / 100, words: day.words });
  const percent = (value: number) => `${Math.round(value)} %`;
  const words: Moved | null =
    first && last
      ? {
          name: 'Words read',
          first: percent(first.percent),
          last: first === last ? null : percent(last.percent),
          detail: first === last ? `${count(first)} words` : `${count(first)} words, now ${count(last)}`,
        }
      : null;
  const tired = picture.fatigue.find((series) => series.id === 'fatigue-after')?.points ?? [];
  const sameSeries = first ? tired.filter((point) => point.day >= first.day) : tired;
  const [rested, now] = [sameSeries[0], sameSeries.at(-1)];
  const fatigue: Moved | null =
    rested && now
      ? {
          name: 'Fatigue after writing',
          first: String(rested.value),
          last: rested === now ? null : String(now.value),
          detail: 'of 10; 10 is as tired as can be',
        }
      : null;
  return { words, fatigue, verdict: verdictWords(change) };
}

function verdictWords({ verdict, evidence }: ChangeAnswer): string {
  if (verdict === 'nothing') return 'Nothing read yet';
  if (verdict === 'cannot-tell') return 'Cannot tell yet';
  if (verdict === 'steady') return 'No clear change';
  const settled = evidence?.outside || (evidence?.beyondMdc && !evidence.mdc?.provisional);
  if (!settled && evidence?.beyondMdc) return `Probably, ${verdict}`;
  return settled ? `Yes, ${verdict}` : `Probably: ${verdict} through the whole series`;
}
