import { DecodeError } from './decode-error.ts';
import { tiffDpi } from './tiff-dpi.ts';

export type PictureFormat = 'png' | 'jpeg' | 'webp' | 'tiff' | 'pdf';

export const MIME_OF = {
  png: 'image/png',
  jpeg: 'image/jpeg',
  webp: 'image/webp',
  tiff: 'image/tiff',
  pdf: 'application/pdf',
} as const satisfies Record<PictureFormat, string>;

/** Whether the window can show the file itself. */
export const isShowable = (format: PictureFormat): format is 'png' | 'jpeg' | 'webp' =>
  format !== 'tiff' && format !== 'pdf';

/** Below this no scanner writes: 72 and 96 are placeholders of screens and phones, not scales (common practice). */
const LOWEST_SCAN_DPI = 100;
const HIGHEST_SCAN_DPI = 2400;

const believable = (dpi: number | null): number | null =>
  dpi !== null && dpi >= LOWEST_SCAN_DPI && dpi <= HIGHEST_SCAN_DPI ? dpi : null;

const ascii = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));

/**
 * The format by its first bytes; the file's name is not looked at.
 * @throws DecodeError empty-file; not-an-image when it is none of ours
 */
export function formatOf(bytes: Uint8Array): PictureFormat {
  if (bytes.length === 0) throw new DecodeError('empty-file');
  if (bytes[0] === 0x89 && ascii(bytes, 1, 8) === 'PNG\r\n\x1a\n') return 'png';
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return 'webp';
  const tiff = ascii(bytes, 0, 4);
  if (tiff === 'II*\0' || tiff === 'MM\0*') return 'tiff';
  // A PDF may begin with a few stray bytes (ISO 32000-1, implementation note 13: within the first 1024).
  if (ascii(bytes, 0, 1024).includes('%PDF-')) return 'pdf';
  throw new DecodeError('not-an-image');
}

/** pHYs chunk of a PNG: pixels per meter, in front of the picture. */
function pngDpi(bytes: Uint8Array, view: DataView): number | null {
  for (let at = 8; at + 17 <= bytes.length; at += 12 + view.getUint32(at)) {
    const kind = ascii(bytes, at + 4, at + 8);
    if (kind === 'IDAT') return null;
    if (kind !== 'pHYs' || view.getUint32(at) !== 9 || bytes[at + 16] !== 1) continue;
    const [x, y] = [view.getUint32(at + 8), view.getUint32(at + 12)];
    const dpi = x * 0.0254;
    if (x !== y) return null;
    // Pixels per meter are whole numbers: 300 dpi is stored as 11811 and comes back as 299.9994.
    return Math.abs(dpi - Math.round(dpi)) < 0.02 ? Math.round(dpi) : dpi;
  }
  return null;
}

/** Segments of a JPEG in front of its picture: JFIF, or the TIFF inside EXIF. */
function jpegDpi(bytes: Uint8Array, view: DataView): number | null {
  for (let at = 2; at + 4 <= bytes.length && bytes[at] === 0xff;) {
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at += 1; // fill byte
      continue;
    }
    // Start of scan and end of image (ITU-T T.81 table B.1).
    if (marker === 0xda || marker === 0xd9) return null;
    const body = at + 4;
    const next = at + 2 + view.getUint16(at + 2);
    let dpi: number | null = null;
    if (marker === 0xe0 && ascii(bytes, body, body + 5) === 'JFIF\0' && body + 12 <= bytes.length) {
      const [unit, x, y] = [bytes[body + 7], view.getUint16(body + 8), view.getUint16(body + 10)];
      if (x === y) dpi = unit === 1 ? x : unit === 2 ? x * 2.54 : null;
    }
    if (marker === 0xe1 && ascii(bytes, body, body + 6) === 'Exif\0\0') dpi = tiffDpi(bytes.subarray(body + 6, next));
    if (believable(dpi) !== null) return dpi;
    at = next;
  }
  return null;
}

/**
 * Resolution written in a picture, dots per inch; null where there is none, where it differs in the two directions, or
 * where it is a placeholder of screens and phones. Read here because sharp's metadata gives the horizontal one alone, in
 * whole numbers; size and damage are sharp's to judge.
 */
export function resolutionOf(bytes: Uint8Array, format: PictureFormat): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (format === 'png') return believable(pngDpi(bytes, view));
  if (format === 'jpeg') return believable(jpegDpi(bytes, view));
  return format === 'tiff' ? believable(tiffDpi(bytes)) : null;
}
