/** What a recording of the pen shows, in words first. Never a diagnosis: what was seen, and how sure it is. */
import type { InkRecording, InkTold } from '../../../db/types/sample.ts';

type Value = Pick<InkTold['measures'][number], 'code' | 'value' | 'low' | 'high' | 'reliable'>;

const round = (value: number, decimals = 0): string => value.toFixed(decimals);
const counted = (count: number, one: string, many: string): string =>
  `${count === 0 ? 'no' : count} ${count === 1 ? one : many}`;

/** A decrement counts when its interval leaves zero out. */
const isClear = ({ low, high }: Value): boolean => low !== null && high !== null && low * high > 0;

/** Percent over the whole line of a trend told for ten strokes. */
const overLine = (per10: number, strokes: number): number => 100 * ((1 + per10 / 100) ** ((strokes - 1) / 10) - 1);

function trendWords(trend: Value | undefined, strokes: number, less: string, more: string, held: string): string {
  if (!trend || trend.value === null) return '';
  const change = overLine(trend.value, strokes);
  if (!isClear(trend) || Math.abs(change) < 1) return held;
  return `${round(Math.abs(change))} % ${change < 0 ? less : more} over the line`;
}

const sentence = (parts: readonly string[]): string => {
  const text = parts.filter((part) => part !== '').join('; ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
};

/** One sentence on a recording; '' when nothing can be told. */
export function inkSentence(told: InkTold): string {
  const of = (code: string): Value | undefined => told.measures.find((each) => each.code === code);
  const value = (code: string): number | null => of(code)?.value ?? null;
  const { task } = told.source;
  if (told.quality.verdict === 'unusable')
    return 'The signal of this pen does not show how it moved; it can only be replayed.';
  if (task === 'line' || task === 'spiral' || task === 'hold') {
    const { frequencyHz, amplitudeRmsMm, reason } = told.tremor;
    if (reason !== null) return noRhythm[reason] ?? 'No rhythm is reported.';
    return `A steady rhythm at ${round(frequencyHz!, 1)} Hz, ${round(amplitudeRmsMm!, 2)} mm (rms).`;
  }
  const parts: string[] = [];
  const strokes = value('strokes');
  if (task === 'loops' && strokes !== null) {
    parts.push(trendWords(of('size-decrement'), strokes, 'smaller', 'larger', 'size held'));
    parts.push(trendWords(of('speed-decrement'), strokes, 'slower', 'faster', 'speed held'));
  }
  const rate = value('letters-per-minute');
  if (rate !== null) parts.push(`${round(rate)} letters a minute`);
  const air = value('air-share');
  if (air !== null && task === 'writing') parts.push(`pen in the air ${round(air)} % of the time`);
  const [stops, pauses] = [value('stops'), value('pauses')];
  if (stops !== null) parts.push(stops === 0 ? 'no long stop' : counted(stops, 'long stop', 'long stops'));
  if (pauses !== null && pauses > (stops ?? 0)) parts.push(counted(pauses, 'pause', 'pauses'));
  return sentence(parts);
}

const noRhythm: Readonly<Record<string, string>> = {
  'no-clear-peak': 'No steady rhythm stands out.',
  'below-noise': 'No rhythm above what this device can tell.',
  short: 'Too short to look for a rhythm: at least four seconds without lifting.',
  'no-scale': 'Without a scale no rhythm is reported.',
  rate: 'This pen is asked too rarely to show a rhythm.',
};

/** Why a value is missing or doubtful. */
export const whyWords: Readonly<Record<string, string>> = {
  few: 'too little was written',
  noise: 'the device scatters too much',
  rate: 'the pen is asked too rarely',
  task: 'not told by this task',
  'no-scale': 'the scale is not known',
  'no-time': 'no times came with the ink',
  'no-pressure': 'the pen tells no pressure',
  'no-text': 'the words meant are not known',
  'no-words': 'the words are not marked',
  quality: 'the signal is not good enough',
};

export const inkTaskNames: Record<InkRecording['task'], string> = {
  writing: 'The words of this sample',
  loops: 'A row of joined loops',
  line: 'A line between two dots',
  spiral: 'A spiral',
  hold: 'Pen held still on a dot',
};

export const surfaceNames: Record<InkRecording['surface'], string> = {
  screen: 'On the glass of a screen',
  'screen-film': 'On a screen with a paper-like film',
  'tablet-paper': 'On paper lying on a tablet',
  'tablet-blind': 'On a tablet, looking at the screen',
};

/** Recordings that may be compared: same task, hand, surface and device, both without cues, neither started over. */
export function isComparable(a: InkRecording, b: InkRecording): boolean {
  const keys = ['task', 'hand', 'surface', 'device'] as const;
  return keys.every((key) => a[key] === b[key]) && [a, b].every((each) => each.cues === null && !each.abandoned);
}
