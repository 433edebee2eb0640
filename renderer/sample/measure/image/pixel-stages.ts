import type { GrayImage } from '../types.ts';
import { gatherInk, gatherPaper, halfContrast, STEP, STEP_ALONG, TILE_BITS, tilesOf } from './contrast.ts';
import type { Gather, Levels, TileSums } from './contrast.ts';
import { bandOffset, bandSpan, eraseBand, markBand, PALE, PRINTED } from './ruling-erase.ts';
import type { Band } from './ruling-erase.ts';
import { besidePx, rulingVotes, STRIP, VOTE_DIP } from './ruling-votes.ts';
import type { Votes } from './ruling-votes.ts';
import { inkRuns } from './runs.ts';
import type { Runs } from './runs.ts';
import { SAUVOLA_FACTOR, SAUVOLA_SHARE, sauvola } from './threshold.ts';
import { instanceFor } from './wasm/instance.ts';

/**
 * The stages that touch every pixel of one picture. They work on one bitmap of ink, in this order; what they answer is
 * lent until the stages of the next picture are made.
 */
export interface PixelStages {
  /** First-pass ink: 1 or 0 for each pixel. */
  threshold(): Uint8Array;
  /** Votes for printed lines. */
  votes(pxPerMm: number): { across: Votes; down: Votes };
  /** Sums of the bitmap as it is now, for the levels of paper and ink. */
  gather(): Gather;
  /** Marks a printed line in the bitmap, and later decides what of it is ink. */
  markBand(band: Band): void;
  eraseBand(band: Band, levels: Levels): void;
  /** Second threshold, in place. */
  halfContrast(levels: Levels): void;
  /** The bitmap as it is now, and its runs of ink. */
  bitmap(): Uint8Array;
  runs(): Runs;
}

/** The reference: plain TypeScript. */
export function plainStages(image: GrayImage): PixelStages {
  let ink: Uint8Array = new Uint8Array(0);
  return {
    threshold: () => (ink = sauvola(image)),
    votes: (pxPerMm) => rulingVotes(image, pxPerMm),
    gather() {
      return { paper: () => gatherPaper(image, ink), ink: (ceiling) => gatherInk(image, ink, ceiling) };
    },
    markBand: (band) => markBand(ink, band),
    eraseBand: (band, levels) => eraseBand(image, ink, band, levels),
    halfContrast: (levels) => halfContrast(image, ink, levels),
    bitmap: () => ink,
    runs: () => inkRuns(ink, image.width, image.height),
  };
}

/** The same stages in WebAssembly with SIMD, bit for bit; the plain ones where that is not to be had. */
export function fastStages(image: GrayImage): PixelStages {
  const { width, height, data } = image;
  const { columns, rows: tileRows } = tilesOf(image);
  const tiles = columns * tileRows;
  const strips = { across: Math.floor(width / STRIP), down: Math.floor(height / STRIP) };
  // A row has at most half as many runs as pixels, rounded up.
  const runRoom = 4 * Math.ceil(width / 2) * height;
  const votes = strips.across * height + strips.down * width;
  const lent = instanceFor([
    data.length,
    data.length,
    16 * (width + 80),
    votes,
    25 * tiles,
    4 * (height + 1),
    Math.max(4 * data.length, 2 * runRoom),
  ]);
  if (!lent) return plainStages(image);
  const { exports: wasm, buffer, at } = lent;
  const [gray, ink, work, across, levelsAt, rows, large] = at as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const down = across + strips.across * height;
  new Uint8Array(buffer, gray, data.length).set(data);
  /** Copies levels to where the stages read them: paper, ink, half. */
  const lend = (levels: Levels): void => {
    new Float32Array(buffer, levelsAt, tiles).set(levels.paper);
    new Float32Array(buffer, levelsAt + 4 * tiles, tiles).set(levels.ink);
    new Uint8Array(buffer, levelsAt + 8 * tiles, tiles).set(levels.half);
  };
  const placeOf = (band: Band): [number, number, number, number, number, number, number, number, number] => {
    const { line, along, breadth } = band;
    return [...bandSpan(band), line.intercept, line.slope, bandOffset(band), band.reach, along, band.across, breadth];
  };
  return {
    threshold() {
      wasm.threshold(gray, ink, width, height, work, SAUVOLA_SHARE, SAUVOLA_FACTOR);
      return new Uint8Array(buffer, ink, data.length);
    },
    votes(pxPerMm) {
      const beside = besidePx(pxPerMm);
      const read = (from: number, count: number, length: number): Votes => ({
        strips: count,
        length,
        values: new Uint8Array(buffer, from, count * length),
      });
      new Uint8Array(buffer, across, votes).fill(0);
      wasm.votesAcross(gray, across, width, height, beside, VOTE_DIP);
      wasm.votesDown(gray, down, width, height, beside, VOTE_DIP);
      return { across: read(across, strips.across, height), down: read(down, strips.down, width) };
    },
    gather() {
      // Sums lie behind the levels; the first of those is the ceiling here.
      const sums = Math.ceil((levelsAt + 9 * tiles) / 8) * 8;
      const summed = (run: () => void): TileSums => {
        new Uint8Array(buffer, sums, 16 * tiles).fill(0);
        run();
        const part = (from: number): Float64Array => new Float64Array(buffer, from, tiles).slice();
        return { sum: part(sums), count: part(sums + 8 * tiles) };
      };
      const counts = sums + 8 * tiles;
      return {
        paper: () =>
          summed(() => wasm.gatherPaper(gray, ink, width, height, sums, counts, columns, TILE_BITS, STEP, STEP_ALONG)),
        ink: (ceiling) =>
          summed(() => {
            new Float32Array(buffer, levelsAt, tiles).set(ceiling);
            wasm.gatherInk(gray, ink, width, height, levelsAt, sums, counts, columns, TILE_BITS);
          }),
      };
    },
    markBand: (band) => wasm.markBand(ink, ...placeOf(band), PRINTED),
    eraseBand(band, levels) {
      lend(levels);
      const [paper, dark] = [levelsAt, levelsAt + 4 * tiles];
      wasm.eraseBand(gray, ink, width, ...placeOf(band), band.depth, PALE, paper, dark, columns, TILE_BITS);
    },
    halfContrast(levels) {
      lend(levels);
      wasm.halfContrast(gray, ink, width, height, levelsAt + 8 * tiles, columns, TILE_BITS, large);
    },
    bitmap: () => new Uint8Array(buffer, ink, data.length),
    runs() {
      const count = wasm.runs(ink, width, height, rows, large, large + runRoom);
      const view = (from: number, length: number): Int32Array => new Int32Array(buffer, from, length);
      return {
        width,
        height,
        count,
        rows: view(rows, height + 1),
        from: view(large, count),
        to: view(large + runRoom, count),
      };
    },
  };
}
