import { connectedComponents } from './image/components.ts';
import { halfContrast, localLevels } from './image/contrast.ts';
import { inkRuns } from './image/runs.ts';
import { eraseRulings, markRulings } from './image/ruling-erase.ts';
import { findRulings } from './image/rulings.ts';
import { sauvola } from './image/threshold.ts';
import { blobsOf, inkMap } from './layout/blobs.ts';
import { extremesOf } from './layout/extremes.ts';
import { boxMm, frameOf, pointMm } from './layout/frame.ts';
import { X_HEIGHT_BAND, sizeAt } from './layout/heights.ts';
import { headsOf, readLines } from './layout/line-work.ts';
import { lineTraces } from './layout/lines.ts';
import { wordsOf } from './layout/words.ts';
import { median } from './numbers.ts';
import type { GrayImage, LineResult, MeasureOptions, OnProgress, PageResult } from './types.ts';
import { METHOD_VERSION } from './version.ts';

export const TIMES: Record<string, number> = {};
let last = 0;
function lap(name: string): void {
  const now = performance.now();
  TIMES[name] = now - last;
  last = now;
}

/**
 * Measures one page of handwriting.
 * @param gray the page as gray bytes (`width * height` of them)
 * @param options scale, text, corrections, seed
 * @param onProgress told between stages; an exception from it stops the measurement
 * @throws RangeError when the buffer does not fit width and height
 */
export function measurePage(gray: GrayImage, options: MeasureOptions, onProgress?: OnProgress): PageResult {
  if (gray.data.length !== gray.width * gray.height) throw new RangeError('The picture does not fit its size.');
  onProgress?.('start', 0);
  const { width, height } = gray;
  const scale = options.scale?.pxPerMm ?? 300 / 25.4;
  last = performance.now();
  const ink = sauvola(gray);
  lap('sauvola');
  const rulings = findRulings(gray, scale);
  lap('rulings');
  const bands = markRulings(gray, ink, rulings, scale);
  const levels = localLevels(gray, ink);
  eraseRulings(gray, ink, bands, levels);
  lap('levels');
  halfContrast(gray, ink, levels);
  lap('half');
  const runs = inkRuns(ink, width, height);
  lap('runs');
  const components = connectedComponents(runs, 1);
  lap('components');
  const frame = frameOf(width, height, scale, rulings.angle ?? 0);
  const { map, starts } = inkMap(runs, components);
  const widths = runs.to.subarray(0, runs.count).map((to, i) => to - runs.from[i]!);
  const stroke = median(widths) ?? 1;
  const blobs = blobsOf(gray, levels, frame, components, map, starts, Math.max(4, 0.4 * stroke * stroke));
  lap('blobs');
  const extremes = extremesOf(blobs, frame, 0.8 * stroke);
  lap('extremes');
  const heights: number[] = [];
  for (let b = 0, i = 0; b < blobs.length; b += 1) {
    const own = [];
    for (; i < extremes.length && extremes[i]!.blob === b; i += 1) own.push(extremes[i]!);
    own.sort((p, q) => p.u - q.u);
    for (let k = 0; k + 1 < own.length; k += 1)
      if (own[k]!.kind !== own[k + 1]!.kind) heights.push(Math.abs(own[k]!.v - own[k + 1]!.v));
  }
  const tall = heights.filter((h) => h > 2 * stroke);
  const rough = median(tall) ?? 10;
  lap('rough');
  const traces = lineTraces(blobs, map, frame, rough);
  lap('traces');
  const lines = readLines(traces, blobs, extremes, map, frame, rough);
  lap('lines');
  const { words, cut } = wordsOf(lines);
  lap('words');
  const results: LineResult[] = lines.map((line, i) => {
    const angle = -Math.atan(line.baseline.straight.slope);
    const heads = headsOf(line.blobs, line.baseline, extremes, rough);
    const inWord = words[i]!.map((word) => {
      const inside = line.blobs.filter((b) => b.from >= word.from && b.to <= word.to);
      const u0 = Math.min(...inside.map((b) => b.blob.u0));
      const u1 = Math.max(...inside.map((b) => b.blob.u1));
      const v0 = Math.min(...inside.map((b) => b.blob.v0));
      const v1 = Math.max(...inside.map((b) => b.blob.v1));
      const own = heads.filter(
        (h) => h.u >= u0 - 1 && h.u <= u1 + 1 && Math.abs(Math.log(h.height / sizeAt(line.trend, h.u))) < X_HEIGHT_BAND,
      );
      const x = median(own.map((h) => h.height));
      return {
        box: boxMm(frame, u0, v0, u1, v1),
        xHeightMm: x === null ? null : x / scale,
        gapBeforeMm: word.gapBefore === null ? null : word.gapBefore / scale,
        text: null,
        letterGapsMm: [],
        slantDeg: null,
        strokeWidthMm: null,
        letters: [],
        excluded: false,
        heads: own.map((h) => h.height / scale),
      };
    });
    const u0 = Math.min(...line.blobs.map((b) => b.blob.u0));
    const u1 = Math.max(...line.blobs.map((b) => b.blob.u1));
    const v0 = Math.min(...line.blobs.map((b) => b.blob.v0));
    const v1 = Math.max(...line.blobs.map((b) => b.blob.v1));
    const curve = line.baseline.curve;
    return {
      box: boxMm(frame, u0, v0, u1, v1),
      xHeightMm: median(inWord.map((w) => w.xHeightMm).filter((x) => x !== null)),
      baselineAngleDeg: (angle * 180) / Math.PI,
      baselineRmsMm: line.baseline.rms / scale,
      words: inWord,
      baseline: [...curve.v].map((v, k) => pointMm(frame, curve.u0 + k * curve.step, v)),
      rulingOffsetMm: null,
    };
  });
  return {
    version: METHOD_VERSION,
    page: {
      widthMm: options.scale ? width / options.scale.pxPerMm : null,
      heightMm: options.scale ? height / options.scale.pxPerMm : null,
      dpi: options.scale ? options.scale.pxPerMm * 25.4 : null,
      rotationDeg: ((rulings.angle ?? 0) * 180) / Math.PI,
      scaleSource: options.scale?.source ?? null,
      rulingMm: null,
      toPicture: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    },
    lines: results,
    measures: [{ code: 'cut', value: cut, unit: 'xh', n: 0, low: null, high: null, spread: null, method: '' }],
    warnings: [],
    rulings: [],
    loops: [],
  };
}
