/**
 * Door of the ink engine: pen motion in, what it tells out. Pure: no clock, no window, no chance. Code outside this
 * folder imports nothing else of it.
 */
export { drawInk, MARGIN_MM, PAGE_DPI, PEN_MM } from './draw-page.ts';
export type { InkPage } from './draw-page.ts';
export { INK_TASKS } from './ink-types.ts';
export type {
  InkBox,
  InkDocument,
  InkMeasure,
  InkQuality,
  InkReason,
  InkResult,
  InkSpan,
  InkTask,
  InkTrace,
  InkTremor,
  InkVerdict,
  InkWarning,
  InkWord,
  TremorReason,
} from './ink-types.ts';
export { INK_LIMITS, INK_REFUSALS, InkRefusal } from './inkml/ink-refusal.ts';
export type { InkRefusalCode } from './inkml/ink-refusal.ts';
export { readInkml } from './inkml/inkml-reader.ts';
export { writeInkml } from './inkml/inkml-writer.ts';
export { lettersIn, measureInk } from './measure-ink.ts';
export type { InkOptions } from './measure-ink.ts';
export { INK_CODES, INK_UNITS } from './measures/measure-rows.ts';
export type { InkCode } from './measures/measure-rows.ts';
export { documentOfRaw, packSamples, RAW_BYTES, unpackSamples } from './raw-ink.ts';
export type { RawAbout, RawPhase, RawPointer, RawSample, RawScale } from './raw-ink.ts';
export { inkStrokes } from './stroke-list.ts';
export type { InkStroke } from './stroke-list.ts';
export { INK_METHOD } from './version.ts';
