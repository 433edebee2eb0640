/** The quick part of a line's course: what is left without slow drift, its swings and its strongest rhythm. */
import { solved } from '../normal-equations.ts';
import { SPIRAL_STEP_MM } from './spiral-line.ts';
import type { SpiralLine } from './spiral-line.ts';

/** Changes slower than this many a turn are the shape of the spiral, not its wobble. */
const SLOW_PER_TURN = 2.5;
/** Rhythms looked for, swings a mm: from one in 4 cm to one in 2 mm, and how many steps apart. */
const RHYTHMS = { least: 0.025, most: 0.5, steps: 500 } as const;

/** Offsets without their slow part: the least-squares sum of half cosines over the turns, the places of a turn alike. */
export function quickPart({ offsets, turnsAt, turns }: SpiralLine): number[] {
  const terms = Math.max(1, Math.floor(2 * SLOW_PER_TURN * turns)) + 1;
  const first = turnsAt[0]!;
  const basis = turnsAt.map((at) =>
    Array.from({ length: terms }, (_, j) => Math.cos((Math.PI * j * (at - first)) / turns)),
  );
  const matrix = new Float64Array(terms * terms);
  const right = new Float64Array(terms);
  basis.forEach((row, i) => {
    // Places are even along the line; weighed by the turn that each covers, every turn counts alike.
    const weight = (turnsAt[i + 1] ?? 2 * turnsAt[i]! - turnsAt[i - 1]!) - turnsAt[i]!;
    for (let a = 0; a < terms; a += 1) {
      for (let b = 0; b < terms; b += 1) matrix[a * terms + b]! += weight * row[a]! * row[b]!;
      right[a]! += weight * row[a]! * offsets[i]!;
    }
  });
  const factors = solved(matrix, right, Number.MIN_VALUE);
  return offsets.map((offset, i) => offset - basis[i]!.reduce((sum, value, j) => sum + value * factors[j]!, 0));
}

/** Swings out and back a turn: changes of side that reach `reach` on both, halved, from the first to the last. */
export function swingsPerTurn(wobble: readonly number[], turnsAt: readonly number[], reach: number): number {
  let side = 0;
  const changes: number[] = [];
  wobble.forEach((offset, i) => {
    const now = offset > reach ? 1 : offset < -reach ? -1 : side;
    if (now !== side) changes.push(turnsAt[i]!);
    side = now;
  });
  const [first, last] = [changes[0], changes.at(-1)];
  return first === undefined || last === undefined || last === first ? 0 : (changes.length - 1) / 2 / (last - first);
}

/** The peak of the periodogram along the line (Hann window), swings a cm. */
export function strongestRhythm(wobble: readonly number[]): number {
  const windowed = wobble.map((value, i) => value * Math.sin((Math.PI * (i + 0.5)) / wobble.length) ** 2);
  const power = (rhythm: number): number => {
    const step = 2 * Math.PI * rhythm * SPIRAL_STEP_MM;
    let [re, im] = [0, 0];
    windowed.forEach((value, i) => {
      re += value * Math.cos(step * i);
      im += value * Math.sin(step * i);
    });
    return re * re + im * im;
  };
  const apart = (RHYTHMS.most - RHYTHMS.least) / RHYTHMS.steps;
  let best: number = RHYTHMS.least;
  let most = 0;
  for (let k = 0; k <= RHYTHMS.steps; k += 1) {
    const rhythm = RHYTHMS.least + k * apart;
    const here = power(rhythm);
    if (here > most) [best, most] = [rhythm, here];
  }
  return 10 * best;
}
