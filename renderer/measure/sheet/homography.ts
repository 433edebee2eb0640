/** Points in pixels. */
export interface Point {
  x: number;
  y: number;
}

/** A plane projective map, nine numbers row by row. */
export type Homography = number[];

export const IDENTITY: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

export function applied(h: Homography, x: number, y: number): Point {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return { x: (h[0]! * x + h[1]! * y + h[2]!) / w, y: (h[3]! * x + h[4]! * y + h[5]!) / w };
}

/** First `b`, then `a`. */
export function composed(a: Homography, b: Homography): Homography {
  const out: number[] = [];
  for (let r = 0; r < 3; r += 1)
    for (let c = 0; c < 3; c += 1) out.push(a[3 * r]! * b[c]! + a[3 * r + 1]! * b[3 + c]! + a[3 * r + 2]! * b[6 + c]!);
  return out;
}

/** The map that takes four points to four others; null when three of them lie on a line. */
export function homographyOf(from: readonly Point[], to: readonly Point[]): Homography | null {
  const rows: number[][] = [];
  for (let i = 0; i < 4; i += 1) {
    const { x, y } = from[i]!;
    const { x: u, y: v } = to[i]!;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u]);
    rows.push([0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  for (let c = 0; c < 8; c += 1) {
    let pivot = c;
    for (let r = c + 1; r < 8; r += 1) if (Math.abs(rows[r]![c]!) > Math.abs(rows[pivot]![c]!)) pivot = r;
    if (Math.abs(rows[pivot]![c]!) < 1e-12) return null;
    [rows[c], rows[pivot]] = [rows[pivot]!, rows[c]!];
    for (let r = 0; r < 8; r += 1) {
      if (r === c) continue;
      const factor = rows[r]![c]! / rows[c]![c]!;
      if (factor !== 0) for (let k = c; k < 9; k += 1) rows[r]![k] = rows[r]![k]! - factor * rows[c]![k]!;
    }
  }
  return [...rows.map((row, i) => row[8]! / row[i]!), 1];
}
