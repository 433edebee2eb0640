import type { Ink } from './ink.ts';
import { boxMm, pointMm } from './layout/frame.ts';
import { sizeAt, X_HEIGHT_BAND } from './layout/heights.ts';
import { headsOf } from './layout/line-work.ts';
import type { Layout } from './layout.ts';
import { median } from './numbers.ts';
import type { LineResult, MeasureOptions, PageInfo, PageResult, PageWarning } from './types.ts';
import { METHOD_VERSION } from './version.ts';

/** The result as it is stored and shown. */
export function resultOf(
  page: PageInfo,
  ink: Ink,
  layout: Layout,
  options: MeasureOptions,
  warnings: PageWarning[],
): PageResult {
  const { frame, extremes } = layout;
  const scale = frame.pxPerMm;
  const results: LineResult[] = layout.lines.map((line, i) => {
    const angle = -Math.atan(line.baseline.straight.slope);
    const rough = sizeAt(line.trend, line.trend.u0);
    const heads = headsOf(line.blobs, line.baseline, extremes, rough);
    const inWord = layout.words[i]!.map((word) => {
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
  return { version: METHOD_VERSION, page, lines: results, measures: [], warnings, rulings: [], loops: [] };
}
