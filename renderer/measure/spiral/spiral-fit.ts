/** Ink of a drawn spiral as points, mm. */
export interface SpiralInk {
  x: Float64Array;
  y: Float64Array;
}

/** An Archimedes spiral, r = start + pitch turns, about a center; mm. `sense` is 1 where it winds out clockwise. */
export interface SpiralShape {
  centerX: number;
  centerY: number;
  pitch: number;
  /** Radius at angle 0 of turn 0, between 0 and the pitch. */
  start: number;
  sense: 1 | -1;
  /** How well the ink follows it: 1 when every point lies on it, near 0 for ink that is no spiral. */
  concentration: number;
}

/** Distances between turns that are looked for, mm: the sheet's is 8, free ones differ. */
const PITCHES = { least: 2, most: 30, ratio: 1.04 } as const;
/** The center is sought this far from the ink's middle, as a share of its size, then ever closer. */
const REACH = 0.12;
const LEAST_STEP_MM = 0.02;

/** The angles of r / pitch and of the direction agree along a spiral: their mean as a vector. */
function agreement(ink: SpiralInk, cx: number, cy: number, pitch: number, sense: 1 | -1): [number, number] {
  let [re, im] = [0, 0];
  for (let i = 0; i < ink.x.length; i += 1) {
    const dx = ink.x[i]! - cx;
    const dy = ink.y[i]! - cy;
    const angle = (2 * Math.PI * Math.hypot(dx, dy)) / pitch - sense * Math.atan2(dy, dx);
    re += Math.cos(angle);
    im += Math.sin(angle);
  }
  return [re / ink.x.length, im / ink.x.length];
}

/** The spiral that the ink follows best, whatever its wobble. Null with too little ink. */
export function fitSpiral(ink: SpiralInk): SpiralShape | null {
  const n = ink.x.length;
  if (n < 50) return null;
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < n; i += 1) {
    x0 = Math.min(x0, ink.x[i]!);
    x1 = Math.max(x1, ink.x[i]!);
    y0 = Math.min(y0, ink.y[i]!);
    y1 = Math.max(y1, ink.y[i]!);
  }
  const size = Math.max(x1 - x0, y1 - y0);
  let best = { cx: (x0 + x1) / 2, cy: (y0 + y1) / 2, pitch: 0, sense: 1 as 1 | -1, value: -1 };
  const tried = (cx: number, cy: number, pitch: number, sense: 1 | -1): boolean => {
    const [re, im] = agreement(ink, cx, cy, pitch, sense);
    const value = Math.hypot(re, im);
    if (value <= best.value) return false;
    best = { cx, cy, pitch, sense, value };
    return true;
  };
  const [mx, my] = [best.cx, best.cy];
  const coarse = Math.max(0.8, size * 0.025);
  for (let pitch = PITCHES.least; pitch <= Math.min(PITCHES.most, size / 2); pitch *= PITCHES.ratio)
    for (const sense of [1, -1] as const)
      for (let dx = -REACH * size; dx <= REACH * size; dx += coarse)
        for (let dy = -REACH * size; dy <= REACH * size; dy += coarse) tried(mx + dx, my + dy, pitch, sense);
  for (let step = coarse / 2; step > LEAST_STEP_MM; step /= 2) {
    let moved = true;
    for (let round = 0; moved && round < 30; round += 1) {
      const { cx, cy, pitch, sense } = best;
      moved = false;
      for (const [dx, dy, dp] of [
        [step, 0, 0],
        [-step, 0, 0],
        [0, step, 0],
        [0, -step, 0],
        [0, 0, step / 10],
        [0, 0, -step / 10],
      ] as const)
        if (pitch + dp > 1 && tried(cx + dx, cy + dy, pitch + dp, sense)) moved = true;
    }
  }
  const [re, im] = agreement(ink, best.cx, best.cy, best.pitch, best.sense);
  const phase = Math.atan2(im, re) / (2 * Math.PI);
  return {
    centerX: best.cx,
    centerY: best.cy,
    pitch: best.pitch,
    start: (((phase % 1) + 1) % 1) * best.pitch,
    sense: best.sense,
    concentration: best.value,
  };
}
