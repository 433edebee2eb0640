// Tags of TIFF 6.0 (1992), section 8.
const X_RESOLUTION = 282;
const Y_RESOLUTION = 283;
const RESOLUTION_UNIT = 296;

/**
 * Dots per inch by the first directory of a TIFF, or of the TIFF inside an EXIF block.
 * @returns null when missing, without a unit, different in the two directions, or outside the bytes at hand
 */
export function tiffDpi(bytes: Uint8Array): number | null {
  if (bytes.length < 8) return null;
  const little = bytes[0] === 0x49;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const start = view.getUint32(4, little);
  if (start + 2 > bytes.length) return null;
  const count = view.getUint16(start, little);
  const found = new Map<number, number>();
  for (let i = 0; i < count; i += 1) {
    const at = start + 2 + 12 * i;
    if (at + 12 > bytes.length) return null;
    const tag = view.getUint16(at, little);
    const kind = view.getUint16(at + 2, little);
    if (kind === 3) found.set(tag, view.getUint16(at + 8, little));
    else if (kind === 4) found.set(tag, view.getUint32(at + 8, little));
    else if (kind === 5) {
      const where = view.getUint32(at + 8, little);
      if (where + 8 > bytes.length) continue;
      const below = view.getUint32(where + 4, little);
      if (below > 0) found.set(tag, view.getUint32(where, little) / below);
    }
  }
  const x = found.get(X_RESOLUTION);
  const y = found.get(Y_RESOLUTION) ?? x;
  const unit = found.get(RESOLUTION_UNIT) ?? 2;
  const same = x !== undefined && y !== undefined && Math.abs(x - y) <= 0.001 * x;
  return !same || unit === 1 ? null : unit === 3 ? x * 2.54 : x;
}
