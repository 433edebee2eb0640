// The pixel stages that touch every pixel of a page, in AssemblyScript with 128-bit SIMD.
// Each gives bit for bit what the plain stage of the same name gives (tests compare them):
//   threshold   image/threshold.ts, `sauvola`
//   votesAcross, votesDown   image/ruling-votes.ts, `rulingVotes`
//   runs        image/runs.ts, `inkRuns`
//   markBand, eraseBand      image/ruling-erase.ts, functions of the same names
//   gatherInk, gatherPaper, halfContrast   image/contrast.ts, functions of the same names
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

// Adds a row to the column sums (16 bits: 51 bytes fit) and to the sums of squares (32 bits), one pixel at a time.
function addRow(row: usize, width: i32, sums: usize, squares: usize): void {
  for (let x = 0; x < width; x++) {
    const g = <i32>load<u8>(row + x);
    store<u16>(sums + (x << 1), <u16>(<i32>load<u16>(sums + (x << 1)) + g));
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
    const s = sums + (x << 1);
    v128.store(s, i16x8.add(v128.load(s), d));
    // a^2 - b^2 = (a - b) (a + b), the products of two 16-bit numbers.
    const t = i16x8.add(a, b);
    const q = squares + (x << 2);
    v128.store(q, i32x4.add(v128.load(q), i32x4.extmul_low_i16x8_s(d, t)));
    v128.store(q, i32x4.add(v128.load(q, 16), i32x4.extmul_high_i16x8_s(d, t)), 16);
  }
  for (; x < width; x++) {
    const a = <i32>load<u8>(enters + x);
    const b = <i32>load<u8>(leaves + x);
    store<u16>(sums + (x << 1), <u16>(<i32>load<u16>(sums + (x << 1)) + a - b));
    store<i32>(squares + (x << 2), load<i32>(squares + (x << 2)) + a * a - b * b);
  }
}

// Copies the mirrored columns beside the picture into the room on both sides of the sums.
function mirror(middle: usize, width: i32): void {
  for (let i = 1; i <= HALF; i++) {
    store<u16>(middle - (i << 1), load<u16>(middle + (reflected(-i, width) << 1)));
    const x = width - 1 + i;
    store<u16>(middle + (x << 1), load<u16>(middle + (reflected(x, width) << 1)));
  }
}

function mirrorSquares(middle: usize, width: i32): void {
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

// Which of four pixels are paper for sure. Bytes of mean 200 or more deviate by at most sqrt(200 * 55), so nothing over
// 0.956 of the mean is ink; 31 of 32 parts are looked at.
// @ts-ignore: decorator
@inline
function isPaper(gray: v128, prefix: usize, x: i32, bright: v128): v128 {
  const at = prefix + (x << 2);
  const sum = i32x4.sub(v128.load(at, WINDOW * 4), v128.load(at));
  // A pixel's byte and a zero beside it, times n: one multiplication of 16-bit pairs.
  const scaled = i32x4.dot_i16x8_s(gray, i32x4.splat(N));
  return v128.and(i32x4.ge_s(sum, bright), i32x4.gt_s(scaled, i32x4.sub(sum, i32x4.shr_s(sum, 5))));
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

// Running totals of one row of sums: prefix[i] is the sum before column i of the padded row. They may overflow;
// differences come out right all the same.
function totals(from: usize, count: i32, prefix: usize): void {
  let carry = i32x4.splat(0);
  for (let i = 0; i < count; i += 8) {
    const eight = v128.load(from + (i << 1));
    const first = i32x4.add(carry, running(i32x4.extend_low_i16x8_u(eight)));
    v128.store(prefix + (i << 2), v128.shuffle<i32>(carry, first, 3, 4, 5, 6));
    const second = i32x4.add(v128.shuffle<i32>(first, first, 3, 3, 3, 3), running(i32x4.extend_high_i16x8_u(eight)));
    v128.store(prefix + (i << 2), v128.shuffle<i32>(first, second, 3, 4, 5, 6), 16);
    carry = v128.shuffle<i32>(second, second, 3, 3, 3, 3);
  }
  v128.store(prefix + (count << 2), carry);
}

function totalsOfSquares(from: usize, count: i32, prefix: usize): void {
  let carry = i32x4.splat(0);
  for (let i = 0; i < count; i += 4) {
    const upTo = i32x4.add(carry, running(v128.load(from + (i << 2))));
    v128.store(prefix + (i << 2), v128.shuffle<i32>(carry, upTo, 3, 4, 5, 6));
    carry = v128.shuffle<i32>(upTo, upTo, 3, 3, 3, 3);
  }
  v128.store(prefix + (count << 2), carry);
}

/**
 * Sauvola's threshold. `work` has room for 4 * (width + 80) 32-bit numbers; `ink` becomes 1 or 0 for each pixel.
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
  const room = <usize>(width + 80) << 2;
  memory.fill(work, 0, 4 * room);
  const left = work;
  const leftSquares = work + room;
  const prefix = work + 2 * room;
  const prefixSquares = work + 3 * room;
  const sums = left + (HALF << 1);
  const squares = leftSquares + (HALF << 2);
  const padded = (width + 2 * HALF + 7) & ~7;
  for (let dy = -HALF; dy <= HALF; dy++) addRow(gray + <usize>reflected(dy, height) * width, width, sums, squares);
  const bright = i32x4.splat(200 * N);
  const one = i32x4.splat(1);
  for (let y = 0; y < height; y++) {
    if (y > 0) {
      const enters = reflected(y + HALF, height);
      const leaves = reflected(y - HALF - 1, height);
      if (enters != leaves) swapRows(gray + <usize>enters * width, gray + <usize>leaves * width, width, sums, squares);
    }
    mirror(sums, width);
    totals(left, padded, prefix);
    let squared = false;
    const row = <usize>y * width;
    let x = 0;
    for (; x + 4 <= width; x += 4) {
      if (x + 8 <= width) {
        const eight = i16x8.extend_low_i8x16_u(v128.load_zero<u64>(gray + row + x));
        const first = i32x4.extend_low_i16x8_u(eight);
        const second = i32x4.extend_high_i16x8_u(eight);
        if (i32x4.all_true(v128.and(isPaper(first, prefix, x, bright), isPaper(second, prefix, x + 4, bright)))) {
          store<u64>(ink + row + x, 0);
          x += 4;
          continue;
        }
      }
      const at = prefix + (x << 2);
      const windowSum = i32x4.sub(v128.load(at, WINDOW * 4), v128.load(at));
      const g = i32x4.extend_low_i16x8_u(i16x8.extend_low_i8x16_u(v128.load_zero<u32>(gray + row + x)));
      if (i32x4.all_true(isPaper(g, prefix, x, bright))) {
        store<u32>(ink + row + x, 0);
        continue;
      }
      if (!squared) {
        mirrorSquares(squares, width);
        totalsOfSquares(leftSquares, padded, prefixSquares);
        squared = true;
      }
      const atSquares = prefixSquares + (x << 2);
      const windowSquare = i32x4.sub(v128.load(atSquares, WINDOW * 4), v128.load(atSquares));
      const first = inkOfTwo(g, windowSum, windowSquare, share, factor);
      const second = inkOfTwo(
        v128.shuffle<i32>(g, g, 2, 3, 2, 3),
        v128.shuffle<i32>(windowSum, windowSum, 2, 3, 2, 3),
        v128.shuffle<i32>(windowSquare, windowSquare, 2, 3, 2, 3),
        share,
        factor,
      );
      const both = v128.and(v128.shuffle<i32>(first, second, 0, 2, 4, 6), one);
      const bytes = i8x16.narrow_i16x8_u(i16x8.narrow_i32x4_u(both, both), i16x8.narrow_i32x4_u(both, both));
      store<u32>(ink + row + x, <u32>i32x4.extract_lane(bytes, 0));
    }
    for (; x < width; x++) {
      if (!squared) {
        mirrorSquares(squares, width);
        totalsOfSquares(leftSquares, padded, prefixSquares);
        squared = true;
      }
      const g = <i32>load<u8>(gray + row + x);
      const sum = load<i32>(prefix + ((x + WINDOW) << 2)) - load<i32>(prefix + (x << 2));
      const square = load<i32>(prefixSquares + ((x + WINDOW) << 2)) - load<i32>(prefixSquares + (x << 2));
      const above = <f64>N * <f64>g - share * <f64>sum;
      let isInk = above <= 0;
      if (!isInk) {
        const spread = <f64>N * <f64>square - <f64>sum * <f64>sum;
        isInk = above * above <= factor * <f64>sum * <f64>sum * spread;
      }
      store<u8>(ink + row + x, isInk ? 1 : 0);
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

/**
 * Runs of bytes that equal 1: first run of each row into `rows`, first column and column after the last into `from` and
 * `to`. Answers how many.
 */
export function runs(bitmap: usize, width: i32, height: i32, rows: usize, from: usize, to: usize): i32 {
  let count = 0;
  const one = i8x16.splat(1);
  for (let y = 0; y < height; y++) {
    store<i32>(rows + (y << 2), count);
    const row = bitmap + <usize>y * width;
    let open = 0;
    let x = 0;
    for (; x < width; x += 16) {
      let mask: i32;
      if (x + 16 <= width) mask = i8x16.bitmask(i8x16.eq(v128.load(row + x), one));
      else {
        mask = 0;
        for (let k = x; k < width; k++) if (load<u8>(row + k) == 1) mask |= 1 << (k - x);
      }
      // Where a pixel differs from the one before it a run begins or ends.
      let turns = (mask ^ ((mask << 1) | open)) & 0xffff;
      while (turns != 0) {
        const at = x + ctz(turns);
        if (open == 0) store<i32>(from + (count << 2), at);
        else {
          store<i32>(to + (count << 2), at);
          count++;
        }
        open ^= 1;
        turns &= turns - 1;
      }
    }
    if (open != 0) {
      store<i32>(to + (count << 2), width);
      count++;
    }
  }
  store<i32>(rows + (height << 2), count);
  return count;
}

/** Marks the pixels of a printed line with `value`, from `s0` to `s1` along it. */
export function markBand(
  bitmap: usize, s0: i32, s1: i32, intercept: f64, slope: f64, offset: f64, reach: f64,
  along: i32, across: i32, breadth: i32, value: i32,
): void {
  for (let s = s0; s < s1; s++) {
    const at = intercept + slope * (<f64>s + 0.5) + offset;
    const from = max<i32>(0, <i32>Math.ceil(at - reach - 0.5));
    const to = min<i32>(breadth - 1, <i32>Math.floor(at + reach - 0.5));
    for (let k = from; k <= to; k++) store<u8>(bitmap + <usize>k * across + <usize>s * along, <u8>value);
  }
}

// Whether ink touches a place of a band before or after it, within `far` pixels across.
function goesOn(bitmap: usize, place: usize, k: i32, across: i32, breadth: i32, far: i32): bool {
  for (let d = 1; d <= far; d++) {
    if (k - d >= 0 && load<u8>(bitmap + place - <usize>d * across) == 1) return true;
    if (k + d < breadth && load<u8>(bitmap + place + <usize>d * across) == 1) return true;
  }
  return false;
}

/** Decides each pixel that is marked with 3: ink (1) or erased (2). `pale` as in the plain stage. */
export function eraseBand(
  gray: usize, bitmap: usize, width: i32, s0: i32, s1: i32, intercept: f64, slope: f64, offset: f64, reach: f64,
  along: i32, across: i32, breadth: i32, depth: f64, pale: f64,
  paperLevels: usize, inkLevels: usize, columns: i32, tileBits: i32,
): void {
  const far = <i32>Math.ceil(2 * reach) + 1;
  for (let s = s0; s < s1; s++) {
    const at = intercept + slope * (<f64>s + 0.5) + offset;
    const from = max<i32>(0, <i32>Math.ceil(at - reach - 0.5));
    const to = min<i32>(breadth - 1, <i32>Math.floor(at + reach - 0.5));
    for (let k = from; k <= to; k++) {
      const place = <usize>k * across + <usize>s * along;
      if (load<u8>(bitmap + place) != 3) continue;
      const x = along == 1 ? s : k;
      const y = along == 1 ? k : s;
      const tile = <usize>((y >> tileBits) * columns + (x >> tileBits)) << 2;
      const paper = <f64>load<f32>(paperLevels + tile);
      const contrast = paper - <f64>load<f32>(inkLevels + tile);
      const share = contrast > 0 ? depth / contrast : 1;
      let isInk: bool;
      if (share < pale) isInk = <f64>load<u8>(gray + place) <= paper - contrast * (0.5 + share / 2);
      else isInk = goesOn(bitmap, place, k, across, breadth, far);
      store<u8>(bitmap + place, isInk ? 1 : 2);
    }
  }
}

/** Second threshold at half contrast, in place. `stack` has room for a 32-bit number a pixel. */
export function halfContrast(
  gray: usize, bitmap: usize, width: i32, height: i32, half: usize, columns: i32, tileBits: i32, stack: usize,
): void {
  const one = i8x16.splat(1);
  let waiting = 0;
  for (let y = 0; y < height; y++) {
    const tileRow = half + <usize>((y >> tileBits) * columns);
    const row = y * width;
    const edge = y == 0 || y == height - 1;
    for (let block = 0; block < width; block += 16) {
      let mask: i32 = 0;
      if (block + 16 <= width) mask = i8x16.bitmask(i8x16.eq(v128.load(bitmap + row + block), one));
      else for (let k = block; k < width; k++) if (load<u8>(bitmap + row + k) == 1) mask |= 1 << (k - block);
      for (; mask != 0; mask &= mask - 1) {
        const x = block + ctz(mask);
        const i = bitmap + row + x;
        if (load<u8>(gray + row + x) > load<u8>(tileRow + (x >> tileBits))) {
          store<u8>(i, 0);
          continue;
        }
        if (
          edge || x == 0 || x == width - 1 || load<u8>(i - 1) != 1 || load<u8>(i + 1) != 1 ||
          load<u8>(i - width) != 1 || load<u8>(i + width) != 1
        ) {
          store<i32>(stack + (<usize>waiting << 2), row + x);
          waiting++;
        }
      }
    }
  }
  while (waiting > 0) {
    waiting--;
    const i = load<i32>(stack + (<usize>waiting << 2));
    const x = i % width;
    const y = (i - x) / width;
    const left = max<i32>(0, x - 1);
    const right = min<i32>(width - 1, x + 1);
    const bottom = min<i32>(height - 1, y + 1);
    for (let yy = max<i32>(0, y - 1); yy <= bottom; yy++) {
      const tileRow = half + <usize>((yy >> tileBits) * columns);
      for (let xx = left; xx <= right; xx++) {
        const j = yy * width + xx;
        if (load<u8>(bitmap + j) != 0 || load<u8>(gray + j) > load<u8>(tileRow + (xx >> tileBits))) continue;
        store<u8>(bitmap + j, 1);
        store<i32>(stack + (<usize>waiting << 2), j);
        waiting++;
      }
    }
  }
}

/**
 * Sums and counts of the gray of ink by tile, over the runs of ink; only of ink at or below its tile's ceiling. Sums and
 * counts are 64-bit floats, zero at the start.
 */
export function gatherInk(
  gray: usize, width: i32, height: i32, rows: usize, from: usize, to: usize,
  ceiling: usize, sums: usize, counts: usize, columns: i32, tileBits: i32,
): void {
  for (let y = 0; y < height; y++) {
    const tileRow = (y >> tileBits) * columns;
    const row = gray + <usize>y * width;
    const last = load<i32>(rows + ((y + 1) << 2));
    for (let r = load<i32>(rows + (y << 2)); r < last; r++) {
      const end = load<i32>(to + (r << 2));
      let x = load<i32>(from + (r << 2));
      while (x < end) {
        const tile = tileRow + (x >> tileBits);
        const stop = min<i32>(end, ((x >> tileBits) + 1) << tileBits);
        const most = load<f32>(ceiling + (tile << 2));
        let s = 0;
        let n = 0;
        for (; x < stop; x++) {
          const g = <i32>load<u8>(row + x);
          if (<f32>g > most) continue;
          s += g;
          n++;
        }
        store<f64>(sums + (tile << 3), load<f64>(sums + (tile << 3)) + <f64>s);
        store<f64>(counts + (tile << 3), load<f64>(counts + (tile << 3)) + <f64>n);
      }
    }
  }
}

/** Sums and counts of the gray of paper (bitmap 0) by tile, every `step` rows and `stepAlong` columns. */
export function gatherPaper(
  gray: usize, bitmap: usize, width: i32, height: i32, sums: usize, counts: usize,
  columns: i32, tileBits: i32, step: i32, stepAlong: i32,
): void {
  for (let y = step >> 1; y < height; y += step) {
    const tileRow = (y >> tileBits) * columns;
    const row = <usize>y * width;
    for (let x = stepAlong >> 1; x < width; x += stepAlong) {
      if (load<u8>(bitmap + row + x) != 0) continue;
      const tile = tileRow + (x >> tileBits);
      store<f64>(sums + (tile << 3), load<f64>(sums + (tile << 3)) + <f64>load<u8>(gray + row + x));
      store<f64>(counts + (tile << 3), load<f64>(counts + (tile << 3)) + 1);
    }
  }
}
