/** What pen motion tells: unit and direction of each measure; its name stands in the words of the screens. */
import type { InkCode } from '../../ink/index.ts';
import { INK_UNITS } from '../../ink/index.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import { toldEnglish } from '../texts/screens/told-english.ts';

type Better = 'more' | 'less' | 'none';
type Code = keyof Told['pen']['names'];

const directions: Readonly<Partial<Record<Code, Better>>> = {
  'air-share': 'less',
  pauses: 'less',
  'pause-time': 'less',
  stops: 'less',
  'stop-time': 'less',
  'letters-per-minute': 'more',
  'stroke-duration': 'less',
  'stroke-height-cv': 'less',
  'velocity-peaks': 'less',
  sparc: 'more',
  ldlj: 'more',
  'first-last-five': 'less',
  'tremor-amplitude': 'less',
};

const tremorUnits: Readonly<Record<string, string>> = { 'tremor-frequency': 'Hz', 'tremor-amplitude': 'mm' };

export const inkMeasureName = (code: string, { names }: Told['pen']): string =>
  (names as Readonly<Record<string, readonly string[]>>)[code]?.[0] ?? code.replaceAll('-', ' ');
export const inkBetter = (code: string): Better => directions[code as Code] ?? 'none';

/** Every ink measure for the data dictionary, which is in English: code, name, unit, better, how. */
export const inkDictionary = Object.entries(toldEnglish.pen.names).map(([code, [name = '', how = '']]) => ({
  code,
  unit: tremorUnits[code] ?? (INK_UNITS[code as InkCode] as string),
  name,
  how,
  better: inkBetter(code),
}));
