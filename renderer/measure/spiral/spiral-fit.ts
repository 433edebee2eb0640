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
/** Points that the coarse search looks at. */
const COARSE_POINTS = 500;

/** How well ink about one center follows spirals of a pitch that wind out either way: both senses in one pass. */
class About {
  readonly #radius: Float64Array;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;

  constructor(ink: SpiralInk, cx: number, cy: number) {
    const n = ink.x.length;
    [this.#radius, this.#cos, this.#sin] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
    for (let i = 0; i < n; i += 1) {
      const dx = ink.x[i]! - cx;
      const dy = ink.y[i]! - cy;
      const radius = Math.sqrt(dx * dx + dy * dy);
      this.#radius[i] = radius;
      this.#cos[i] = radius > 0 ? dx / radius : 1;
      this.#sin[i] = radius > 0 ? dy / radius : 0;
    }
  }

  /** Along a spiral the angle of r / pitch and the direction agree: their mean as a vector, for both senses. */
  agreement(pitch: number): Record<1 | -1, [number, number]> {
    const n = this.#radius.length;
    const turn = (2 * Math.PI) / pitch;
    let [cc, ss, sc, cs] = [0, 0, 0, 0];
    for (let i = 0; i < n; i += 1) {
      const c = Math.cos(turn * this.#radius[i]!);
      const s = Math.sin(turn * this.#radius[i]!);
      cc += c * this.#cos[i]!;
      ss += s * this.#sin[i]!;
      sc += s * this.#cos[i]!;
      cs += c * this.#sin[i]!;
    }
    return { [1]: [(cc + ss) / n, (sc - cs) / n], [-1]: [(cc - ss) / n, (sc + cs) / n] };
  }
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
  const tried = (of: About, cx: number, cy: number, pitch: number): boolean => {
    const vectors = of.agreement(pitch);
    let better = false;
    for (const sense of [1, -1] as const) {
      const value = Math.hypot(...vectors[sense]);
      if (value <= best.value) continue;
      best = { cx, cy, pitch, sense, value };
      better = true;
    }
    return better;
  };
  const [mx, my] = [best.cx, best.cy];
  const coarse = Math.max(0.8, size * 0.025);
  const few = thinned(ink, COARSE_POINTS);
  for (let dx = -REACH * size; dx <= REACH * size; dx += coarse)
    for (let dy = -REACH * size; dy <= REACH * size; dy += coarse) {
      const of = new About(few, mx + dx, my + dy);
      for (let pitch = PITCHES.least; pitch <= Math.min(PITCHES.most, size / 2); pitch *= PITCHES.ratio)
        tried(of, mx + dx, my + dy, pitch);
    }
  // Told anew by all points: the finer search compares with it.
  best.value = Math.hypot(...new About(ink, best.cx, best.cy).agreement(best.pitch)[best.sense]);
  for (let step = coarse / 2; step > LEAST_STEP_MM; step /= 2) {
    let moved = true;
    for (let round = 0; moved && round < 30; round += 1) {
      const { cx, cy, pitch } = best;
      moved = false;
      for (const [dx, dy, dp] of [
        [step, 0, 0],
        [-step, 0, 0],
        [0, step, 0],
        [0, -step, 0],
        [0, 0, step / 10],
        [0, 0, -step / 10],
      ] as const)
        if (pitch + dp > 1 && tried(new About(ink, cx + dx, cy + dy), cx + dx, cy + dy, pitch + dp)) moved = true;
    }
  }
  const [re, im] = new About(ink, best.cx, best.cy).agreement(best.pitch)[best.sense];
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

/** At most about so many of the points, evenly taken. */
export function thinned(ink: SpiralInk, most: number): SpiralInk {
  const step = Math.max(1, Math.floor(ink.x.length / most));
  return { x: ink.x.filter((_, i) => i % step === 0), y: ink.y.filter((_, i) => i % step === 0) };
}
