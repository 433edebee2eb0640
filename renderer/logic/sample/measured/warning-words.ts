/**
 * Warnings of the measuring engine in the shown language. The engine keeps a code and an English sentence with each
 * result; what a sentence takes in (a line, a contrast) is read back from it, so that results of every age are told.
 */
import type { Told } from '../../texts/screens/en/screens-en.ts';
import type { Telling } from '../../texts/screens/telling.ts';

interface Warning {
  code: string;
  message: string;
}

const numberIn = (message: string, pattern: RegExp): number | null => {
  const found = pattern.exec(message)?.[1];
  return found === undefined ? null : Number(found);
};

/** "1 to 3 and 7" -> "1-3, 7": the same in each language. */
const lineNumbers = (listed: string): string => listed.replaceAll(' to ', '–').replaceAll(' and ', ', ');

function printedWords(message: string, words: Told['warnings']): string {
  const one = /^Line (\d+) looks/.exec(message)?.[1];
  const some = /^Lines (.+) look/.exec(message)?.[1];
  if (one) return words.printedOne(one);
  return some ? words.printedSome(lineNumbers(some)) : words.printedAll;
}

function slipWords(message: string, words: Told['warnings']): string {
  const leftOut = /left out: (.+?)\. /.exec(message)?.[1];
  const foreign = /(One|\d+) words? on the page (?:is|are) not/.exec(message)?.[1];
  return [
    ...(leftOut ? [words.leftOut(leftOut)] : []),
    ...(foreign ? [words.foreign(foreign === 'One' ? 1 : Number(foreign))] : []),
    words.lookAtWords,
  ].join(' ');
}

type Tell = (message: string, telling: Telling) => string | null;

/** Told with one number of the sentence; null where it holds none. */
const withNumber =
  (pattern: RegExp, tell: (value: number, telling: Telling) => string): Tell =>
  (message, telling) => {
    const value = numberIn(message, pattern);
    return value === null ? null : tell(value, telling);
  };

const tellers: Readonly<Record<string, Tell>> = {
  'printed-text': (message, { told }) => printedWords(message, told.warnings),
  'text-slips': (message, { told }) => slipWords(message, told.warnings),
  'several-hands': withNumber(/at line (\d+)/, (line, { told }) => told.warnings.hands(String(line))),
  faint: withNumber(/contrast (\d+)/, (percent, { told, decimals }) => told.warnings.faint(decimals(percent))),
  'words-doubtful': withNumber(/about (\d+) gap/, (gaps, { told }) => told.warnings.doubtful(gaps)),
  'scale-unlikely': withNumber(/are ([\d.]+) mm high/, (mm, { told, decimals }) =>
    told.warnings.sizeUnlikely(decimals(mm, 3, 0)),
  ),
  'scale-contradicts-ruling': (message, { told, decimals }) => {
    const mm = numberIn(message, /are ([\d.]+) mm apart/);
    const known = numberIn(message, /paper has ([\d.]+) mm/);
    if (mm === null) return null;
    return known === null
      ? told.warnings.rulingUnusual(decimals(mm, 2))
      : told.warnings.rulingDiffers(decimals(mm, 2), decimals(known, 2, 0));
  },
};

const plain = (code: string, words: Told['warnings']): string | undefined =>
  (words.plain as Readonly<Record<string, string>>)[code];

/** A warning of a written page; one that is not known in the engine's own words. */
export const pageWarning = ({ code, message }: Warning, telling: Telling): string =>
  tellers[code]?.(message, telling) ?? plain(code, telling.told.warnings) ?? message;

/** A warning of a drawn sheet. */
export function spiralWarning({ code, message }: Warning, { told: { warnings } }: Telling): string {
  if (code === 'spiral-no-marks') return warnings.spiralAlone;
  if (code === 'no-scale') return warnings.spiralNoScale;
  return code === 'spiral-pale' ? warnings.spiralPale : (plain(code, warnings) ?? message);
}
