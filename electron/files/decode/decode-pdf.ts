import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { lumaOf } from '../../../renderer/measure/index.ts';
import { DecodeError } from './decode-error.ts';

/** Drawing resolution where the page holds no scan of its own. */
const DEFAULT_DPI = 300;
const LOWEST_DPI = 100;
const HIGHEST_DPI = 600;

interface CanvasAndContext {
  canvas: object;
  context: { getImageData(x: number, y: number, w: number, h: number): { data: Uint8ClampedArray } } & object;
}
interface CanvasFactory {
  create(width: number, height: number): CanvasAndContext;
  destroy(made: CanvasAndContext): void;
}

/** Saved drawing states inside each other: 28 are promised (ISO 32000-1, annex C); thousands take minutes to draw. */
const DEEPEST_STATE = 500;
/** Drawing steps of one page: a scan has some ten, a dense map some hundred thousand. */
const MOST_OPERATORS = 400_000;

/**
 * Width in pixels of the widest picture on the page, to draw a scanned page at the resolution it was scanned with.
 * @throws DecodeError unreadable-file, too-large for a page that would take too long to draw
 */
async function widestPicture(page: PDFPageProxy): Promise<number | null> {
  const { fnArray, argsArray } = await page.getOperatorList();
  if (fnArray.length > MOST_OPERATORS) throw new DecodeError('too-large');
  let widest = 0;
  let depth = 0;
  for (const [index, operator] of fnArray.entries()) {
    if (operator === OPS.save || operator === OPS.paintFormXObjectBegin || operator === OPS.beginGroup) depth += 1;
    if (operator === OPS.restore || operator === OPS.paintFormXObjectEnd || operator === OPS.endGroup) depth -= 1;
    if (depth > DEEPEST_STATE) throw new DecodeError('unreadable-file');
    if (operator !== OPS.paintImageXObject) continue;
    const [, width] = argsArray[index] as [string, number, number];
    if (width > widest) widest = width;
  }
  return widest > 0 ? widest : null;
}

/**
 * Draws one page of a PDF as gray bytes.
 * @param number page, from 1
 * @throws DecodeError page-not-found, too-large, unreadable-file
 */
export async function drawPdfPage(
  bytes: Uint8Array,
  number: number,
  maxPixels: number,
): Promise<{ gray: { width: number; height: number; data: Uint8Array }; fileDpi: number }> {
  const root = path.dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json'));
  // A copy: the library takes the buffer away from its caller.
  const task = getDocument({
    data: Uint8Array.from(bytes),
    standardFontDataUrl: `${root}/standard_fonts/`,
    cMapUrl: `${root}/cmaps/`,
    wasmUrl: `${root}/wasm/`,
    isEvalSupported: false,
    // Larger pictures inside the page are left out before they are decoded.
    maxImageSize: maxPixels,
    verbosity: 0,
  });
  try {
    const document = await task.promise.catch(() => {
      throw new DecodeError('unreadable-file');
    });
    if (!Number.isInteger(number) || number < 1 || number > document.numPages) throw new DecodeError('page-not-found');
    const page = await document.getPage(number);
    const points = page.getViewport({ scale: 1 });
    const inches = { width: points.width / 72, height: points.height / 72 };
    const pictureWidth = await widestPicture(page);
    const own = pictureWidth === null ? DEFAULT_DPI : pictureWidth / inches.width;
    // A picture much smaller than the page is a logo, not the scan.
    const dpi = own < LOWEST_DPI ? DEFAULT_DPI : Math.min(Math.round(own * 1000) / 1000, HIGHEST_DPI);
    const viewport = page.getViewport({ scale: dpi / 72 });
    const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
    if (width < 1 || height < 1) throw new DecodeError('unreadable-file');
    if (width * height > maxPixels) throw new DecodeError('too-large');
    const factory = document.canvasFactory as CanvasFactory;
    const made = factory.create(width, height);
    await page.render({
      canvas: null,
      canvasContext: made.context as never,
      viewport,
      background: '#ffffff',
    }).promise;
    const rgba = made.context.getImageData(0, 0, width, height).data;
    const data = lumaOf(new Uint8Array(rgba.buffer, rgba.byteOffset, rgba.length), 4);
    factory.destroy(made);
    return { gray: { width, height, data }, fileDpi: dpi };
  } finally {
    await task.destroy();
  }
}
