/** Refuses measures that no person or table has: a slip of the tape must not become advice. */
import type { Decimals } from '../texts/decimals.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { SetupInput } from './setup-types.ts';

export interface Refused {
  field: string;
  sentence: string;
}

interface Range {
  field: keyof Told['seat']['names'];
  min: number;
  max: number;
}

/** Same limits as the stored fact (db/types/intake.ts, SetupMeasures); a test holds them together. */
export const ranges: readonly Range[] = [
  { field: 'popliteal', min: 200, max: 650 },
  { field: 'elbow', min: 80, max: 450 },
  { field: 'chair', min: 200, max: 900 },
  { field: 'shoe', min: 0, max: 120 },
  { field: 'table', min: 300, max: 1300 },
  { field: 'tableThickness', min: 0, max: 300 },
  { field: 'thigh', min: 60, max: 350 },
  { field: 'slantRise', min: 0, max: 300 },
  { field: 'slantLength', min: 50, max: 900 },
];

/** A likely slip of the unit. */
function slip(value: number, range: Range): 'none' | 'cm' | 'in' {
  const fits = (mm: number): boolean => mm >= range.min && mm <= range.max;
  if (value > 0 && fits(value * 10) && !fits(value * 25.4)) return 'cm';
  if (value > 0 && fits(value * 25.4)) return 'in';
  return 'none';
}

/** The first measure that cannot be, or null. Knee and elbow height are needed; the elbow is never estimated. */
export function checkSetup(input: SetupInput, words: Told['seat'], decimals: Decimals): Refused | null {
  for (const range of ranges) {
    const value = input[range.field];
    if (value === null || value === undefined) continue;
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      return { field: range.field, sentence: words.notNumber(words.names[range.field]) };
    }
    if (value < range.min || value > range.max) {
      const { names, how } = words;
      const shown = decimals(value, 1, 0);
      const sentence = words.cannotBe(
        names[range.field],
        shown,
        how[range.field],
        range.min,
        range.max,
        slip(value, range),
      );
      return { field: range.field, sentence };
    }
  }
  if (input.popliteal === null) {
    return {
      field: 'popliteal',
      sentence: words.kneeFirst,
    };
  }
  if (input.elbow === null) {
    // Stature explains 1 to 3 % of elbow rest height (ANSUR II, computed), so no estimate is offered.
    return {
      field: 'elbow',
      sentence: words.elbowFirst,
    };
  }
  if (
    input.table !== null &&
    input.tableThickness !== null &&
    input.tableThickness > input.table - input.popliteal / 2
  ) {
    return {
      field: 'tableThickness',
      sentence: words.thickTable,
    };
  }
  if (input.thigh !== null && input.thigh > input.elbow + 100) {
    return {
      field: 'thigh',
      sentence: words.thighOverElbow,
    };
  }
  if (input.slantRise !== null && input.slantLength !== null && input.slantRise > input.slantLength) {
    return {
      field: 'slantRise',
      sentence: words.edgeTooHigh,
    };
  }
  return null;
}
