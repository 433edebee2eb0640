import type { GrayImage } from '../types.ts';
import { besidePx, rulingVotes, STRIP, VOTE_DIP } from './ruling-votes.ts';
import type { Votes } from './ruling-votes.ts';
import { SAUVOLA_FACTOR, SAUVOLA_SHARE, sauvola } from './threshold.ts';
import { WASM_BASE64 } from './wasm/bytes.ts';

/** The stages that touch every pixel of one picture. */
export interface PixelStages {
  /** First-pass ink: 1 or 0 for each pixel. */
  threshold(): Uint8Array;
  /** Votes for printed lines. */
  votes(pxPerMm: number): { across: Votes; down: Votes };
}

/** The reference: plain TypeScript. */
export function plainStages(image: GrayImage): PixelStages {
  return { threshold: () => sauvola(image), votes: (pxPerMm) => rulingVotes(image, pxPerMm) };
}

interface Exports {
  memory: WebAssembly.Memory;
  threshold(gray: number, ink: number, w: number, h: number, work: number, share: number, factor: number): void;
  votesAcross(gray: number, votes: number, w: number, h: number, beside: number, dip: number): void;
  votesDown(gray: number, votes: number, w: number, h: number, beside: number, dip: number): void;
}

/** A page of WebAssembly memory; the first one holds the module's own data. */
const MEMORY_PAGE = 65_536;

let compiled: WebAssembly.Module | null | undefined;

/** The compiled module; null where there is no WebAssembly with SIMD. */
function stagesModule(): WebAssembly.Module | null {
  if (compiled === undefined) {
    try {
      compiled = new WebAssembly.Module(bytesOf(WASM_BASE64));
    } catch {
      compiled = null;
    }
  }
  return compiled;
}

/** The same stages in WebAssembly with SIMD, bit for bit; the plain ones where that is not to be had. */
export function fastStages(image: GrayImage): PixelStages {
  const module = stagesModule();
  if (!module) return plainStages(image);
  const { width, height, data } = image;
  const exports = new WebAssembly.Instance(module).exports as unknown as Exports;
  const gray = MEMORY_PAGE;
  const ink = aligned(gray + data.length + 16);
  const work = aligned(ink + data.length + 16);
  // Votes take less room than the work of the threshold and the rest of the picture: they lie behind it.
  const across = aligned(work + 8 * (width + 64));
  const down = aligned(across + Math.floor(width / STRIP) * height + 16);
  const end = down + Math.floor(height / STRIP) * width + 64;
  exports.memory.grow(Math.ceil(end / MEMORY_PAGE) - exports.memory.buffer.byteLength / MEMORY_PAGE + 1);
  const { buffer } = exports.memory;
  new Uint8Array(buffer, gray, data.length).set(data);
  return {
    threshold() {
      exports.threshold(gray, ink, width, height, work, SAUVOLA_SHARE, SAUVOLA_FACTOR);
      return new Uint8Array(buffer, ink, data.length);
    },
    votes(pxPerMm) {
      const beside = besidePx(pxPerMm);
      const strips = { across: Math.floor(width / STRIP), down: Math.floor(height / STRIP) };
      const read = (from: number, count: number, length: number): Votes => ({
        strips: count,
        length,
        values: new Uint8Array(buffer, from, count * length),
      });
      new Uint8Array(buffer, across, end - across).fill(0);
      exports.votesAcross(gray, across, width, height, beside, VOTE_DIP);
      exports.votesDown(gray, down, width, height, beside, VOTE_DIP);
      return { across: read(across, strips.across, height), down: read(down, strips.down, width) };
    },
  };
}

const aligned = (address: number): number => Math.ceil(address / 16) * 16;

/** Bytes of base64 text; written out, for pure logic calls nothing of the window or of Node. */
function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
  const clean = base64.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((clean.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const letter of clean) {
    bits = ((bits << 6) | letters.indexOf(letter)) & 0xffffff;
    held += 6;
    if (held >= 8) {
      held -= 8;
      bytes[at] = (bits >> held) & 0xff;
      at += 1;
    }
  }
  return bytes;
}
