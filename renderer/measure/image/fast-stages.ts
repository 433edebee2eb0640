import type { GrayImage } from '../types.ts';
import { STEP, STEP_ALONG, TILE_BITS, tilesOf } from './contrast.ts';
import type { Levels, TileSums } from './contrast.ts';
import { CROSS_ROWS, CROSS_SAMPLES, crossStep } from '../sheet/corner-mark-search.ts';
import { PRINTED } from './ruling-erase.ts';
import { bandOffset, bandSpan, PALE } from './ruling-bands.ts';
import type { Band } from './ruling-bands.ts';
import { besidePx, STRIP, VOTE_DIP } from './ruling-votes.ts';
import type { Votes } from './ruling-votes.ts';
import { joinedRuns } from './runs.ts';
import { SAUVOLA_FACTOR, SAUVOLA_SHARE } from './ink-threshold.ts';
import { outlinerIn } from './wasm/fast-outlines.ts';
import { fitsKept, lend } from './wasm/instance.ts';
import type { StageName } from './wasm/instance.ts';
import type { SecondThread } from './wasm/thread-port.ts';
import { parts } from './picture-parts.ts';
import type { Part } from './picture-parts.ts';
import { plainStages } from './pixel-stages.ts';
import type { PixelStages } from './pixel-stages.ts';

/** Share of the first threshold that is left to the thread that looks for printed lines meanwhile. */
const SHARE_BESIDE = 0.36;
/** Numbers that describe a printed line to page.as. */
const BAND_NUMBERS = 10;

/**
 * The same stages in WebAssembly with SIMD, bit for bit; the plain ones where that is not to be had.
 * @param second a second thread that does the lower (or right) half; pictures too large for it are done by one
 */
export function fastStages(image: GrayImage, second: SecondThread | null = null): PixelStages {
  const { width, height, data } = image;
  const { columns, rows: tileRows } = tilesOf(image);
  const tiles = columns * tileRows;
  const strips = { across: Math.floor(width / STRIP), down: Math.floor(height / STRIP) };
  // A row has at most half as many runs as pixels, rounded up.
  const rowRuns = 4 * Math.ceil(width / 2);
  const runRoom = rowRuns * height;
  const votes = strips.across * height + strips.down * width;
  const workRoom = 16 * (width + 80);
  const fixed = [data.length, data.length, 2 * workRoom, votes, 9 * tiles, 16 * tiles, 4 * (height + 2)];
  // By turns: pixels that wait, runs, and the table of printed lines, of which a row or column has at most one.
  const large = Math.max(4 * data.length, 2 * runRoom, 8 * BAND_NUMBERS * (width + height));
  const sizes = [...fixed, large];
  const mate = second?.isReady && fitsKept(sizes) ? second : null;
  const lent = lend(sizes, mate?.own);
  if (!lent) return plainStages(image);
  const { exports: wasm, buffer, at } = lent;
  const [gray, ink, work, across, levelsAt, sums, rows, room] = at as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const down = across + strips.across * height;
  const counts = sums + 8 * tiles;
  new Uint8Array(buffer, gray, data.length).set(data);
  const upDown = mate ? parts(height) : [{ first: 0, end: height }];
  const leftRight = mate ? parts(width) : [{ first: 0, end: width }];
  /** Runs a stage on all parts at once, the second one over there. Answers what each answered. @param beside done first */
  const onAll = (
    stage: StageName,
    [here, there]: readonly Part[],
    args: (part: Part, index: number) => number[],
    beside?: () => void,
  ): number[] => {
    const run = wasm[stage] as (...args: number[]) => number;
    if (mate && there) mate.begin(stage, args(there, 1));
    beside?.();
    if (!mate || !there) return [run(...args(here!, 0))];
    const answer = run(...args(here!, 0));
    return [answer, mate.end()];
  };
  const [paperAt, inkAt, halfAt] = [levelsAt, levelsAt + 4 * tiles, levelsAt + 8 * tiles];
  /** Copies levels to where the stages read them. */
  const putLevels = (levels: Levels): void => {
    new Float32Array(buffer, paperAt, tiles).set(levels.paper);
    new Float32Array(buffer, inkAt, tiles).set(levels.ink);
    new Uint8Array(buffer, halfAt, tiles).set(levels.half);
  };
  /** Copies the printed lines to where the stages read them. */
  const putBands = (bands: readonly Band[]): [number, number] => {
    const table = new Float64Array(buffer, room, BAND_NUMBERS * bands.length);
    bands.forEach((band, i) => {
      const { line, along, across, breadth, reach, depth } = band;
      const place = [...bandSpan(band), line.intercept, line.slope, bandOffset(band), reach];
      table.set([...place, along, across, breadth, depth], BAND_NUMBERS * i);
    });
    return [room, bands.length];
  };
  /** Lines across the page by columns, then lines down the page by rows: nobody reads what the other changes. */
  const bothWays = (
    stage: 'markBands' | 'eraseBands',
    bands: readonly Band[],
    args: (along: number, part: Part) => number[],
  ): void => {
    for (const [along, parts] of [[1, leftRight] as const, [width, upDown] as const])
      if (bands.some((band) => band.along === along)) onAll(stage, parts, (part) => args(along, part));
  };
  const tileOf = (row: number): number => (row >> TILE_BITS) * columns;
  return {
    threshold(beside) {
      const args = ({ first, end }: Part, i: number): number[] => [
        ...[gray, ink, width, height, first, end],
        ...[work + i * workRoom, SAUVOLA_SHARE, SAUVOLA_FACTOR],
      ];
      onAll('threshold', beside && mate ? parts(height, SHARE_BESIDE) : upDown, args, beside);
      return new Uint8Array(buffer, ink, data.length);
    },
    rims() {
      const step = crossStep(width, height);
      const counted = onAll('rims', upDown, ({ first, end }, i) => [
        ...[ink, width, height, first, end, step, CROSS_ROWS * step, CROSS_SAMPLES],
        room + 16 * i,
      ]).map((_, i) => new Int32Array(buffer, room + 16 * i, 4));
      return [0, 1, 2, 3].map((quarter) => counted.reduce((sum, part) => sum + part[quarter]!, 0));
    },
    votes(pxPerMm) {
      const beside = besidePx(pxPerMm);
      const read = (from: number, count: number, length: number): Votes => ({
        strips: count,
        length,
        values: new Uint8Array(buffer, from, count * length),
      });
      new Uint8Array(buffer, across, votes).fill(0);
      onAll('votes', upDown, ({ first, end }) => [gray, across, down, width, height, first, end, beside, VOTE_DIP]);
      return { across: read(across, strips.across, height), down: read(down, strips.down, width) };
    },
    gather() {
      const summed = (
        stage: 'gatherPaper' | 'gatherInk',
        given: readonly number[],
        more: readonly number[],
      ): TileSums => {
        new Uint8Array(buffer, sums, 16 * tiles).fill(0);
        onAll(stage, upDown, ({ first, end }) => {
          const [pixels, tile] = [width * first, tileOf(first)];
          return [
            ...[gray + pixels, ink + pixels, width, end - first, ...given.map((levels) => levels + 4 * tile)],
            ...[sums + 8 * tile, counts + 8 * tile, columns, TILE_BITS, ...more],
          ];
        });
        const part = (from: number): Float64Array => new Float64Array(buffer, from, tiles).slice();
        return { sum: part(sums), count: part(counts) };
      };
      return {
        paper: () => summed('gatherPaper', [], [STEP, STEP_ALONG]),
        ink(ceiling) {
          new Float32Array(buffer, levelsAt, tiles).set(ceiling);
          return summed('gatherInk', [levelsAt], []);
        },
      };
    },
    markBands(bands) {
      const table = putBands(bands);
      bothWays('markBands', bands, (along, { first, end }) => [ink, ...table, along, first, end, PRINTED]);
    },
    eraseBands(bands, levels) {
      putLevels(levels);
      const table = putBands(bands);
      bothWays('eraseBands', bands, (along, { first, end }) => [
        ...[gray, ink, ...table, along, first, end, PALE],
        ...[paperAt, inkAt, columns, TILE_BITS],
      ]);
    },
    halfContrast(levels) {
      putLevels(levels);
      // Each part as if it were a page of its own, then across the seam.
      onAll('halfContrast', upDown, ({ first, end }) => {
        const pixels = width * first;
        return [
          ...[gray + pixels, ink + pixels, width, end - first, halfAt + tileOf(first), columns, TILE_BITS],
          room + 4 * pixels,
        ];
      });
      if (upDown[1]) wasm.seam(gray, ink, width, height, upDown[1].first, halfAt, columns, TILE_BITS, room);
    },
    bitmap: () => new Uint8Array(buffer, ink, data.length),
    runs() {
      const found = onAll('runs', upDown, ({ first, end }, i) => [
        ...[ink + width * first, width, end - first, rows + 4 * (first + i)],
        ...[room + rowRuns * first, room + runRoom + rowRuns * first],
      ]);
      return joinedRuns(
        found.map((count, i) => {
          const { first, end } = upDown[i]!;
          const view = (from: number, length: number): Int32Array => new Int32Array(buffer, from, length);
          return {
            width,
            height: end - first,
            count,
            rows: view(rows + 4 * (first + i), end - first + 1),
            from: view(room + rowRuns * first, count),
            to: view(room + runRoom + rowRuns * first, count),
          };
        }),
      );
    },
    outliner: (prints, printed) =>
      outlinerIn(
        buffer,
        { at: room, bytes: large },
        { gray, bitmap: ink, width, height, paper: paperAt, columns, tileBits: TILE_BITS, printed, prints },
        (pieces, args) => onAll('outlines', pieces, args),
        mate ? 2 : 1,
      ),
  };
}
