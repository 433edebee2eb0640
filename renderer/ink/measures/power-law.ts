import { GRID_MS } from '../prepare/butterworth.ts';
import type { Motion } from '../prepare/motion.ts';
import { derivative } from '../prepare/motion.ts';

const ENDS_MS = 100;
const SLOWEST_SHARE = 0.1;
/** Curvatures looked at, 1/mm. */
const FLATTEST = 0.01;
const TIGHTEST = 20;

/**
 * How much the hand slows down in curves: minus the slope of ln speed on ln curvature, 1/3 in fluent drawing.
 * Source: Lacquaniti, Terzuolo, Viviani 1983, Acta Psychologica 54:115-130.
 * @returns null below ten usable points
 */
export function powerLaw(motions: readonly Motion[]): { exponent: number; n: number } | null {
  let fastest = 0;
  for (const { speed } of motions) for (const each of speed) if (each > fastest) fastest = each;
  let [n, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
  const cut = ENDS_MS / GRID_MS;
  for (const { vx, vy, speed } of motions) {
    const [ax, ay] = [derivative(vx), derivative(vy)];
    for (let i = cut; i < speed.length - cut; i += 1) {
      const v = speed[i]!;
      if (v <= SLOWEST_SHARE * fastest) continue;
      const curvature = Math.abs(vx[i]! * ay[i]! - vy[i]! * ax[i]!) / v ** 3;
      if (!(curvature >= FLATTEST && curvature <= TIGHTEST)) continue;
      const [x, y] = [Math.log(curvature), Math.log(v)];
      n += 1;
      sx += x;
      sy += y;
      sxx += x * x;
      sxy += x * y;
    }
  }
  const spread = n * sxx - sx * sx;
  return n < 10 || spread <= 1e-9 ? null : { exponent: -(n * sxy - sx * sy) / spread, n };
}
