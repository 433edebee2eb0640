/** Names of what pen motion tells, with where each formula comes from. */
import type { InkCode } from '../../ink/index.ts';
import { INK_UNITS } from '../../ink/index.ts';

interface InkName {
  name: string;
  how: string;
  better: 'more' | 'less' | 'none';
}

const own = (name: string, how: string, better: InkName['better'] = 'none'): InkName => ({ name, how, better });

const names: Readonly<Record<InkCode, InkName>> = {
  'writing-time': own('Writing time', 'first to last touch of the pen'),
  'paper-time': own('Time on the sheet', 'sum of all contacts'),
  'air-time': own('Time in the air', 'gaps between contacts over 20 ms'),
  'air-share': own('Share of time in the air', 'time in the air over writing time', 'less'),
  lifts: own('Lifts', 'gaps between contacts over 20 ms'),
  'lifts-per-word': own('Lifts within a word', 'lifts inside words over words', 'none'),
  pauses: own('Pauses', 'the pen stays within 0.5 mm for 0.3 s, or 0.5 s in the air', 'less'),
  'pause-time': own('Time of pauses', 'sum of the pauses', 'less'),
  stops: own('Long stops', 'the pen stays within 1 mm for a second on the sheet', 'less'),
  'stop-time': own('Time of long stops', 'sum of the long stops', 'less'),
  'letters-per-minute': own('Letters a minute', 'letters and digits meant over writing time', 'more'),
  'path-length': own('Way of the pen', 'filtered path'),
  'speed-mean': own('Mean speed', 'way over time'),
  'speed-peak': own('Peak speed', '99th percentile'),
  strokes: own('Strokes', 'between turns of at least 0.3 mm'),
  'stroke-height': own('Stroke height', 'median of up and down strokes'),
  'stroke-duration': own('Stroke duration', 'median, from zero to zero of vertical speed', 'less'),
  'stroke-peak-speed': own('Peak speed of a stroke', 'median'),
  'stroke-height-cv': own('Spread of stroke heights', 'standard deviation over mean', 'less'),
  'velocity-peaks': own('Speed peaks a stroke', '1 is fluent (Tucha 2006)', 'less'),
  sparc: own('Smoothness, spectral', 'spectral arc length (Balasubramanian 2015); nearer 0 is smoother', 'more'),
  ldlj: own('Smoothness, jerk', 'log dimensionless jerk (Balasubramanian 2015); nearer 0 is smoother', 'more'),
  'pressure-mean': own('Pressure', 'mean share of what the pen can tell'),
  'pressure-cv': own('Spread of pressure', 'standard deviation over mean'),
  'pressure-drift': own('Drift of pressure', 'Theil-Sen of its logarithm'),
  'size-decrement': own('Size change while writing', 'Theil-Sen of the logarithm of stroke heights'),
  'speed-decrement': own('Speed change while writing', 'Theil-Sen of the logarithm of stroke speeds'),
  'size-drift': own('Size change over time', 'Theil-Sen of the logarithm of stroke heights'),
  'first-last-five': own('First five strokes against the last five', 'of means', 'less'),
  'power-law': own('Slowing in curves', '1/3 in fluent drawing (Lacquaniti 1983); not for decisions'),
};

const tremor: Readonly<Record<string, InkName & { unit: string }>> = {
  'tremor-frequency': { ...own('Rhythm of the hand', 'highest peak of the speed spectrum'), unit: 'Hz' },
  'tremor-amplitude': { ...own('Size of the rhythm', 'rms around the peak', 'less'), unit: 'mm' },
};

const known = (code: string): InkName | undefined => names[code as InkCode] ?? tremor[code];

export const inkMeasureName = (code: string): string => known(code)?.name ?? code.replaceAll('-', ' ');
export const inkBetter = (code: string): InkName['better'] => known(code)?.better ?? 'none';

/** Every ink measure for the data dictionary: code, name, unit, better, how. */
export const inkDictionary: readonly (InkName & { code: string; unit: string })[] = [
  ...(Object.keys(names) as InkCode[]).map((code) => ({ code, unit: INK_UNITS[code] as string, ...names[code] })),
  ...Object.entries(tremor).map(([code, row]) => ({ code, ...row })),
];
