import { DecodeError } from './decode-error.ts';
import { tiffHeader } from './tiff-header.ts';

export type PictureFormat = 'png' | 'jpeg' | 'webp' | 'tiff' | 'pdf';

/** What the first bytes of a picture say, before anything is decoded. */
export interface PictureHeader {
  format: PictureFormat;
  /** Size as stored, before the EXIF turn; null for PDF. */
  width: number | null;
  height: number | null;
  /** Resolution written in the file; null where there is none, or a placeholder of screens and phones. */
  fileDpi: number | null;
}

/** Below this no scanner writes: 72 and 96 are placeholders of screens and phones, not scales (common practice). */
const LOWEST_SCAN_DPI = 100;
const HIGHEST_SCAN_DPI = 2400;

const believable = (dpi: number | null): number | null =>
  dpi !== null && dpi >= LOWEST_SCAN_DPI && dpi <= HIGHEST_SCAN_DPI ? dpi : null;

const ascii = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));

/** The format by its first bytes; the file's name is not looked at. Null when it is none of ours. */
function formatOf(bytes: Uint8Array): PictureFormat | null {
  if (bytes[0] === 0x89 && ascii(bytes, 1, 8) === 'PNG\r\n\x1a\n') return 'png';
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return 'webp';
  const tiff = ascii(bytes, 0, 4);
  if (tiff === 'II*\0' || tiff === 'MM\0*') return 'tiff';
  // A PDF may begin with a few stray bytes (ISO 32000-1, implementation note 13: within the first 1024).
  if (ascii(bytes, 0, 1024).includes('%PDF-')) return 'pdf';
  return null;
}

interface SizeAndDpi {
  width: number;
  height: number;
  dpi: number | null;
}

function pngHeader(bytes: Uint8Array, view: DataView): SizeAndDpi {
  if (bytes.length < 33) throw new DecodeError('truncated');
  if (ascii(bytes, 12, 16) !== 'IHDR') throw new DecodeError('unreadable-file');
  let dpi: number | null = null;
  for (let at = 8; at + 12 <= bytes.length;) {
    const length = view.getUint32(at);
    const kind = ascii(bytes, at + 4, at + 8);
    if (kind === 'IDAT') break;
    if (kind === 'pHYs' && length === 9 && at + 17 <= bytes.length && bytes[at + 16] === 1) {
      const [x, y] = [view.getUint32(at + 8), view.getUint32(at + 12)];
      if (x === y) dpi = x * 0.0254;
    }
    at += 12 + length;
  }
  // Pixels per meter are whole numbers: 300 dpi is stored as 11811 and comes back as 299.9994.
  if (dpi !== null && Math.abs(dpi - Math.round(dpi)) < 0.02) dpi = Math.round(dpi);
  return { width: view.getUint32(16), height: view.getUint32(20), dpi };
}

/** Start-of-frame markers of JPEG (ITU-T T.81 table B.1); C4, C8 and CC are other things. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

function jpegHeader(bytes: Uint8Array, view: DataView): SizeAndDpi {
  let dpi: number | null = null;
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) throw new DecodeError('unreadable-file');
    const marker = bytes[at + 1] as number;
    if (marker === 0xff) {
      at += 1; // fill byte
      continue;
    }
    const length = view.getUint16(at + 2);
    const body = at + 4;
    if (isFrame(marker)) {
      if (body + 5 > bytes.length) break;
      return { width: view.getUint16(body + 3), height: view.getUint16(body + 1), dpi };
    }
    if (marker === 0xda || marker === 0xd9) throw new DecodeError('unreadable-file');
    if (marker === 0xe0 && ascii(bytes, body, body + 5) === 'JFIF\0' && body + 12 <= bytes.length) {
      const [unit, x, y] = [bytes[body + 7], view.getUint16(body + 8), view.getUint16(body + 10)];
      if (x === y && unit === 1) dpi ??= believable(x);
      if (x === y && unit === 2) dpi ??= believable(x * 2.54);
    }
    if (marker === 0xe1 && ascii(bytes, body, body + 6) === 'Exif\0\0')
      dpi ??= believable(tiffHeader(bytes.subarray(body + 6, at + 2 + length))?.dpi ?? null);
    at += 2 + length;
  }
  throw new DecodeError('truncated');
}

function webpHeader(bytes: Uint8Array, view: DataView): SizeAndDpi {
  if (bytes.length < 30 || view.getUint32(4, true) + 8 > bytes.length) throw new DecodeError('truncated');
  const kind = ascii(bytes, 12, 16);
  const u24 = (at: number): number => view.getUint16(at, true) + ((bytes[at + 2] as number) << 16);
  if (kind === 'VP8X') return { width: u24(24) + 1, height: u24(27) + 1, dpi: null };
  if (kind === 'VP8L') {
    const packed = view.getUint32(21, true);
    return { width: (packed & 0x3fff) + 1, height: ((packed >>> 14) & 0x3fff) + 1, dpi: null };
  }
  if (kind === 'VP8 ')
    return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff, dpi: null };
  throw new DecodeError('unreadable-file');
}

/**
 * Reads format, size and resolution from the beginning of a file.
 * @throws DecodeError empty-file, not-an-image, unreadable-file, truncated
 */
export function readHeader(bytes: Uint8Array): PictureHeader {
  if (bytes.length === 0) throw new DecodeError('empty-file');
  const format = formatOf(bytes);
  if (format === null) throw new DecodeError('not-an-image');
  if (format === 'pdf') return { format, width: null, height: null, fileDpi: null };
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const header =
    format === 'png'
      ? pngHeader(bytes, view)
      : format === 'jpeg'
        ? jpegHeader(bytes, view)
        : format === 'webp'
          ? webpHeader(bytes, view)
          : tiffHeader(bytes);
  if (!header || header.width === null || header.height === null) throw new DecodeError('truncated');
  if (header.width < 1 || header.height < 1) throw new DecodeError('unreadable-file');
  return { format, width: header.width, height: header.height, fileDpi: believable(header.dpi) };
}
