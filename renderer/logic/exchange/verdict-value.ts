/** The verdict about change as one exported value: comparable or not first, then the numbers, then what was left out. */
import { CHANGE_VERSION, CONDITIONS, type ChangeExamination, type ChangeLimits } from '../../change/index.ts';
import { changeHeadline, changeSentences } from '../texts/change/change-words.ts';

interface ExchangeVerdict {
  day: string;
  /** Points from before to now; null where nothing is compared. */
  value: number | null;
  low: number | null;
  high: number | null;
  /** Visits compared. */
  n: number;
  /** Headline and sentences. */
  words: string;
  /** Under what was compared, how the interval and the chance are meant. */
  method: string;
  version: string;
}

/** @returns null where nothing was read yet */
export function verdictValue(found: ChangeExamination, limits: ChangeLimits): ExchangeVerdict | null {
  const { answer, visits, now } = found;
  const last = visits.at(-1);
  if (!last || answer.verdict === 'nothing') return null;
  const compared = now.at(-1)?.conditions;
  const conditions = compared ? CONDITIONS.map((name) => `${name} ${compared[name]}`).join(', ') : '';
  const percent = Number((100 * (1 - 2 * limits.intervalTail)).toFixed(1));
  const method = [
    compared ? `compared under: ${conditions}` : 'nothing compared',
    answer.differs.length > 0 ? `differing: ${answer.differs.join(', ')}` : '',
    answer.leftOut > 0 ? `${answer.leftOut} visits left out` : '',
    answer.change ? `change in percentage points, interval ${percent} %` : '',
    answer.probability === null ? '' : `chance ${answer.probability.toFixed(3)}`,
  ];
  return {
    day: last.day,
    value: answer.change?.mid ?? null,
    low: answer.change?.low ?? null,
    high: answer.change?.high ?? null,
    n: answer.compared,
    words: [`${changeHeadline(found)}.`, ...changeSentences(found, limits)].join(' '),
    method: method.filter(Boolean).join('; '),
    version: CHANGE_VERSION,
  };
}
