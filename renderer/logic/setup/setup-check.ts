/** Refuses measures that no person or table has: a slip of the tape must not become advice. */
import type { SetupInput } from './setup-types.ts';

export interface Refused {
  field: string;
  sentence: string;
}

interface Range {
  field: keyof SetupInput & string;
  name: string;
  min: number;
  max: number;
  how: string;
}

/** Same limits as the stored fact (db/types/intake.ts, SetupMeasures); a test holds them together. */
export const ranges: readonly Range[] = [
  {
    field: 'popliteal',
    name: 'knee height',
    min: 200,
    max: 650,
    how: 'from the floor to the underside of the knee, barefoot',
  },
  {
    field: 'elbow',
    name: 'elbow rest height',
    min: 80,
    max: 450,
    how: 'from the seat, sat on, to the underside of the elbow',
  },
  {
    field: 'chair',
    name: 'chair height',
    min: 200,
    max: 900,
    how: 'from the floor to the seat while the client sits on it',
  },
  { field: 'shoe', name: 'sole thickness', min: 0, max: 120, how: 'under the heel' },
  { field: 'table', name: 'table height', min: 300, max: 1300, how: 'from the floor to the table top' },
  { field: 'tableThickness', name: 'table thickness', min: 0, max: 300, how: 'top and apron together' },
  { field: 'thigh', name: 'thigh height', min: 60, max: 350, how: 'from the seat to the highest point of the thigh' },
  {
    field: 'slantRise',
    name: 'rise of the slanted surface',
    min: 0,
    max: 300,
    how: 'from the table to the raised edge',
  },
  { field: 'slantLength', name: 'sloping length', min: 50, max: 900, how: 'along the slope' },
];

/** A likely slip of the unit, or ''. */
function slip(value: number, range: Range): string {
  const fits = (mm: number): boolean => mm >= range.min && mm <= range.max;
  if (value > 0 && fits(value * 10) && !fits(value * 25.4)) return ' Was it read in centimeters?';
  if (value > 0 && fits(value * 25.4)) return ' Was it read in inches or centimeters?';
  return '';
}

/** The first measure that cannot be, or null. Knee and elbow height are needed; the elbow is never estimated. */
export function checkSetup(input: SetupInput): Refused | null {
  for (const range of ranges) {
    const value = input[range.field];
    if (value === null || value === undefined) continue;
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      return { field: range.field, sentence: `The ${range.name} is not a number. Give it in millimeters.` };
    }
    if (value < range.min || value > range.max) {
      const sentence =
        `${/^[aeiou]/.test(range.name) ? 'An' : 'A'} ${range.name} of ${Math.round(value * 10) / 10} mm cannot be right. ` +
        `Measure again ${range.how}: it lies between ${range.min} and ${range.max} mm.${slip(value, range)}`;
      return { field: range.field, sentence };
    }
  }
  if (input.popliteal === null) {
    return {
      field: 'popliteal',
      sentence: 'Measure the knee height first: from the floor to the underside of the knee, barefoot.',
    };
  }
  if (input.elbow === null) {
    // Stature explains 1 to 3 % of elbow rest height (ANSUR II, computed), so no estimate is offered.
    return {
      field: 'elbow',
      sentence: 'Measure the elbow rest height first: it cannot be estimated from body height.',
    };
  }
  if (
    input.table !== null &&
    input.tableThickness !== null &&
    input.tableThickness > input.table - input.popliteal / 2
  ) {
    return {
      field: 'tableThickness',
      sentence: 'Nobody could sit under a table this thick. Measure the top and its apron again.',
    };
  }
  if (input.thigh !== null && input.thigh > input.elbow + 100) {
    return {
      field: 'thigh',
      sentence: 'The thigh cannot lie so far above the elbow. Measure both again from the same seat.',
    };
  }
  if (input.slantRise !== null && input.slantLength !== null && input.slantRise > input.slantLength) {
    return {
      field: 'slantRise',
      sentence: 'The raised edge cannot be higher than the surface is long. Measure both again.',
    };
  }
  return null;
}
