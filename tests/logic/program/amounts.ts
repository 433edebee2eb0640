/**
 * Whether a client's lines name two amounts for one thing: the words of a line beside its dose, and what lines without
 * minutes say of turns and rests. "One line at a time" and words within one line are no amounts of the day.
 */
import type { ProgramLine } from '../../../db/types/program.ts';
import { howWords } from '../../../renderer/logic/texts/dose-words.ts';
import { texts } from '../../../renderer/logic/texts/en.ts';

const numbers: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
};
const pattern =
  /\b(\d+|one|two|three|four|five|six|seven|eight|nine|ten) (?:more |short |whole |own )*(lines?|things?|minutes?|turns?|cards?|checks?)\b(?! (?:at a time|in print|under))/gi;

type Amount = { unit: string; n: number };
/** Many clients read the same words. */
const known = new Map<string, Amount[]>();

/** Amounts that words name, as "lines 3". */
function amountsIn(words: string): Amount[] {
  const found =
    known.get(words) ??
    [...words.matchAll(pattern)].map(([, n = '', unit = '']) => ({
      unit: unit.toLowerCase().replace(/s$/, ''),
      n: numbers[n.toLowerCase()] ?? Number(n),
    }));
  known.set(words, found);
  return found;
}

const isTimed = (line: ProgramLine): boolean => line.dose.minutes !== null;

/** Sentences about amounts that do not agree; none where every page can say the same. */
export function amountClashes(lines: readonly ProgramLine[]): string[] {
  const inTurns = lines.filter((line) => isTimed(line) && line.dose.form === 'bouts');
  const turnMinutes = new Set(inTurns.map(({ dose }) => (dose.minutes ?? 0) / (dose.sets ?? 1)));
  const rests = new Set(inTurns.map(({ dose }) => dose.restMinutes?.least));
  return lines.flatMap((line) => {
    const { dose } = line;
    const said = amountsIn(`${line.text} ${howWords(dose, texts.dose)}`);
    const agrees = ({ unit, n }: Amount): boolean => {
      if (unit === 'minute') return isTimed(line) || turnMinutes.has(n) || rests.has(n);
      if (!isTimed(line)) return true;
      if (unit === 'line') return dose.lines === null ? dose.form !== 'bouts' : dose.lines === n;
      return dose.form !== 'bouts' || (unit === 'turn' && dose.sets === n);
    };
    return said.filter((each) => !agrees(each)).map(({ unit, n }) => `${line.item} says ${n} ${unit}`);
  });
}
