import type { GrayImage, MeasureOptions, OnProgress, PageResult } from './types.ts';
import { METHOD_VERSION } from './version.ts';

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
  return {
    version: METHOD_VERSION,
    page: {
      widthMm: options.scale ? gray.width / options.scale.pxPerMm : null,
      heightMm: options.scale ? gray.height / options.scale.pxPerMm : null,
      dpi: options.scale ? options.scale.pxPerMm * 25.4 : null,
      rotationDeg: 0,
      scaleSource: options.scale?.source ?? null,
      rulingMm: null,
      toPicture: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    },
    lines: [],
    measures: [],
    warnings: [],
    rulings: [],
    loops: [],
  };
}
