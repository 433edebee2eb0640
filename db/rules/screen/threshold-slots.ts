import type { SourceTag } from '../../types/common.ts';
import type { Threshold } from '../../types/rules.ts';

/** A number in one of the tables: its row, and how another value is put in its place. */
export interface Slot {
  row: Threshold;
  put: (value: number) => void;
}

export const slot = (
  code: string,
  name: string,
  value: number,
  unit: string,
  range: [min: number, max: number],
  tag: { source: SourceTag; note?: string; sourceNote?: string },
  put: (value: number) => void,
): Slot => ({
  row: {
    code,
    name,
    value,
    unit,
    min: range[0],
    max: range[1],
    source: tag.source,
    sourceNote: (tag.sourceNote ?? tag.note ?? '').slice(0, 400),
  },
  put,
});

type Tagged = { source: SourceTag; note: string; unit: string };

export function constant(code: string, name: string, of: Tagged & { value: number }, range: [number, number]): Slot {
  return slot(`setup-${code}`, name, of.value, of.unit, range, of, (value) => {
    Object.assign(of, { value, source: 'clinic' });
  });
}

export function band(
  code: string,
  name: string,
  of: Tagged & { min: number; max: number },
  range: [number, number],
): Slot[] {
  return (['min', 'max'] as const).map((end) =>
    slot(
      `setup-${code}-${end}`,
      `${name}, ${end === 'min' ? 'at least' : 'at most'}`,
      of[end],
      of.unit,
      range,
      of,
      (value) => {
        Object.assign(of, { [end]: value, source: 'clinic' });
      },
    ),
  );
}
