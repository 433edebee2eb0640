// The pixel stages that touch every pixel of a page, in AssemblyScript with 128-bit SIMD.
// Each gives bit for bit what the plain stage of the same name gives (tests compare them):
//   threshold   image/threshold.ts, `sauvola`
//   votes       image/ruling-votes.ts, `rulingVotes`
//   runs        image/runs.ts, `inkRuns`
//   markBands, eraseBands    image/ruling-erase.ts, `markBand` and `eraseBand` for a table of bands
//   gatherInk, gatherPaper, halfContrast, seam   image/contrast.ts, functions of the same names
//   rims        image/marks.ts, function of the same name
//   luma        image/luma.ts, `plainLuma`
// Built by build/wasm.ts into bytes.ts. Memory is laid out by the caller, who passes addresses. Two threads share it:
// each does a part of the rows (or columns) and writes to nothing that the other reads meanwhile.

export { topSums } from './curves';
export { outlines } from './outlines';

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

// 0, d0, d0+d1, ... of four 16-bit column sums: four of them fit into 16 bits, so both halves run at once.
// @ts-ignore: decorator
@inline
function runningSums(d: v128): v128 {
  const pairs = i16x8.add(d, i64x2.shl(d, 16));
  return i16x8.add(pairs, i64x2.shl(pairs, 32));
}

// Row `enters` comes into the window, row `leaves` goes out of it, eight columns at a time; `totals[x]` becomes the sum
// of the columns before x. Totals may overflow; differences of them come out right all the same.
function swapRows(enters: usize, leaves: usize, width: i32, sums: usize, squares: usize, totals: usize): void {
  let carry = i32x4.splat(0);
  store<i32>(totals, 0);
  let x = 0;
  for (; x + 8 <= width; x += 8) {
    const a = i16x8.extend_low_i8x16_u(v128.load_zero<u64>(enters + x));
    const b = i16x8.extend_low_i8x16_u(v128.load_zero<u64>(leaves + x));
    const d = i16x8.sub(a, b);
    const s = sums + (x << 1);
    const sum = i16x8.add(v128.load(s), d);
    v128.store(s, sum);
    // a^2 - b^2 = (a - b) (a + b), the products of two 16-bit numbers.
    const t = i16x8.add(a, b);
    const q = squares + (x << 2);
    v128.store(q, i32x4.add(v128.load(q), i32x4.extmul_low_i16x8_s(d, t)));
    v128.store(q, i32x4.add(v128.load(q, 16), i32x4.extmul_high_i16x8_s(d, t)), 16);
    const upTo = runningSums(sum);
    const low = i32x4.extend_low_i16x8_u(upTo);
    const high = i32x4.extend_high_i16x8_u(upTo);
    const half = v128.shuffle<i32>(low, low, 3, 3, 3, 3);
    const whole = i32x4.add(half, v128.shuffle<i32>(high, high, 3, 3, 3, 3));
    v128.store(totals + (x << 2), i32x4.add(carry, low), 4);
    v128.store(totals + (x << 2), i32x4.add(i32x4.add(carry, half), high), 20);
    carry = i32x4.add(carry, whole);
  }
  for (; x < width; x++) {
    const a = <i32>load<u8>(enters + x);
    const b = <i32>load<u8>(leaves + x);
    const sum = <i32>load<u16>(sums + (x << 1)) + a - b;
    store<u16>(sums + (x << 1), <u16>sum);
    store<i32>(squares + (x << 2), load<i32>(squares + (x << 2)) + a * a - b * b);
    store<i32>(totals + (x << 2), load<i32>(totals + (x << 2)) + sum, 4);
  }
  // Mirrored columns beside the picture.
  for (let i = 1; i <= HALF; i++) {
    const before = <i32>load<u16>(sums + (mirrored(-i, width) << 1));
    store<i32>(totals - (i << 2), load<i32>(totals - (i << 2), 4) - before);
    const after = <i32>load<u16>(sums + (mirrored(width - 1 + i, width) << 1));
    store<i32>(totals + ((width + i) << 2), load<i32>(totals + ((width + i - 1) << 2)) + after);
  }
}

// `reflected` without a division where a single mirror does: every row of a page comes here.
// @ts-ignore: decorator
@inline
function mirrored(index: i32, length: i32): i32 {
  if (length <= WINDOW) return reflected(index, length);
  return index < 0 ? -index : 2 * length - 2 - index;
}

// The same totals of the squares; only rows with something dark need them.
function totalsOfSquares(squares: usize, width: i32, totals: usize): void {
  let carry = i32x4.splat(0);
  const zero = i32x4.splat(0);
  store<i32>(totals, 0);
  let x = 0;
  for (; x + 4 <= width; x += 4) {
    const d = v128.load(squares + (x << 2));
    const pairs = i32x4.add(d, v128.shuffle<i32>(zero, d, 3, 4, 5, 6));
    const upTo = i32x4.add(pairs, v128.shuffle<i32>(zero, pairs, 2, 3, 4, 5));
    v128.store(totals + (x << 2), i32x4.add(carry, upTo), 4);
    carry = i32x4.add(carry, v128.shuffle<i32>(upTo, upTo, 3, 3, 3, 3));
  }
  for (; x < width; x++) store<i32>(totals + (x << 2), load<i32>(totals + (x << 2)) + load<i32>(squares + (x << 2)), 4);
  for (let i = 1; i <= HALF; i++) {
    store<i32>(totals - (i << 2), load<i32>(totals - (i << 2), 4) - load<i32>(squares + (mirrored(-i, width) << 2)));
    const after = load<i32>(squares + (mirrored(width - 1 + i, width) << 2));
    store<i32>(totals + ((width + i) << 2), load<i32>(totals + ((width + i - 1) << 2)) + after);
  }
}

// Sum over the window of four pixels from x on.
// @ts-ignore: decorator
@inline
function windowOf(totals: usize, x: i32): v128 {
  const at = totals + ((x - HALF) << 2);
  return i32x4.sub(v128.load(at, WINDOW * 4), v128.load(at));
}

// Which of eight pixels are paper for sure, as bits. Bytes of mean 200 or more deviate by at most sqrt(200 * 55), so
// nothing over 0.956 of the mean is ink. Sums are taken in 32nds, to fit into 16 bits: 81 g against 0.961 of them
// (n / 32 is 81.28) asks for 0.964 of the mean, rounding included.
// @ts-ignore: decorator
@inline
function paperBits(gray: v128, first: v128, second: v128): i32 {
  const sum = i16x8.narrow_i32x4_s(i32x4.shr_s(first, 5), i32x4.shr_s(second, 5));
  const level = i16x8.sub(i16x8.sub(sum, i16x8.shr_s(sum, 5)), i16x8.shr_s(sum, 7));
  const isBright = i16x8.ge_s(sum, i16x8.splat(<i16>(((200 * N) >> 5) + 1)));
  return i16x8.bitmask(v128.and(isBright, i16x8.gt_s(i16x8.mul(gray, i16x8.splat(81)), level)));
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

// Ink of four pixels from x on as four bytes, 1 or 0.
// @ts-ignore: decorator
@inline
function inkOfFour(g: v128, sum: v128, square: v128, share: f64, factor: f64): u32 {
  const first = inkOfTwo(g, sum, square, share, factor);
  const second = inkOfTwo(
    v128.shuffle<i32>(g, g, 2, 3, 2, 3),
    v128.shuffle<i32>(sum, sum, 2, 3, 2, 3),
    v128.shuffle<i32>(square, square, 2, 3, 2, 3),
    share,
    factor,
  );
  const both = v128.and(v128.shuffle<i32>(first, second, 0, 2, 4, 6), i32x4.splat(1));
  const bytes = i8x16.narrow_i16x8_u(i16x8.narrow_i32x4_u(both, both), i16x8.narrow_i32x4_u(both, both));
  return <u32>i32x4.extract_lane(bytes, 0);
}

/**
 * Sauvola's threshold of the rows from `y0` to before `y1`. `work` has room for 4 * (width + 80) 32-bit numbers; `ink`
 * becomes 1 or 0 for each pixel. `share` is 1 - k and `factor` (k / R)^2 / n^2, as the plain stage computes them.
 */
export function threshold(
  gray: usize,
  ink: usize,
  width: i32,
  height: i32,
  y0: i32,
  y1: i32,
  work: usize,
  share: f64,
  factor: f64,
): void {
  const room = <usize>(width + 80) << 2;
  memory.fill(work, 0, 2 * room);
  const sums = work;
  const squares = work + room;
  const totals = work + 2 * room + (HALF << 2);
  const totalsSquared = work + 3 * room + (HALF << 2);
  for (let dy = -HALF; dy <= HALF; dy++) addRow(gray + <usize>reflected(y0 + dy, height) * width, width, sums, squares);
  for (let y = y0; y < y1; y++) {
    // The first row's window is full already: what enters leaves.
    const enters = gray + <usize>reflected(y + HALF, height) * width;
    const leaves = y == y0 ? enters : gray + <usize>reflected(y - HALF - 1, height) * width;
    swapRows(enters, leaves, width, sums, squares, totals);
    let squared = false;
    const row = gray + <usize>y * width;
    const out = ink + <usize>y * width;
    let x = 0;
    for (; x + 8 <= width; x += 8) {
      const g = i16x8.extend_low_i8x16_u(v128.load_zero<u64>(row + x));
      const first = windowOf(totals, x);
      const second = windowOf(totals, x + 4);
      const paper = paperBits(g, first, second);
      if (paper == 0xff) {
        store<u64>(out + x, 0);
        continue;
      }
      if (!squared) {
        totalsOfSquares(squares, width, totalsSquared);
        squared = true;
      }
      let bytes: u32 = 0;
      if ((paper & 0x0f) != 0x0f)
        bytes = inkOfFour(i32x4.extend_low_i16x8_u(g), first, windowOf(totalsSquared, x), share, factor);
      store<u32>(out + x, bytes);
      bytes = 0;
      if ((paper & 0xf0) != 0xf0)
        bytes = inkOfFour(i32x4.extend_high_i16x8_u(g), second, windowOf(totalsSquared, x + 4), share, factor);
      store<u32>(out + x, bytes, 4);
    }
    if (x < width && !squared) totalsOfSquares(squares, width, totalsSquared);
    for (; x < width; x++) {
      const at = (x - HALF) << 2;
      const g = <i32>load<u8>(row + x);
      const sum = load<i32>(totals + at, WINDOW * 4) - load<i32>(totals + at);
      const square = load<i32>(totalsSquared + at, WINDOW * 4) - load<i32>(totalsSquared + at);
      const above = <f64>N * <f64>g - share * <f64>sum;
      let isInk = above <= 0;
      if (!isInk) {
        const spread = <f64>N * <f64>square - <f64>sum * <f64>sum;
        isInk = above * above <= factor * <f64>sum * <f64>sum * spread;
      }
      store<u8>(out + x, isInk ? 1 : 0);
    }
  }
}

/** Votes for lines across and down the page, by rows from `y0` to before `y1`. */
export function votes(
  gray: usize, across: usize, down: usize, width: i32, height: i32, y0: i32, y1: i32, beside: i32, dip: i32,
): void {
  votesAcross(gray, across, width, height, y0, y1, beside, dip);
  votesDown(gray, down, width, height, y0, y1, beside, dip);
}

/**
 * Votes for lines across the page: in strips of 64 columns and in each row, every second pixel that is darker by `dip`
 * than the pixels `beside` rows above and below. Rows from `y0` to before `y1`.
 */
function votesAcross(
  gray: usize, counts: usize, width: i32, height: i32, y0: i32, y1: i32, beside: i32, dip: i32,
): void {
  const strips = width >> 6;
  const least = i8x16.splat(<i8>dip);
  const step = <usize>beside * width;
  for (let y = max<i32>(beside, y0), last = min<i32>(height - beside, y1); y < last; y++) {
    const row = gray + <usize>y * width;
    for (let s = 0; s < strips; s++) {
      let count = 0;
      for (let x: usize = <usize>s << 6, end = x + 64; x < end; x += 16) {
        const here = v128.load(row + x);
        const above = i8x16.ge_u(i8x16.sub_sat_u(v128.load(row + x - step), here), least);
        const below = i8x16.ge_u(i8x16.sub_sat_u(v128.load(row + x + step), here), least);
        count += popcnt(i8x16.bitmask(v128.and(above, below)) & 0x5555);
      }
      store<u8>(counts + <usize>s * height + y, <u8>count);
    }
  }
}

/**
 * Votes for lines down the page: in strips of 64 rows, every second row, for each column. `counts` starts as zeros.
 * Rows from `y0` to before `y1`; between two threads a strip is not divided.
 */
function votesDown(
  gray: usize, counts: usize, width: i32, height: i32, y0: i32, y1: i32, beside: i32, dip: i32,
): void {
  const strips = height >> 6;
  const least = i8x16.splat(<i8>dip);
  for (let y = max<i32>(beside, y0), last = min<i32>(height - beside, y1); y < last; y++) {
    const strip = y >> 6;
    if ((y & 1) != 0 || strip >= strips) continue;
    const row = gray + <usize>y * width;
    const base = counts + <usize>strip * width;
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

// A printed line in a table of them: ten 64-bit floats, in this order.
@unmanaged
class Band {
  s0: f64;
  s1: f64;
  intercept: f64;
  slope: f64;
  offset: f64;
  reach: f64;
  along: f64;
  across: f64;
  breadth: f64;
  depth: f64;
}

const BAND_BYTES: usize = 80;

/** Marks with `value` the pixels of printed lines that step by `along`, from `first` to before `end` along them. */
export function markBands(
  bitmap: usize, bands: usize, count: i32, along: i32, first: i32, end: i32, value: i32,
): void {
  for (let b = 0; b < count; b++) {
    const band = changetype<Band>(bands + <usize>b * BAND_BYTES);
    if (<i32>band.along != along) continue;
    const across = <usize>band.across;
    const most = <i32>band.breadth - 1;
    for (let s = max<i32>(first, <i32>band.s0), last = min<i32>(end, <i32>band.s1); s < last; s++) {
      const at = band.intercept + band.slope * (<f64>s + 0.5) + band.offset;
      const from = max<i32>(0, <i32>Math.ceil(at - band.reach - 0.5));
      const to = min<i32>(most, <i32>Math.floor(at + band.reach - 0.5));
      for (let k = from; k <= to; k++) store<u8>(bitmap + <usize>k * across + <usize>s * along, <u8>value);
    }
  }
}

// Whether a stroke goes on beyond a band from a place in one of its columns, as in the plain stage.
function goesOn(bitmap: usize, column: usize, k: i32, across: usize, breadth: i32, from: i32, to: i32, middle: f64): bool {
  const before = inkAcross(bitmap, column, from - 1, across, breadth) || inkAcross(bitmap, column, from - 2, across, breadth);
  const after = inkAcross(bitmap, column, to + 1, across, breadth) || inkAcross(bitmap, column, to + 2, across, breadth);
  if (before && after) return true;
  return <f64>k + 0.5 < middle ? before : after;
}

function inkAcross(bitmap: usize, column: usize, k: i32, across: usize, breadth: i32): bool {
  return k >= 0 && k < breadth && load<u8>(bitmap + column + <usize>k * across) == 1;
}

/**
 * Decides each pixel that is marked with 3: ink (1) or erased (2), of the printed lines that step by `along`, from
 * `first` to before `end` along them. `pale` as in the plain stage.
 */
export function eraseBands(
  gray: usize, bitmap: usize, bands: usize, count: i32, along: i32, first: i32, end: i32, pale: f64,
  paperLevels: usize, inkLevels: usize, columns: i32, tileBits: i32,
): void {
  for (let b = 0; b < count; b++) {
    const band = changetype<Band>(bands + <usize>b * BAND_BYTES);
    if (<i32>band.along != along) continue;
    const across = <usize>band.across;
    const breadth = <i32>band.breadth;
    const depth = band.depth;
    let last: usize = -1;
    let share = 1.0;
    // Lightest gray that is ink, where the printed line is paler than ink.
    let most = 0;
    for (let s = max<i32>(first, <i32>band.s0), stop = min<i32>(end, <i32>band.s1); s < stop; s++) {
      const at = band.intercept + band.slope * (<f64>s + 0.5) + band.offset;
      const from = max<i32>(0, <i32>Math.ceil(at - band.reach - 0.5));
      const to = min<i32>(breadth - 1, <i32>Math.floor(at + band.reach - 0.5));
      const column = <usize>s * along;
      for (let k = from; k <= to; k++) {
        const place = <usize>k * across + column;
        if (load<u8>(bitmap + place) != 3) continue;
        const x = along == 1 ? s : k;
        const y = along == 1 ? k : s;
        const tile = <usize>((y >> tileBits) * columns + (x >> tileBits)) << 2;
        if (tile != last) {
          last = tile;
          const paper = <f64>load<f32>(paperLevels + tile);
          const contrast = paper - <f64>load<f32>(inkLevels + tile);
          share = contrast > 0 ? depth / contrast : 1;
          most = <i32>Math.floor(paper - contrast * (0.5 + share / 2));
        }
        const isInk =
          share < pale ? <i32>load<u8>(gray + place) <= most : goesOn(bitmap, column, k, across, breadth, from, to, at);
        store<u8>(bitmap + place, isInk ? 1 : 2);
      }
    }
  }
}

// Ink of one row that is paler than halfway becomes paper. Whether ink is left.
function clearPale(gray: usize, bitmap: usize, width: i32, half: usize, tileBits: i32): bool {
  const one = i8x16.splat(1);
  let left = i8x16.splat(0);
  let x = 0;
  // Blocks of 16 lie within one tile.
  for (; x + 16 <= width; x += 16) {
    const here = v128.load(bitmap + x);
    const ink = i8x16.eq(here, one);
    if (!v128.any_true(ink)) continue;
    const kept = v128.andnot(here, v128.and(ink, i8x16.gt_u(v128.load(gray + x), i8x16.splat(load<u8>(half + (x >> tileBits))))));
    v128.store(bitmap + x, kept);
    left = v128.or(left, kept);
  }
  let rest = false;
  for (; x < width; x++) {
    if (load<u8>(bitmap + x) != 1) continue;
    if (load<u8>(gray + x) > load<u8>(half + (x >> tileBits))) store<u8>(bitmap + x, 0);
    else rest = true;
  }
  return rest || v128.any_true(v128.and(left, one));
}

// Whether one of the eight pixels around is ink.
function touchesInk(bitmap: usize, x: i32, y: i32, width: i32, height: i32): bool {
  const right = min<i32>(width - 1, x + 1);
  const bottom = min<i32>(height - 1, y + 1);
  for (let yy = max<i32>(0, y - 1); yy <= bottom; yy++)
    for (let xx = max<i32>(0, x - 1); xx <= right; xx++) if (load<u8>(bitmap + yy * width + xx) == 1) return true;
  return false;
}

// Ink in a row and in the rows above and below it, at three neighboring places: the lowest bit of each byte.
// @ts-ignore: decorator
@inline
function inkAround(at: usize, width: usize): v128 {
  return v128.or(v128.or(v128.load(at - width), v128.load(at)), v128.load(at + width));
}

/** Second threshold at half contrast, in place. `stack` has room for a 32-bit number a pixel. */
export function halfContrast(
  gray: usize, bitmap: usize, width: i32, height: i32, half: usize, columns: i32, tileBits: i32, stack: usize,
): void {
  const one = i8x16.splat(1);
  const zero = i8x16.splat(0);
  // The first pass clears what is too pale; `near` tells whether the last three rows it saw have ink.
  let near = 0;
  let waiting = 0;
  for (let ahead = 0; ahead <= height; ahead++) {
    near = (near << 1) & 7;
    if (ahead < height) {
      const row = <usize>ahead * width;
      if (clearPale(gray + row, bitmap + row, width, half + <usize>((ahead >> tileBits) * columns), tileBits)) near |= 1;
    }
    // The second, a row behind, takes in what is dark enough and touches ink.
    const y = ahead - 1;
    if (y < 0 || near == 0) continue;
    const row = y * width;
    const tileRow = half + <usize>((y >> tileBits) * columns);
    let x = 0;
    while (x < width) {
      // Rows above and below, and 16 pixels with one more on each side.
      if (x > 0 && x + 16 < width && (x & 15) == 0 && y > 0 && y < height - 1) {
        const at = bitmap + row + x;
        const around = v128.and(v128.or(inkAround(at - 1, width), inkAround(at + 1, width)), one);
        if (v128.any_true(around)) {
          const here = v128.load(at);
          const touched = i8x16.eq(v128.and(v128.or(around, inkAround(at, width)), one), one);
          const dark = i8x16.le_u(v128.load(gray + row + x), i8x16.splat(load<u8>(tileRow + (x >> tileBits))));
          const added = v128.and(v128.and(touched, dark), i8x16.eq(here, zero));
          if (v128.any_true(added)) {
            v128.store(at, v128.or(here, v128.and(added, one)));
            for (let mask = i8x16.bitmask(added); mask != 0; mask &= mask - 1) {
              store<i32>(stack + (<usize>waiting << 2), row + x + ctz(mask));
              waiting++;
            }
          }
        }
        x += 16;
        continue;
      }
      const i = row + x;
      if (
        load<u8>(bitmap + i) == 0 && load<u8>(gray + i) <= load<u8>(tileRow + (x >> tileBits)) &&
        touchesInk(bitmap, x, y, width, height)
      ) {
        store<u8>(bitmap + i, 1);
        store<i32>(stack + (<usize>waiting << 2), i);
        waiting++;
      }
      x++;
    }
  }
  spread(gray, bitmap, width, height, half, columns, tileBits, stack, waiting);
}

/**
 * Joins two parts of a page that were thresholded by themselves, below row `y` - 1 and above row `y`: ink goes over the
 * seam wherever it is dark enough on the other side.
 */
export function seam(
  gray: usize, bitmap: usize, width: i32, height: i32, y: i32, half: usize, columns: i32, tileBits: i32, stack: usize,
): void {
  let waiting = 0;
  for (let row = y - 1; row <= y; row++)
    for (let x = 0; x < width; x++) {
      const i = row * width + x;
      if (load<u8>(bitmap + i) != 0) continue;
      if (load<u8>(gray + i) > load<u8>(half + <usize>((row >> tileBits) * columns + (x >> tileBits)))) continue;
      if (!touchesInk(bitmap, x, row, width, height)) continue;
      store<u8>(bitmap + i, 1);
      store<i32>(stack + (<usize>waiting << 2), i);
      waiting++;
    }
  spread(gray, bitmap, width, height, half, columns, tileBits, stack, waiting);
}

// Takes in all that is dark enough around the pixels that wait, and around those.
function spread(
  gray: usize, bitmap: usize, width: i32, height: i32, half: usize, columns: i32, tileBits: i32, stack: usize,
  waiting: i32,
): void {
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
 * Sums and counts of the gray of ink by tile; only of ink at or below its tile's ceiling. Sums and counts are 64-bit
 * floats, zero at the start.
 */
export function gatherInk(
  gray: usize, bitmap: usize, width: i32, height: i32,
  ceiling: usize, sums: usize, counts: usize, columns: i32, tileBits: i32,
): void {
  const one = i8x16.splat(1);
  for (let y = 0; y < height; y++) {
    const tileRow = (y >> tileBits) * columns;
    const row = <usize>y * width;
    let x = 0;
    // Blocks of 16 lie within one tile.
    for (; x + 16 <= width; x += 16) {
      let ink = i8x16.eq(v128.load(bitmap + row + x), one);
      if (!v128.any_true(ink)) continue;
      const tile = tileRow + (x >> tileBits);
      const most = i8x16.splat(<u8>load<f32>(ceiling + (tile << 2)));
      const g = v128.load(gray + row + x);
      ink = v128.and(ink, i8x16.le_u(g, most));
      const pairs = i32x4.extadd_pairwise_i16x8_u(i16x8.extadd_pairwise_i8x16_u(v128.and(g, ink)));
      const half = i32x4.add(pairs, v128.shuffle<i32>(pairs, pairs, 2, 3, 0, 1));
      const s = i32x4.extract_lane(half, 0) + i32x4.extract_lane(half, 1);
      store<f64>(sums + (tile << 3), load<f64>(sums + (tile << 3)) + <f64>s);
      store<f64>(counts + (tile << 3), load<f64>(counts + (tile << 3)) + <f64>popcnt(i8x16.bitmask(ink)));
    }
    for (; x < width; x++) {
      if (load<u8>(bitmap + row + x) != 1) continue;
      const tile = tileRow + (x >> tileBits);
      const g = <i32>load<u8>(gray + row + x);
      if (<f32>g > load<f32>(ceiling + (tile << 2))) continue;
      store<f64>(sums + (tile << 3), load<f64>(sums + (tile << 3)) + <f64>g);
      store<f64>(counts + (tile << 3), load<f64>(counts + (tile << 3)) + 1);
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

// Whether the ink at a place is the middle of a cross of ink, `samples` steps to each side.
function isCross(at: usize, width: i32, step: i32, samples: i32): bool {
  for (let d = -samples; d <= samples; d++)
    if (load<u8>(at + d * step) != 1 || load<u8>(at + d * step * width) != 1) return false;
  return true;
}

/**
 * Counts crosses of ink on a grid (every `rowStep` rows, every `step` columns, `samples` steps from the picture's edge)
 * in rows from `y0` to before `y1`, into four 32-bit numbers: top left, top right, bottom left, bottom right quarter.
 */
export function rims(
  ink: usize, width: i32, height: i32, y0: i32, y1: i32, step: i32, rowStep: i32, samples: i32, counts: usize,
): void {
  const reach = samples * step;
  const right = (width + 1) >> 1;
  const lower = (height + 1) >> 1;
  // So many columns of the grid lie within sixteen pixels.
  const skip = ((15 / step) + 1) * step;
  memory.fill(counts, 0, 16);
  let y = reach;
  if (y < y0) y += ((y0 - y + rowStep - 1) / rowStep) * rowStep;
  for (const last = min<i32>(height - reach, y1); y < last; y += rowStep) {
    const row = ink + <usize>y * width;
    let x = reach;
    while (x < width - reach) {
      // Paper is passed over sixteen pixels at a time.
      if (!v128.any_true(v128.load(row + x))) {
        x += skip;
        continue;
      }
      if (load<u8>(row + x) == 1 && isCross(row + x, width, step, samples)) {
        const place = counts + (y < lower ? 0 : 8) + (x < right ? 0 : 4);
        store<i32>(place, load<i32>(place) + 1);
      }
      x += step;
    }
  }
}

// One color of sixteen pixels, a byte each, out of 48 bytes: the places that each of three vectors fills.
// @ts-ignore: decorator
@inline
function color(a: v128, b: v128, c: v128, inA: v128, inB: v128, inC: v128): v128 {
  return v128.or(v128.or(i8x16.swizzle(a, inA), i8x16.swizzle(b, inB)), i8x16.swizzle(c, inC));
}

/** Gray of pixels of three bytes, by the parts of 256 that each color has. */
export function luma(from: usize, to: usize, count: i32, red: i32, green: i32, blue: i32): void {
  const r = i16x8.splat(<i16>red);
  const g = i16x8.splat(<i16>green);
  const b = i16x8.splat(<i16>blue);
  // Places beyond a vector are filled with 0.
  const red0 = i8x16(0, 3, 6, 9, 12, 15, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1);
  const red1 = i8x16(-1, -1, -1, -1, -1, -1, 2, 5, 8, 11, 14, -1, -1, -1, -1, -1);
  const red2 = i8x16(-1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, 1, 4, 7, 10, 13);
  const green0 = i8x16(1, 4, 7, 10, 13, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1);
  const green1 = i8x16(-1, -1, -1, -1, -1, 0, 3, 6, 9, 12, 15, -1, -1, -1, -1, -1);
  const green2 = i8x16(-1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, 2, 5, 8, 11, 14);
  const blue0 = i8x16(2, 5, 8, 11, 14, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1, -1);
  const blue1 = i8x16(-1, -1, -1, -1, -1, 1, 4, 7, 10, 13, -1, -1, -1, -1, -1, -1);
  const blue2 = i8x16(-1, -1, -1, -1, -1, -1, -1, -1, -1, -1, 0, 3, 6, 9, 12, 15);
  let i = 0;
  for (; i + 16 <= count; i += 16) {
    const at = from + 3 * i;
    const first = v128.load(at);
    const second = v128.load(at, 16);
    const third = v128.load(at, 32);
    const reds = color(first, second, third, red0, red1, red2);
    const greens = color(first, second, third, green0, green1, green2);
    const blues = color(first, second, third, blue0, blue1, blue2);
    // The parts add up to 256: sums fit into 16 bits.
    const low = i16x8.add(
      i16x8.add(i16x8.mul(i16x8.extend_low_i8x16_u(reds), r), i16x8.mul(i16x8.extend_low_i8x16_u(greens), g)),
      i16x8.mul(i16x8.extend_low_i8x16_u(blues), b),
    );
    const high = i16x8.add(
      i16x8.add(i16x8.mul(i16x8.extend_high_i8x16_u(reds), r), i16x8.mul(i16x8.extend_high_i8x16_u(greens), g)),
      i16x8.mul(i16x8.extend_high_i8x16_u(blues), b),
    );
    v128.store(to + i, i8x16.narrow_i16x8_u(i16x8.shr_u(low, 8), i16x8.shr_u(high, 8)));
  }
  for (; i < count; i++) {
    const at = from + 3 * i;
    store<u8>(to + i, <u8>((red * <i32>load<u8>(at) + green * <i32>load<u8>(at, 1) + blue * <i32>load<u8>(at, 2)) >> 8));
  }
}
