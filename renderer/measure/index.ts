/**
 * The door of the measuring engine: a page in gray becomes lines, words, letters and measures. Nothing outside
 * renderer/measure imports past this file; results carry METHOD_VERSION.
 */
export { lumaOf } from './image/luma.ts';
export { SecondThread } from './image/wasm/thread-port.ts';
export { measurePage, measureRead, readPage } from './measure-page.ts';
export type { ReadPage } from './measure-page.ts';
export { MEASURES } from './measures/measure-table.ts';
export { CORNER_MARK, PRINTED_BANDS } from './sheet/corner-marks.ts';
export { LOG_DRAWING, LOG_LAYOUT, logLayout, logValues } from './printed/log-layout.ts';
export type { LogCircle, LogField } from './printed/log-layout.ts';
export { CODE_GRID, codeOfText, codePlace, codeSquares, codeText } from './printed/page-code.ts';
export type { PageCode } from './printed/page-code.ts';
export type { Area as PrintedArea } from './sheet/sheet-part.ts';
export type { PrintedOn } from './printed/painted.ts';
export { readPrintedPage } from './printed/read-printed-page.ts';
export type { NotRead, PrintedPage, SeenField } from './printed/read-printed-page.ts';
export { measureSpiralSheet } from './spiral/measure-spiral-sheet.ts';
export { SPIRAL_STEP_MM } from './spiral/spiral-line.ts';
export { measureSpiral, SPIRAL_VERSION, timedSpiral } from './spiral/spiral-measure.ts';
export { SPIRAL_SHEET, spiralPlaces } from './spiral/spiral-sheet-layout.ts';
export { METHOD_VERSION } from './version.ts';
export type { SpiralSeconds } from './spiral/measure-spiral-sheet.ts';
export type { SheetSpiral, SpiralResult, SpiralSheetResult } from './spiral/spiral-types.ts';
export type { BoxMm, LineResult, PageResult, PointMm } from './types.ts';
export type { Correction, MeasureOptions } from './measure-options.ts';
