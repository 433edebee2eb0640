/**
 * A whole log typed in one go: one day a line, in the order of the printed columns: "14 20 2 4 0 e" is the 14th, 20
 * minutes, tired 2 before and 4 after, pain 0, easy. A dash leaves one out; "14 -" is a day without practice.
 */
import { daysLater } from '../../texts/days.ts';
import type { PracticeLog } from '../../../../db/types/program.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';

type QuickDay = Pick<PracticeLog, 'date' | 'minutes' | 'fatigueBefore' | 'fatigueAfter' | 'pain'> & {
  felt: 'easy' | 'fair' | 'hard' | null;
};

export interface QuickLog {
  days: QuickDay[];
  /** A sentence for each line that cannot be kept; the others can. */
  problems: string[];
}

const feltOf: Readonly<Record<string, QuickDay['felt']>> = { e: 'easy', f: 'fair', h: 'hard' };

/** The latest day with this day of the month up to today, within two months; or the date itself; null = none. */
function dateOf(text: string, today: string): string | null {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) return Number.isNaN(Date.parse(text)) ? null : text;
  if (!/^\d{1,2}$/.test(text)) return null;
  for (let back = 0; back <= 62; back++) {
    const date = daysLater(today, -back);
    if (Number(date.slice(8)) === Number(text)) return date;
  }
  return null;
}

/** A number 0 to `most`, null for a dash or nothing, or a sentence. */
function numberOf(text: string | undefined, name: string, most: number, words: Told['ladder']): number | null | string {
  if (text === undefined || text === '-') return null;
  const value = Number(text.replace(',', '.'));
  return Number.isInteger(value) && value >= 0 && value <= most
    ? value
    : words.wholeNumber(name, most, text.slice(0, 12));
}

/**
 * @param code of the client whose record is open: a first line with another code is a log of somebody else
 * @param known days that are logged already
 */
export function readQuickLog(
  text: string,
  code: string,
  today: string,
  known: readonly string[] = [],
  told: Told['ladder'],
): QuickLog {
  const lines = text.split('\n').map((line, at) => ({ at: at + 1, words: line.trim().split(/\s+/).filter(Boolean) }));
  const days: QuickDay[] = [];
  const problems: string[] = [];
  const taken = new Set(known);
  for (const { at, words } of lines) {
    const [first] = words;
    if (first === undefined) continue;
    if (at === 1 && words.length === 1 && !/^\d{1,2}$|^\d{4}-\d{2}-\d{2}$/.test(first)) {
      if (first.toLowerCase() === code.toLowerCase()) continue;
      return {
        days: [],
        problems: [told.otherCode(first.slice(0, 20), code)],
      };
    }
    const date = dateOf(first, today);
    const say = (why: string): number => problems.push(told.lineNotTaken(at, why));
    if (date === null) say(told.noDay(first.slice(0, 12)));
    else if (date > today) say(told.inFuture);
    else if (taken.has(date)) say(told.loggedAlready(first));
    else {
      const numbers = [
        numberOf(words[1], told.columns.minutes, 600, told),
        numberOf(words[2], told.columns.before, 10, told),
        numberOf(words[3], told.columns.after, 10, told),
        numberOf(words[4], told.columns.pain, 10, told),
      ];
      const wrong = numbers.find((value) => typeof value === 'string');
      const felt = words[5] === undefined || words[5] === '-' ? null : feltOf[words[5].toLowerCase().slice(0, 1)];
      if (typeof wrong === 'string') say(wrong);
      else if (felt === undefined) say(told.feltLetter(words[5]!.slice(0, 12)));
      else {
        taken.add(date);
        const [minutes, fatigueBefore, fatigueAfter, pain] = numbers as (number | null)[];
        days.push({
          date,
          minutes: minutes ?? 0,
          fatigueBefore: fatigueBefore ?? null,
          fatigueAfter: fatigueAfter ?? null,
          pain: pain ?? null,
          felt,
        });
      }
    }
  }
  return { days, problems };
}
