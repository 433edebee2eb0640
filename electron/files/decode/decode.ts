import sharp from 'sharp';
import type { Sharp } from 'sharp';
import { lumaOf } from '../../../renderer/measure/index.ts';
import { DecodeError } from './decode-error.ts';
import { drawPdfPage } from './decode-pdf.ts';
import { formatOf, type PictureFormat, resolutionOf } from './picture-header.ts';

/** What a file may be at most before it is decoded. */
export interface DecodeLimits {
  maxBytes: number;
  maxPixels: number;
}

/** 200 MB on disk; 100 million pixels: an A3 sheet at 600 dpi has 70 million. */
export const DECODE_LIMITS: DecodeLimits = { maxBytes: 200_000_000, maxPixels: 100_000_000 };

export interface DecodeOptions extends DecodeLimits {
  /** Page of a PDF, from 1. */
  page: number;
}

/** A page as gray bytes, upright by its EXIF turn. */
export interface DecodedPage {
  gray: { width: number; height: number; data: Uint8Array };
  format: PictureFormat;
  /** Resolution of the file, when it states a believable one (100 to 2400). */
  fileDpi: number | null;
  width: number;
  height: number;
}

/** The decoder works beside the worker's own thread: its limit is its own. 100 million pixels take two to four. */
const DECODE_SECONDS = 15;

/** libvips' words for a file that ends too early, as sharp passes them on. */
const ENDS_EARLY = /premature|truncat|end of (file|stream|image)|not enough|short read|read error|data overrun/i;

/**
 * A sharp pipeline that reads the first frame, turned by EXIF, on white paper. Damage is an error, not a gray patch.
 * Color profiles are left out: they shift hues by what no measure asks for, and double the time.
 */
function openPicture(bytes: Uint8Array, maxPixels: number): Sharp {
  return sharp(bytes, { failOn: 'truncated', limitInputPixels: maxPixels, pages: 1, ignoreIcc: true })
    .timeout({ seconds: DECODE_SECONDS })
    .autoOrient()
    .flatten({ background: '#ffffff' });
}

async function orCode<T>(work: PromiseLike<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof DecodeError) throw error;
    const words = error instanceof Error ? error.message : '';
    if (/pixel limit/i.test(words)) throw new DecodeError('too-large');
    if (/^timeout/i.test(words)) throw new DecodeError('decode-timeout');
    throw new DecodeError(ENDS_EARLY.test(words) ? 'truncated' : 'unreadable-file');
  }
}

/**
 * Decodes a scan or photo (PNG, JPEG, WebP, TIFF) or one page of a PDF to gray.
 * The format is told by the first bytes, never by the name; sharp checks the size before any pixel is decoded.
 * @throws DecodeError
 */
export async function decodePage(bytes: Uint8Array, options: Partial<DecodeOptions> = {}): Promise<DecodedPage> {
  const { maxBytes, maxPixels, page } = { ...DECODE_LIMITS, page: 1, ...options };
  if (bytes.length > maxBytes) throw new DecodeError('too-large');
  const format = formatOf(bytes);
  if (format === 'pdf') {
    const drawn = await orCode(drawPdfPage(bytes, page, maxPixels));
    return { ...drawn, format, width: drawn.gray.width, height: drawn.gray.height };
  }
  if (page !== 1) throw new DecodeError('page-not-found');
  const { data, info } = await orCode(
    openPicture(bytes, maxPixels).raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true }),
  );
  return {
    gray: { width: info.width, height: info.height, data: grayOf(data, info.channels) },
    format,
    fileDpi: resolutionOf(bytes, format),
    width: info.width,
    height: info.height,
  };
}

/** Gray bytes of decoded pixels. */
function grayOf(pixels: Uint8Array, channels: number): Uint8Array {
  const gray = lumaOf(pixels, channels);
  giveBack(pixels);
  return gray;
}

/**
 * Gives the memory of pixels back at once; they are empty from then on. Left to the collector, a page or two of them
 * make it run each time, and the next page was seen to take a third longer.
 */
export function giveBack(pixels: Uint8Array): void {
  if (pixels.byteLength === pixels.buffer.byteLength && pixels.buffer instanceof ArrayBuffer) pixels.buffer.transfer(0);
}

/** Gray pixels as a picture that the window can show. */
export async function pngOf({
  width,
  height,
  data,
}: DecodedPage['gray']): Promise<{ mime: string; bytes: Uint8Array }> {
  const png = await sharp(data, { raw: { width, height, channels: 1 } })
    .png({ compressionLevel: 3 })
    .toBuffer();
  return { mime: 'image/png', bytes: png };
}
