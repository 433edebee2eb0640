// The pixel stages that touch every pixel of a page, in AssemblyScript with 128-bit SIMD.
// Each gives bit for bit what the plain stage of the same name gives (tests compare them):
//   threshold   image/threshold.ts, `sauvola`
//   votesAcross, votesDown   image/ruling-votes.ts, `rulingVotes`
// Built by build/wasm.ts into bytes.ts. Memory is laid out by the caller, who passes addresses.

const WINDOW: i32 = 51;
const HALF: i32 = 25;
const N: i32 = WINDOW * WINDOW;

// Index mirrored at the border without repeating the edge itself.
function reflected(index: i32, length: i32): i32 {
  if (length == 1) return 0;
  const period = 2 * length - 2;
  const at = ((index % period) + period) % period;
  return at < length ? at : period - at;
}

// Adds a row to (or with `sign` -1 takes it from) the column sums, one pixel at a time.
function addRow(row: usize, width: i32, sums: usize, squares: usize): void {
  for (let x = 0; x < width; x++) {
    const g = <i32>load<u8>(row + x);
    store<i32>(sums + (x << 2), load<i32>(sums + (x << 2)) + g);
    store<i32>(squares + (x << 2), load<i32>(squares + (x << 2)) + g * g);
  }
}

// Row `enters` comes into the window, row `leaves` goes out of it: eight columns at a time.
function swapRows(enters: usize, leaves: usize, width: i32, sums: usize, squares: usize): void {
  let x = 0;
  for (; x + 8 <= width; x += 8) {
    const a = i16x8.extend_low_i8x16_u(v128.load_zero<u64>(enters + x));
    const b = i16x8.extend_low_i8x16_u(v128.load_zero<u64>(leaves + x));
    const d = i16x8.sub(a, b);
    const s = sums + (x << 2);
    v128.store(s, i32x4.add(v128.load(s), i32x4.extend_low_i16x8_s(d)));
    v128.store(s, i32x4.add(v128.load(s, 16), i32x4.extend_high_i16x8_s(d)), 16);
    // A square of a byte fits 16 bits without sign.
    const aa = i16x8.mul(a, a);
    const bb = i16x8.mul(b, b);
    const q = squares + (x << 2);
    v128.store(
      q,
      i32x4.add(v128.load(q), i32x4.sub(i32x4.extend_low_i16x8_u(aa), i32x4.extend_low_i16x8_u(bb))),
    );
    v128.store(
      q,
      i32x4.add(v128.load(q, 16), i32x4.sub(i32x4.extend_high_i16x8_u(aa), i32x4.extend_high_i16x8_u(bb))),
      16,
    );
  }
  for (; x < width; x++) {
    const a = <i32>load<u8>(enters + x);
    const b = <i32>load<u8>(leaves + x);
    store<i32>(sums + (x << 2), load<i32>(sums + (x << 2)) + a - b);
    store<i32>(squares + (x << 2), load<i32>(squares + (x << 2)) + a * a - b * b);
  }
}

// Copies the mirrored columns beside the picture into the room on both sides of the sums.
function mirror(middle: usize, width: i32): void {
  for (let i = 1; i <= HALF; i++) {
    store<i32>(middle - (i << 2), load<i32>(middle + (reflected(-i, width) << 2)));
    const x = width - 1 + i;
    store<i32>(middle + (x << 2), load<i32>(middle + (reflected(x, width) << 2)));
  }
}

// 0, d0, d0+d1, d0+d1+d2 goes into the window sums; all four together to the next step.
// @ts-ignore: decorator
@inline
function running(d: v128): v128 {
  const zero = i32x4.splat(0);
  const pairs = i32x4.add(d, v128.shuffle<i32>(zero, d, 3, 4, 5, 6));
  return i32x4.add(pairs, v128.shuffle<i32>(zero, pairs, 2, 3, 4, 5));
}

// Whether two pixels are ink, from their window sums: the comparison of squares of the plain stage, in its order.
// @ts-ignore: decorator
@inline
function inkOfTwo(gray: v128, sum: v128, square: v128, share: f64, factor: f64): v128 {
  const g = f64x2.convert_low_i32x4_s(gray);
  const s = f64x2.convert_low_i32x4_s(sum);
  const q = f64x2.convert_low_i32x4_s(square);
  const n = f64x2.splat(N);
  const above = f64x2.sub(f64x2.mul(n, g), f64x2.mul(f64x2.splat(share), s));
  const left = f64x2.mul(above, above);
  const spread = f64x2.sub(f64x2.mul(n, q), f64x2.mul(s, s));
  const right = f64x2.mul(f64x2.mul(f64x2.mul(f64x2.splat(factor), s), s), spread);
  return v128.or(f64x2.le(above, f64x2.splat(0)), f64x2.le(left, right));
}

/**
 * Sauvola's threshold. `work` has room for 2 * (width + 64) 32-bit numbers; `ink` becomes 1 or 0 for each pixel.
 * `share` is 1 - k and `factor` (k / R)^2 / n^2, as the plain stage computes them.
 */
export function threshold(
  gray: usize,
  ink: usize,
  width: i32,
  height: i32,
  work: usize,
  share: f64,
  factor: f64,
): void {
  const room = <usize>(width + 64) << 2;
  memory.fill(work, 0, 2 * room);
  const sums = work + (HALF << 2);
  const squares = work + room + (HALF << 2);
  for (let dy = -HALF; dy <= HALF; dy++) addRow(gray + <usize>reflected(dy, height) * width, width, sums, squares);
  const n4 = i32x4.splat(N);
  const bright = i32x4.splat(200 * N);
  const narrow = i32x4.splat(62);
  const one = i32x4.splat(1);
  for (let y = 0; y < height; y++) {
    if (y > 0) {
      const enters = reflected(y + HALF, height);
      const leaves = reflected(y - HALF - 1, height);
      if (enters != leaves) swapRows(gray + <usize>enters * width, gray + <usize>leaves * width, width, sums, squares);
    }
    mirror(sums, width);
    mirror(squares, width);
    const left = sums - (HALF << 2);
    const leftSquares = squares - (HALF << 2);
    let sum: i32 = 0;
    let square: i32 = 0;
    for (let i = 0; i < WINDOW; i++) {
      sum += load<i32>(left + (i << 2));
      square += load<i32>(leftSquares + (i << 2));
    }
    const row = <usize>y * width;
    let x = 0;
    for (; x + 4 <= width; x += 4) {
      const at = left + (x << 2);
      const atSquares = leftSquares + (x << 2);
      const upTo = running(i32x4.sub(v128.load(at, WINDOW * 4), v128.load(at)));
      const upToSquares = running(i32x4.sub(v128.load(atSquares, WINDOW * 4), v128.load(atSquares)));
      const zero = i32x4.splat(0);
      const windowSum = i32x4.add(i32x4.splat(sum), v128.shuffle<i32>(zero, upTo, 3, 4, 5, 6));
      const g = i32x4.extend_low_i16x8_u(i16x8.extend_low_i8x16_u(v128.load_zero<u32>(gray + row + x)));
      // Bytes of mean 200 or more deviate by at most sqrt(200 * 55), so nothing over 0.956 means is ink.
      const scaled = i32x4.mul(g, n4);
      const paper = v128.and(
        i32x4.ge_s(windowSum, bright),
        i32x4.gt_s(i32x4.shl(scaled, 6), i32x4.mul(windowSum, narrow)),
      );
      if (i32x4.all_true(paper)) store<u32>(ink + row + x, 0);
      else {
        const windowSquare = i32x4.add(i32x4.splat(square), v128.shuffle<i32>(zero, upToSquares, 3, 4, 5, 6));
        const first = inkOfTwo(g, windowSum, windowSquare, share, factor);
        const second = inkOfTwo(
          v128.shuffle<i32>(g, g, 2, 3, 2, 3),
          v128.shuffle<i32>(windowSum, windowSum, 2, 3, 2, 3),
          v128.shuffle<i32>(windowSquare, windowSquare, 2, 3, 2, 3),
          share,
          factor,
        );
        const both = v128.and(v128.shuffle<i32>(first, second, 0, 2, 4, 6), one);
        store<u8>(ink + row + x, <u8>i32x4.extract_lane(both, 0));
        store<u8>(ink + row + x, <u8>i32x4.extract_lane(both, 1), 1);
        store<u8>(ink + row + x, <u8>i32x4.extract_lane(both, 2), 2);
        store<u8>(ink + row + x, <u8>i32x4.extract_lane(both, 3), 3);
      }
      sum += i32x4.extract_lane(upTo, 3);
      square += i32x4.extract_lane(upToSquares, 3);
    }
    for (; x < width; x++) {
      const g = <i32>load<u8>(gray + row + x);
      const above = <f64>N * <f64>g - share * <f64>sum;
      let isInk = above <= 0;
      if (!isInk) {
        const spread = <f64>N * <f64>square - <f64>sum * <f64>sum;
        isInk = above * above <= factor * <f64>sum * <f64>sum * spread;
      }
      store<u8>(ink + row + x, isInk ? 1 : 0);
      const enter = left + ((x + WINDOW) << 2);
      const leave = left + (x << 2);
      sum += load<i32>(enter) - load<i32>(leave);
      square +=
        load<i32>(leftSquares + ((x + WINDOW) << 2)) - load<i32>(leftSquares + (x << 2));
    }
  }
}

/**
 * Votes for lines across the page: in strips of 64 columns and in each row, every second pixel that is darker by `dip`
 * than the pixels `beside` rows above and below.
 */
export function votesAcross(gray: usize, votes: usize, width: i32, height: i32, beside: i32, dip: i32): void {
  const strips = width >> 6;
  const least = i8x16.splat(<i8>dip);
  const step = <usize>beside * width;
  for (let y = beside; y < height - beside; y++) {
    const row = gray + <usize>y * width;
    for (let s = 0; s < strips; s++) {
      let count = 0;
      for (let x: usize = <usize>s << 6, end = x + 64; x < end; x += 16) {
        const here = v128.load(row + x);
        const above = i8x16.ge_u(i8x16.sub_sat_u(v128.load(row + x - step), here), least);
        const below = i8x16.ge_u(i8x16.sub_sat_u(v128.load(row + x + step), here), least);
        count += popcnt(i8x16.bitmask(v128.and(above, below)) & 0x5555);
      }
      store<u8>(votes + <usize>s * height + y, <u8>count);
    }
  }
}

/** Votes for lines down the page: in strips of 64 rows, every second row, for each column. `votes` starts as zeros. */
export function votesDown(gray: usize, votes: usize, width: i32, height: i32, beside: i32, dip: i32): void {
  const strips = height >> 6;
  const least = i8x16.splat(<i8>dip);
  for (let y = beside; y < height - beside; y++) {
    const strip = y >> 6;
    if ((y & 1) != 0 || strip >= strips) continue;
    const row = gray + <usize>y * width;
    const base = votes + <usize>strip * width;
    let x = beside;
    for (; x + 16 <= width - beside; x += 16) {
      const here = v128.load(row + x);
      const before = i8x16.ge_u(i8x16.sub_sat_u(v128.load(row + x - beside), here), least);
      const after = i8x16.ge_u(i8x16.sub_sat_u(v128.load(row + x + beside), here), least);
      // A comparison that holds is -1 in each byte.
      v128.store(base + x, i8x16.sub(v128.load(base + x), v128.and(before, after)));
    }
    for (; x < width - beside; x++) {
      const limit = <i32>load<u8>(row + x) + dip;
      if (<i32>load<u8>(row + x - beside) >= limit && <i32>load<u8>(row + x + beside) >= limit)
        store<u8>(base + x, load<u8>(base + x) + 1);
    }
  }
}
