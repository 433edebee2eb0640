import type { Dose } from '../../../db/types/program.ts';
import type { Texts } from './en.ts';

/** How much of one line: "10 minutes, 6 lines, rest 2 minutes", or "4 turns of 5 minutes, rest 5 minutes after each". */
export function amountWords(dose: Dose, t: Texts['dose']): string {
  const parts: string[] = [];
  if (dose.form === 'bouts' && dose.sets) {
    parts.push(turnsWords(dose, dose.sets, t));
    if (dose.restMinutes && dose.sets > 1) parts.push(t.restAfterEach(t.restTime(dose.restMinutes)));
    if (dose.lines) parts.push(t.linesATurn(dose.lines));
    return parts.join(', ');
  }
  if (dose.minutes) parts.push(t.minutes(dose.minutes));
  if (dose.lines) parts.push(t.lines(dose.lines));
  if (dose.reps) parts.push(t.reps(dose.sets, dose.reps));
  if (dose.restMinutes) parts.push(t.rest(t.restTime(dose.restMinutes)));
  return parts.join(', ');
}

/** Tenths of a minute: what a kitchen timer can be set to. */
const turnsWords = ({ minutes }: Dose, sets: number, t: Texts['dose']): string =>
  t.turns(sets, Math.round(((minutes ?? 0) / sets) * 10) / 10);

/** The time of one line alone; more turns than one stay turns, so that nobody writes them in one go. */
export const timeWords = (dose: Dose, t: Texts['dose']): string =>
  dose.form === 'bouts' && dose.sets && dose.sets > 1
    ? turnsWords(dose, dose.sets, t)
    : dose.minutes
      ? t.minutes(dose.minutes)
      : amountWords(dose, t);

/** How often: "twice a day, 5 days a week". */
function oftenWords(dose: Pick<Dose, 'timesPerDay' | 'daysPerWeek'>, t: Texts['dose']): string {
  const parts: string[] = [];
  if (dose.timesPerDay) parts.push(t.perDay(dose.timesPerDay));
  if (dose.daysPerWeek) parts.push(t.perWeek(dose.daysPerWeek));
  return parts.join(', ');
}

/** How the line is done, or '' where its numbers say it all. */
export const howWords = (dose: Dose, t: Texts['dose']): string =>
  Object.hasOwn(t.how, dose.how) ? t.how[dose.how]! : '';

/** The whole dose in one go, for the screen and the command line; the therapist's own wording comes first. */
export function doseWords(dose: Dose, t: Texts['dose']): string {
  if (dose.text !== '') return dose.text;
  const how = howWords(dose, t);
  if (dose.minutes === null) return how;
  const counted = how === '' || dose.form === 'bouts';
  const amount = counted ? amountWords(dose, t) : t.minutes(dose.minutes);
  return [how, `${[amount, oftenWords(dose, t)].filter(Boolean).join(', ')}.`].filter(Boolean).join(' ');
}

export interface DosedLines {
  /** Dose of each line as the family reads it. */
  doses: string[];
  /** How often of each line, without what all lines share. */
  often: string[];
  /** What all lines share, or ''. */
  common: string;
}

/** Doses of several lines; how often, or at least the days a week, is said once where it is the same for all. */
export function doseOfLines(doses: readonly Dose[], t: Texts['dose']): DosedLines {
  const whole = doses.map((dose) => oftenWords(dose, t));
  const same = whole.length > 1 && new Set(whole).size === 1;
  const days =
    doses.length > 1 && new Set(doses.map((dose) => dose.daysPerWeek)).size === 1 ? doses[0]!.daysPerWeek : null;
  const often = doses.map((dose) => (same ? '' : oftenWords(days ? { ...dose, daysPerWeek: null } : dose, t)));
  const amounts = doses.map((dose) =>
    howWords(dose, t) && dose.form !== 'bouts' && dose.minutes ? t.minutes(dose.minutes) : amountWords(dose, t),
  );
  return {
    doses: doses.map((dose, i) => [amounts[i], often[i]].filter(Boolean).join(', ') || dose.text || howWords(dose, t)),
    often,
    common: same ? (whole[0] ?? '') : days ? t.perWeek(days) : '',
  };
}

/** 452 mm as "45 cm"; in inches for readers who think in them: "18 in (45 cm)". */
export function lengthWords(mm: number, locale: string): string {
  return readsInches(locale) ? `${inInches(mm)} (${inCm(mm)})` : inCm(mm);
}

export function readsInches(locale: string): boolean {
  return locale.startsWith('en-US');
}

/** Whole centimeters. */
export function inCm(mm: number): string {
  return `${Math.round(mm / 10)} cm`;
}

/** Quarter inches, as finely as a chair can be set: the same number as on the screen of the set-up. */
export function inInches(mm: number): string {
  const quarters = Math.round(mm / 25.4 / 0.25);
  const whole = Math.floor(quarters / 4);
  const fraction = ['', '1/4', '1/2', '3/4'][quarters - 4 * whole]!;
  return `${[whole > 0 || fraction === '' ? String(whole) : '', fraction].filter(Boolean).join(' ')} in`;
}
