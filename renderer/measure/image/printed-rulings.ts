import { median } from '../../statistics/order-statistics.ts';
import type { GrayImage } from '../types.ts';
import { equallyLong, hiddenLines, printedLines } from './ruling-lines.ts';
import type { PrintedLine } from './ruling-follow.ts';
import type { Votes } from './ruling-votes.ts';

/** The printed lines of a page, in picture pixels. */
export interface Rulings {
  across: PrintedLine[];
  down: PrintedLine[];
  /** Turn of the page, radians, + counter-clockwise; null without printed lines. */
  angle: number | null;
}

/** Lines of one sheet are parallel to this (radians, about 0.4 degrees); others are folds or table edges. */
const PARALLEL = 0.007;
/** A solid line fills nearly all of the strips that have no writing over them. */
export const SOLID = 0.85;
/** Every third pixel along a broken line is enough to see its dashes. */
const EVERY = 3;
/** Autocorrelation from which a broken line is a row of dashes; writing stays below 0.3. */
const REGULAR = 0.45;

/** Finds ruled lines, dashed midlines, margins and squares by their thinness, length and straightness. */
export function findRulings(image: GrayImage, votes: { across: Votes; down: Votes }, pxPerMm: number): Rulings {
  const { width } = image;
  const printed = (from: Votes, along: number, across: number): PrintedLine[] => {
    const lines = parallel(
      printedLines(from).filter((line) => line.filled >= SOLID || isDashed(image, line, along, across, pxPerMm)),
    );
    const solid = lines.filter((line) => line.filled >= SOLID);
    const dashed = lines.filter((line) => line.filled < SOLID);
    // Dashes come with solid lines or in numbers; a single row of them is writing that happens to be even.
    if (solid.length < 2 && dashed.length < 3) return solid;
    return [solid, dashed].flatMap((kind) => equallyLong([...kind, ...hiddenLines(from, kind)]));
  };
  const across = printed(votes.across, 1, width);
  // Lines down the page lean the other way: x grows with y where the page lay turned counter-clockwise.
  const down = printed(votes.down, width, 1);
  const angle = across.length > 0 ? -Math.atan(median(across.map((line) => line.slope))!) : null;
  const kept = angle === null ? down : down.filter((line) => Math.abs(Math.atan(line.slope) - angle) < 2 * PARALLEL);
  return {
    across,
    down: kept,
    angle: angle ?? (kept.length > 0 ? Math.atan(median(kept.map((l) => l.slope))!) : null),
  };
}

/**
 * Whether the ink along a broken line comes at regular distances, as printed dashes do and writing does not:
 * autocorrelation of dark and pale at lags of 1.5 to 9 mm.
 */
function isDashed(image: GrayImage, line: PrintedLine, along: number, across: number, pxPerMm: number): boolean {
  const length = along === 1 ? image.width : image.height;
  const breadth = along === 1 ? image.height : image.width;
  const end = Math.min(line.to, length);
  const room = new Uint8Array(Math.max(0, Math.ceil((end - line.from) / EVERY)));
  let n = 0;
  for (let s = line.from; s < end; s += EVERY) {
    const at = Math.floor(line.intercept + line.slope * (s + 0.5));
    if (at < 1 || at + 1 >= breadth) continue;
    const i = at * across + s * along;
    room[n] = Math.min(image.data[i]!, image.data[i - across]!, image.data[i + across]!);
    n += 1;
  }
  const values = room.subarray(0, n);
  const sorted = values.slice().sort();
  const low = sorted[Math.floor(n * 0.3)] ?? 0;
  const high = sorted[Math.floor(n * 0.85)] ?? 0;
  const middle = (low + high) / 2;
  const signs = new Int8Array(n);
  for (let i = 0; i < n; i += 1) signs[i] = values[i]! > middle ? 1 : -1;
  const perMm = pxPerMm / EVERY;
  for (let lag = Math.round(1.5 * perMm); lag < 9 * perMm && lag < n / 4; lag += 1) {
    let sum = 0;
    for (let i = 0; i + lag < n; i += 1) sum += signs[i]! * signs[i + lag]!;
    if (sum / (n - lag) >= REGULAR) return true;
  }
  return false;
}

function parallel(lines: PrintedLine[]): PrintedLine[] {
  const usual = median(lines.map((line) => line.slope));
  return usual === null ? [] : lines.filter((line) => Math.abs(line.slope - usual) < PARALLEL);
}
