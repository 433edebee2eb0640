/**
 * The door of the measuring engine: a page in gray becomes lines, words, letters and measures. Nothing outside
 * renderer/measure imports past this file; results carry METHOD_VERSION.
 */
export { lumaOf } from './image/luma.ts';
export { SecondThread } from './image/wasm/thread-port.ts';
export { measurePage } from './measure-page.ts';
export { MEASURES } from './measures/measure-table.ts';
export { CORNER_MARK, PRINTED_BANDS } from './sheet/corner-marks.ts';
export { measureSpiral } from './spiral/spiral-measure.ts';
export { METHOD_VERSION } from './version.ts';
export type { SpiralResult } from './spiral/spiral-measure.ts';
export type { BoxMm, Correction, LineResult, MeasureOptions, PageResult, PointMm } from './types.ts';
