import { lend } from './wasm/instance.ts';

/** Luma of ITU-R BT.601 in parts of 256, as JPEG itself parts light from color (ITU-T T.871): gray stays what it is. */
const [RED, GREEN, BLUE] = [77, 150, 29];
/** Pixels that go through the fast path at once: they stay in the processor's cache. A multiple of 16. */
const CHUNK = 65_536;

/** Gray bytes of pixels: red, green, blue and perhaps more, or gray and perhaps more. */
export function lumaOf(pixels: Uint8Array, channels: number): Uint8Array {
  return channels === 3 ? (fastLuma(pixels) ?? plainLuma(pixels, channels)) : plainLuma(pixels, channels);
}

/** The reference that the fast path is compared with. */
export function plainLuma(pixels: Uint8Array, channels: number): Uint8Array {
  const gray = new Uint8Array(pixels.length / channels);
  if (channels < 3) for (let i = 0; i < gray.length; i += 1) gray[i] = pixels[i * channels]!;
  else
    for (let i = 0, at = 0; i < gray.length; i += 1, at += channels)
      gray[i] = (RED * pixels[at]! + GREEN * pixels[at + 1]! + BLUE * pixels[at + 2]!) >> 8;
  return gray;
}

/** Red, green and blue to gray by page.as; null where it cannot run. */
export function fastLuma(pixels: Uint8Array): Uint8Array | null {
  const lent = lend([3 * CHUNK, CHUNK]);
  if (!lent) return null;
  const [from, to] = lent.at as [number, number];
  const gray = new Uint8Array(pixels.length / 3);
  const memory = new Uint8Array(lent.buffer);
  for (let first = 0; first < gray.length; first += CHUNK) {
    const count = Math.min(CHUNK, gray.length - first);
    memory.set(pixels.subarray(3 * first, 3 * (first + count)), from);
    lent.exports.luma(from, to, count, RED, GREEN, BLUE);
    gray.set(memory.subarray(to, to + count), first);
  }
  return gray;
}
