/** What the columns of a trace mean, and what brings them to our units. */

export interface InkChannel {
  name: string;
  units: string | null;
  min: number | null;
  max: number | null;
  /** The timestamp that times count from. */
  respectTo: string | null;
  /** -1 where the file says that the channel runs against its usual sense. */
  sense: 1 | -1;
}

export interface TraceFormat {
  regular: InkChannel[];
  intermittent: InkChannel[];
}

/** Steps of the device in a unit of length or time. */
export interface Resolution {
  value: number;
  units: string;
}

/** The format of a file that tells none (W3C InkML 2011). */
export const DEFAULT_FORMAT: TraceFormat = {
  regular: ['X', 'Y'].map((name) => ({ name, units: null, min: null, max: null, respectTo: null, sense: 1 as const })),
  intermittent: [],
};

const MILLIMETERS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};
const MILLISECONDS: Readonly<Record<string, number>> = { ms: 1, s: 1000 };

function factor(
  units: string | null,
  resolution: Resolution | undefined,
  table: Readonly<Record<string, number>>,
): number | null {
  if (units !== null && Object.hasOwn(table, units)) return table[units]!;
  if (units !== null && units !== 'dev') return null;
  if (!resolution || !(resolution.value > 0) || !Number.isFinite(resolution.value)) return null;
  const unit = /^1\s*\/\s*(\w+)$/.exec(resolution.units.trim())?.[1];
  return unit !== undefined && Object.hasOwn(table, unit) ? table[unit]! / resolution.value : null;
}

/** Millimeters of one unit of the channel; null: not known. */
export const lengthFactor = (channel: InkChannel, resolution: Resolution | undefined): number | null =>
  factor(channel.units, resolution, MILLIMETERS);

/** Milliseconds of one unit of the channel; T without a unit is ms. Null: not known. */
export const timeFactor = (channel: InkChannel, resolution: Resolution | undefined): number | null =>
  factor(channel.units ?? (resolution ? null : 'ms'), resolution, MILLISECONDS);

/** Degrees of one unit of an angle; without a unit: degrees. */
export const angleFactor = (channel: InkChannel): number => (channel.units === 'rad' ? 180 / Math.PI : 1);

/**
 * Tilt of a pen from the direction and height of its shaft.
 * Source: W3C Pointer Events 3, section "Converting between tiltX / tiltY and altitudeAngle / azimuthAngle".
 * @param azimuth 0: towards +x, growing clockwise as seen from above, degrees
 * @param altitude 90: upright, degrees
 */
export function tiltOf(azimuth: number, altitude: number): { tiltX: number; tiltY: number } {
  const toRad = Math.PI / 180;
  if (altitude >= 90) return { tiltX: 0, tiltY: 0 };
  const [sin, cos, tan] = [Math.sin(azimuth * toRad), Math.cos(azimuth * toRad), Math.tan(altitude * toRad)];
  return { tiltX: Math.atan2(cos, tan) / toRad, tiltY: Math.atan2(sin, tan) / toRad };
}
