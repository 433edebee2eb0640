// Outlines of pieces of ink, as pieces/outlines.ts draws them, with pieces/stroke-edge.ts: bit for bit (a test compares them). exp is that of fdlibm
// (Sun Microsystems, 1993), for that is what the JavaScript engine gives.

// What the pieces of a page share: 64-bit floats in this order.
@unmanaged
class Page {
  gray: f64;
  bitmap: f64;
  width: f64;
  height: f64;
  // Levels of paper by tile.
  paper: f64;
  columns: f64;
  tileBits: f64;
  // How much darker than paper printed lines are that run across and down the page.
  printedAcross: f64;
  printedDown: f64;
  // Solid printed lines across and down the page: addresses and numbers of them.
  across: f64;
  acrossCount: f64;
  down: f64;
  downCount: f64;
  steepness: f64;
  // Runs by piece, and the edges at their ends that are known already.
  lefts: f64;
  rights: f64;
  rows: f64;
  edges: f64;
  cos: f64;
  sin: f64;
  originX: f64;
  originY: f64;
  drawnIn: f64;
  // Five 32-bit numbers a piece, outlines, and four 64-bit floats a piece.
  pieces: f64;
  outlines: f64;
  extents: f64;
}

// A solid printed line: nine 64-bit floats in this order.
@unmanaged
class Print {
  first: f64;
  end: f64;
  intercept: f64;
  slope: f64;
  offset: f64;
  reach: f64;
  depth: f64;
  half: f64;
  most: f64;
}
const PRINT_BYTES: usize = 72;

// A piece of ink: five 32-bit numbers in this order. Its outline from above begins at `at`, that from below behind it.
@unmanaged
class Piece {
  left: i32;
  right: i32;
  firstRun: i32;
  runCount: i32;
  at: i32;
}
const PIECE_BYTES: usize = 20;

const ERASED: i32 = 2;

// e^x; what is added to 1 is nothing from -700 down.
function exp1(given: f64): f64 {
  if (given > 709) return f64.MAX_VALUE;
  if (given < -700) return 0;
  if (given == 1) return 2.718281828459045;
  const size = <i32>(reinterpret<u64>(given) >> 32) & 0x7fffffff;
  let x = given;
  let k = 0;
  let high = 0.0;
  let low = 0.0;
  if (size > 0x3fd62e42) {
    k = size < 0x3ff0a2b2 ? (x < 0 ? -1 : 1) : <i32>(1.4426950408889634 * x + (x < 0 ? -0.5 : 0.5));
    high = x - <f64>k * 6.93147180369123816490e-1;
    low = <f64>k * 1.90821492927058770002e-10;
    x = high - low;
  } else if (size < 0x3e300000) return 1 + x;
  const t = x * x;
  let p = -1.65339022054652515390e-6 + t * 4.13813679705723846039e-8;
  p = 6.61375632143793436117e-5 + t * p;
  p = -2.77777777770155933842e-3 + t * p;
  p = 1.66666666666666019037e-1 + t * p;
  const c = x - t * p;
  if (k == 0) return 1 - ((x * c) / (c - 2) - x);
  const y = 1 - (low - (x * c) / (2 - c) - high);
  return y * reinterpret<f64>(<u64>(1023 + k) << 52);
}

function below(z: f64, steepness: f64): f64 {
  return 1 / (1 + exp1((-1.702 * z) / steepness));
}

// The printed line that runs square to a column (`down`) or row near a pixel; 0 where there is none. `off` is left in `offBand`.
let offBand: f64 = 0;
function printAt(page: Page, x: i32, y: i32, down: bool): usize {
  const along = <f64>(down ? x : y);
  const across = <f64>(down ? y : x);
  let at = <usize>(down ? page.across : page.down);
  for (let n = <i32>(down ? page.acrossCount : page.downCount); n > 0; n--, at += PRINT_BYTES) {
    const print = changetype<Print>(at);
    if (along < print.first || along >= print.end) continue;
    const off = print.intercept + print.slope * (along + 0.5) + print.offset - across - 0.5;
    if (Math.abs(off) > print.reach + 3) continue;
    offBand = off;
    return at;
  }
  return 0;
}

// Gray of what was taken out beside a place, its darkest quarter.
function printBeside(gray: usize, bitmap: usize, step: i32, room: i32): i32 {
  // Eight levels at most, sorted as they come, a byte each.
  let levels: u64 = 0;
  let count = 0;
  for (let k = 1; k <= min(9, room) && load<u8>(bitmap + k * step) == ERASED; k++) {
    // The first is partly ink: it counts alone only.
    if (k == 2) levels = count = 0;
    const level = load<u8>(gray + k * step);
    let place = 0;
    while (place < count && <u8>(levels >> (place << 3)) <= level) place++;
    const under = levels & ((<u64>1 << (place << 3)) - 1);
    levels = under | (<u64>level << (place << 3)) | ((levels ^ under) << 8);
    count++;
  }
  return <i32><u8>(levels >> ((count >> 2) << 3));
}

// Distance from the center of the last ink pixel outward to its edge.
function edgeBeyond(page: Page, x: i32, y: i32, dx: i32, dy: i32): f64 {
  const width = <i32>page.width;
  const height = <i32>page.height;
  const step = dy * width + dx;
  const room = dx == 0 ? (dy < 0 ? y : height - 1 - y) : dx < 0 ? x : width - 1 - x;
  const depth = dx == 0 ? (dy < 0 ? height - 1 - y : y) : dx < 0 ? width - 1 - x : x;
  if (room == 0) return 0.5;
  const gray = <usize>page.gray + <usize>(y * width + x);
  const bitmap = <usize>page.bitmap + <usize>(y * width + x);
  const own = <i32>load<u8>(gray);
  let darkest = own;
  let second = 255;
  for (let k = 1; k <= min(4, depth); k++) {
    const g = <i32>load<u8>(gray - k * step);
    if (g > darkest + 6 && k > 2) break;
    second = min(second, max(g, darkest));
    darkest = min(darkest, g);
  }
  const inside = (<f64>darkest + Math.min(<f64>second, <f64>(darkest + own) / 2)) / 2;
  const tile = (y >> <i32>page.tileBits) * <i32>page.columns + (x >> <i32>page.tileBits);
  const plain = <f64>load<f32>(<usize>page.paper + (<usize>tile << 2));
  for (let k = 1; k <= min(3, room); k++) {
    if (load<u8>(bitmap + k * step) != ERASED) continue;
    const at = printAt(page, x, y, dx == 0);
    if (at == 0) break;
    const print = changetype<Print>(at);
    const outward = <f64>(dx + dy > 0 ? 1 : -1);
    const off = offBand;
    let before = 0.0;
    for (let out = 0; out <= min(2, room); out++) {
      const d = outward * <f64>out - off;
      const share = below(d + print.half, page.steepness) - below(d - print.half, page.steepness);
      const paper = Math.max(inside + 20, plain - (print.depth * share) / print.most);
      const beyond = <f64>load<u8>(gray + out * step) - (paper + inside) / 2;
      if (beyond > 0) return out == 0 ? 0 : <f64>(out - 1) + before / (before - beyond);
      before = beyond;
    }
    return 2;
  }
  let brightest = 0;
  for (let k = 1; k <= min(4, room); k++) brightest = max(brightest, <i32>load<u8>(gray + k * step));
  const print = load<u8>(bitmap + step) == ERASED ? <f64>printBeside(gray, bitmap, step, room) : plain;
  const depthOfPrint = dy == 0 ? page.printedDown : page.printedAcross;
  const bare = Math.min(plain, Math.max(print, plain - depthOfPrint));
  const paper = Math.min(bare, <f64>max(brightest, darkest + 20));
  const half = (paper + inside) / 2;
  for (let k = 0; k < min(2, room); k++) {
    const before = <f64>load<u8>(gray + k * step);
    const after = <f64>load<u8>(gray + (k + 1) * step);
    if (after > half) return <f64>k + (before >= half ? 0 : (half - before) / (after - before));
  }
  return 2;
}

// Edge at an end of a run, looked for once.
function edgeOf(page: Page, run: i32, side: i32): f64 {
  const at = <usize>page.edges + (<usize>(2 * run + (side < 0 ? 0 : 1)) << 3);
  const known = load<f64>(at);
  if (known != 0) return known;
  const end = <usize>run << 2;
  const x = side < 0 ? load<i32>(<usize>page.lefts + end) : load<i32>(<usize>page.rights + end) - 1;
  const edge = edgeBeyond(page, x, load<i32>(<usize>page.rows + end), side, 0);
  store<f64>(at, edge);
  return edge;
}

// Extent of a piece along the page, into two floats. `near` has room for two 32-bit numbers a run of it.
function extentAlong(page: Page, piece: Piece, near: usize, into: usize): void {
  const cos = page.cos;
  const sin = page.sin;
  const originX = page.originX;
  const originY = page.originY;
  const starts = <usize>page.lefts;
  const ends = <usize>page.rights;
  const rows = <usize>page.rows;
  const others = near + (<usize>piece.runCount << 2);
  let least = Infinity;
  let most = -Infinity;
  let lefts: usize = 0;
  let rights: usize = 0;
  for (let i = piece.firstRun, end = i + piece.runCount; i < end; i++) {
    const at = <usize>i << 2;
    const down = (<f64>load<i32>(rows + at) + 0.5 - originY) * sin;
    const a = (<f64>load<i32>(starts + at) - originX) * cos - down;
    const b = (<f64>load<i32>(ends + at) - originX) * cos - down;
    if (a < least + 0.6) {
      store<i32>(near + (lefts << 2), i);
      lefts++;
      if (a < least) least = a;
    }
    if (b > most - 0.6) {
      store<i32>(others + (rights << 2), i);
      rights++;
      if (b > most) most = b;
    }
  }
  let first = Infinity;
  let last = -Infinity;
  for (let k: usize = 0; k < lefts; k++) {
    const i = load<i32>(near + (k << 2));
    const left = <f64>load<i32>(starts + (<usize>i << 2));
    const down = (<f64>load<i32>(rows + (<usize>i << 2)) + 0.5 - originY) * sin;
    if ((left - originX) * cos - down < least + 0.6)
      first = Math.min(first, (left + 0.5 - edgeOf(page, i, -1) - originX) * cos - down);
  }
  for (let k: usize = 0; k < rights; k++) {
    const i = load<i32>(others + (k << 2));
    const right = <f64>load<i32>(ends + (<usize>i << 2));
    const down = (<f64>load<i32>(rows + (<usize>i << 2)) + 0.5 - originY) * sin;
    if ((right - originX) * cos - down > most - 0.6)
      last = Math.max(last, (right - 0.5 + edgeOf(page, i, 1) - originX) * cos - down);
  }
  store<f64>(into, first - page.drawnIn);
  store<f64>(into, last + page.drawnIn, 8);
}

/**
 * Draws pieces `first` to before `end`. `work` has room for two 32-bit numbers a column of the picture, and for as many
 * a run of the piece that has most.
 */
export function outlines(at: usize, first: i32, end: i32, work: usize): void {
  const page = changetype<Page>(at);
  const width = <usize>page.width;
  const tops = work;
  const bottoms = work + (width << 2);
  for (let p = first; p < end; p++) {
    const piece = changetype<Piece>(<usize>page.pieces + <usize>p * PIECE_BYTES);
    const left = piece.left;
    const span = piece.right - left;
    memory.fill(tops, 0xff, <usize>span << 2);
    for (let i = piece.firstRun, last = i + piece.runCount; i < last; i++) {
      const run = <usize>i << 2;
      const y = load<i32>(<usize>page.rows + run);
      for (let x = load<i32>(<usize>page.lefts + run) - left, stop = load<i32>(<usize>page.rights + run) - left; x < stop; x++) {
        if (load<i32>(tops + (<usize>x << 2)) < 0) store<i32>(tops + (<usize>x << 2), y);
        store<i32>(bottoms + (<usize>x << 2), y);
      }
    }
    const upper = <usize>page.outlines + (<usize>piece.at << 2);
    const lower = upper + (<usize>span << 2);
    let v0 = Infinity;
    let v1 = -Infinity;
    for (let k = 0; k < span; k++) {
      const x = left + k;
      const place = <usize>k << 2;
      const before = <usize>(k > 0 ? k - 1 : k) << 2;
      const after = <usize>(k + 1 < span ? k + 1 : k) << 2;
      const top = load<i32>(tops + place);
      const bottom = load<i32>(bottoms + place);
      const isTop = top <= load<i32>(tops + before) && top <= load<i32>(tops + after);
      const isBottom = bottom >= load<i32>(bottoms + before) && bottom >= load<i32>(bottoms + after);
      const above = isTop ? edgeBeyond(page, x, top, 0, -1) : 0.5;
      const under = isBottom ? edgeBeyond(page, x, bottom, 0, 1) : 0.5;
      const along = (<f64>x + 0.5 - page.originX) * page.sin;
      const high = along + (<f64>top + 0.5 - above - page.originY) * page.cos;
      const low = along + (<f64>bottom + 0.5 + under - page.originY) * page.cos;
      store<f32>(upper + place, <f32>high);
      store<f32>(lower + place, <f32>low);
      if (high < v0) v0 = high;
      if (low > v1) v1 = low;
    }
    const extent = <usize>page.extents + (<usize>p << 5);
    extentAlong(page, piece, bottoms + (width << 2), extent);
    store<f64>(extent, v0, 16);
    store<f64>(extent, v1, 24);
  }
}
