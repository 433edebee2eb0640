import type { Frame } from '../../lines/frame.ts';
import type { Part } from '../picture-parts.ts';
import { bandOffset } from '../ruling-bands.ts';
import type { SolidPrint, SolidPrints } from '../ruling-erase.ts';

/** The runs of each component side by side, rows ascending. */
export interface RunLists {
  /** First column of each run, the column after its last, and its row. */
  from: Int32Array;
  to: Int32Array;
  row: Int32Array;
  /** Edges of the ink beyond the two ends of each run, pixels; 0 where not looked for yet: page, lines and strokes ask. */
  edges: Float64Array;
}

/** A connected piece of ink: its columns, its runs in `RunLists`, and where its outline lies among all outlines. */
export interface Piece {
  left: number;
  /** Column after the last. */
  right: number;
  firstRun: number;
  runCount: number;
  at: number;
}

export interface Outlines {
  /** Of each piece its highest edge by column, then its lowest, as `v` of the page, pixels. */
  outlines: Float32Array;
  /** Of each piece `u0`, `u1`, `v0` and `v1` of the page, pixels. */
  extents: Float64Array;
}

/** Draws outlines by outlines.as, over the pixels of the page at hand: the lists and outlines are lent like those. */
export interface Outliner {
  /** Room for the runs of the page; null where there is too little. */
  lists(runs: number): RunLists | null;
  /** After `lists`. @param columns of all pieces together @param drawnIn as in `InkMap` */
  draw(pieces: readonly Piece[], columns: number, frame: Frame, drawnIn: number): Outlines | null;
}

/** What outlines.as is told of the pixels: addresses, sizes, and how much darker than paper printed lines are. */
export interface PixelPlaces {
  gray: number;
  bitmap: number;
  width: number;
  height: number;
  paper: number;
  columns: number;
  tileBits: number;
  printed: { across: number; down: number };
  prints: SolidPrints;
}

const VECTOR = 16;
const PIECE_NUMBERS = 5;
const EXTENT_NUMBERS = 4;
const PRINT_NUMBERS = 9;
const PAGE_NUMBERS = 26;

/**
 * @param room address of memory that is free, and how many bytes of it
 * @param run does pieces on all threads: asks for the arguments of each part
 */
export function outlinerIn(
  buffer: ArrayBufferLike,
  room: { at: number; bytes: number },
  pixels: PixelPlaces,
  run: (parts: readonly Part[], args: (part: Part, i: number) => number[]) => void,
  threads: number,
): Outliner {
  let next = room.at;
  let lists: RunLists | null = null;
  /** The next bytes that are free; null at the end of the room. */
  const take = (bytes: number): number | null => {
    const at = next;
    next = Math.ceil((next + bytes) / VECTOR) * VECTOR;
    return next > room.at + room.bytes ? null : at;
  };
  const ints = (count: number): Int32Array | null => {
    const at = take(4 * count);
    return at === null ? null : new Int32Array(buffer, at, count);
  };
  const floats = (count: number): Float64Array | null => {
    const at = take(8 * count);
    return at === null ? null : new Float64Array(buffer, at, count);
  };
  return {
    lists(runs) {
      next = room.at;
      const [from, to, row, edges] = [ints(runs), ints(runs), ints(runs), floats(2 * runs)];
      return (lists = from && to && row && edges ? { from, to, row, edges: edges.fill(0) } : null);
    },
    draw(pieces, columns, frame, drawnIn) {
      if (!lists) return null;
      const { from, to, row, edges } = lists;
      const most = pieces.reduce((longest, { runCount }) => Math.max(longest, runCount), 0);
      const workBytes = 8 * (pixels.width + most);
      const [table, drawn] = [ints(PIECE_NUMBERS * pieces.length), ints(2 * columns)];
      const extents = floats(EXTENT_NUMBERS * pieces.length);
      const { across, down, steepness } = pixels.prints;
      const prints = floats(PRINT_NUMBERS * (across.length + down.length));
      const page = floats(PAGE_NUMBERS);
      const work = take(threads * workBytes);
      if (!table || !drawn || !extents || !prints || !page || work === null) return null;
      pieces.forEach(({ left, right, firstRun, runCount, at }, i) =>
        table.set([left, right, firstRun, runCount, at], PIECE_NUMBERS * i),
      );
      [...across, ...down].forEach((print, i) => prints.set(numbersOf(print), PRINT_NUMBERS * i));
      page.set([
        ...[pixels.gray, pixels.bitmap, pixels.width, pixels.height, pixels.paper, pixels.columns, pixels.tileBits],
        ...[pixels.printed.across, pixels.printed.down],
        ...[prints.byteOffset, across.length, prints.byteOffset + 8 * PRINT_NUMBERS * across.length, down.length],
        ...[steepness, from.byteOffset, to.byteOffset, row.byteOffset, edges.byteOffset],
        ...[frame.cos, frame.sin, frame.originX, frame.originY, drawnIn],
        ...[table.byteOffset, drawn.byteOffset, extents.byteOffset],
      ]);
      run(shared(pieces, threads), ({ first, end }, i) => [page.byteOffset, first, end, work + i * workBytes]);
      return { outlines: new Float32Array(buffer, drawn.byteOffset, 2 * columns), extents };
    },
  };
}

function numbersOf({ band, half, most }: SolidPrint): number[] {
  const { from, to, intercept, slope } = band.line;
  return [from, to, intercept, slope, bandOffset(band), band.reach, band.depth, half, most];
}

/** The pieces in one or two parts with about as many runs. */
function shared(pieces: readonly Piece[], threads: number): Part[] {
  if (threads === 1) return [{ first: 0, end: pieces.length }];
  const half = pieces.reduce((sum, { runCount }) => sum + runCount, 0) / 2;
  let sum = 0;
  const middle = pieces.findIndex(({ runCount }) => (sum += runCount) > half);
  return [
    { first: 0, end: Math.max(0, middle) },
    { first: Math.max(0, middle), end: pieces.length },
  ];
}
