/** What a recording of the pen shows, in words first. Never a diagnosis: what was seen, and how sure it is. */
import type { InkRecording, InkTold } from '../../../db/types/sample.ts';
import type { Decimals } from '../texts/decimals.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Telling } from '../texts/screens/telling.ts';

type Value = Pick<InkTold['measures'][number], 'code' | 'value' | 'low' | 'high' | 'reliable'>;

/** A decrement counts when its interval leaves zero out. */
const isClear = ({ low, high }: Value): boolean => low !== null && high !== null && low * high > 0;

/** Percent over the whole line of a trend told for ten strokes. */
const overLine = (per10: number, strokes: number): number => 100 * ((1 + per10 / 100) ** ((strokes - 1) / 10) - 1);

interface TrendWords {
  less: (percent: string) => string;
  more: (percent: string) => string;
  held: string;
}

function trendWords(trend: Value | undefined, strokes: number, said: TrendWords, decimals: Decimals): string {
  if (!trend || trend.value === null) return '';
  const change = overLine(trend.value, strokes);
  if (!isClear(trend) || Math.abs(change) < 1) return said.held;
  return (change < 0 ? said.less : said.more)(decimals(Math.abs(change)));
}

const sentence = (parts: readonly string[]): string => {
  const text = parts.filter((part) => part !== '').join('; ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
};

/** One sentence on a recording; '' when nothing can be told. */
export function inkSentence(found: InkTold, { told, decimals }: Telling): string {
  const words = told.pen;
  const of = (code: string): Value | undefined => found.measures.find((each) => each.code === code);
  const value = (code: string): number | null => of(code)?.value ?? null;
  const { task } = found.source;
  if (found.quality.verdict === 'unusable') return words.replayOnly;
  if (task === 'line' || task === 'spiral' || task === 'hold') {
    const { frequencyHz, amplitudeRmsMm, reason } = found.tremor;
    if (reason !== null)
      return words.noRhythm[reason in words.noRhythm ? (reason as keyof typeof words.noRhythm) : 'other'];
    return words.rhythm(decimals(frequencyHz!, 1), decimals(amplitudeRmsMm!, 2));
  }
  const parts: string[] = [];
  const strokes = value('strokes');
  if (task === 'loops' && strokes !== null) {
    parts.push(trendWords(of('size-decrement'), strokes, words.size, decimals));
    parts.push(trendWords(of('speed-decrement'), strokes, words.speed, decimals));
  }
  const rate = value('letters-per-minute');
  if (rate !== null) parts.push(words.lettersAMinute(decimals(rate)));
  const air = value('air-share');
  if (air !== null && task === 'writing') parts.push(words.inTheAir(decimals(air)));
  const [stops, pauses] = [value('stops'), value('pauses')];
  if (stops !== null) parts.push(words.longStops(stops));
  if (pauses !== null && pauses > (stops ?? 0)) parts.push(words.pauses(pauses));
  return sentence(parts);
}

/** Why a value is missing or doubtful. */
export const whyWords = (why: string | null | undefined, { why: words }: Told['pen']): string =>
  words[why && why in words ? (why as keyof typeof words) : 'few'];

/** What to know about a recording, in the shown language; a code that is not known in the engine's own words. */
export const inkWarning = ({ code, message }: { code: string; message: string }, { warnings }: Told['pen']): string =>
  (warnings as Readonly<Record<string, string>>)[code] ?? message;

/** Recordings that may be compared: same task, hand, surface and device, both without cues, neither started over. */
export function isComparable(a: InkRecording, b: InkRecording): boolean {
  const keys = ['task', 'hand', 'surface', 'device'] as const;
  return keys.every((key) => a[key] === b[key]) && [a, b].every((each) => each.cues === null && !each.abandoned);
}
