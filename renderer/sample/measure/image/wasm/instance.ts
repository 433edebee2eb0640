import { WASM_BASE64 } from './bytes.ts';

/** The compiled stages of page.as; addresses and sizes in bytes, see there. */
export interface StageExports {
  memory: WebAssembly.Memory;
  threshold(gray: number, ink: number, w: number, h: number, work: number, share: number, factor: number): void;
  votesAcross(gray: number, votes: number, w: number, h: number, beside: number, dip: number): void;
  votesDown(gray: number, votes: number, w: number, h: number, beside: number, dip: number): void;
  runs(bitmap: number, w: number, h: number, rows: number, from: number, to: number): number;
  markBand(bitmap: number, ...rest: number[]): void;
  eraseBand(gray: number, bitmap: number, ...rest: number[]): void;
  halfContrast(gray: number, bitmap: number, ...rest: number[]): void;
  gatherPaper(gray: number, bitmap: number, ...rest: number[]): void;
  gatherInk(gray: number, ...rest: number[]): void;
  luma(from: number, to: number, count: number, red: number, green: number, blue: number): void;
}

/** Room in the memory of the stages. */
export interface Lent {
  exports: StageExports;
  buffer: ArrayBuffer;
  /** Address of each part asked for. */
  at: number[];
}

/** A page of WebAssembly memory; the first one holds the module's own data. */
const MEMORY_PAGE = 65_536;
/** A vector has 16 bytes; reads may run this far over the end of a part. */
const VECTOR = 16;
/** Memory up to this size is kept for the next page (A4 at 300 dpi needs 62 MB of addresses, a third of it used). */
const KEEP = 80_000_000;
/** WebAssembly addresses end here. */
const MOST = 4_000_000_000;

let compiled: WebAssembly.Module | null | undefined;
let kept: StageExports | null = null;

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

/**
 * An instance with room for parts of these sizes (bytes). Its memory is lent: the next call may give it away again.
 * Null where the machine has no WebAssembly with SIMD or the parts are too large for it.
 */
export function instanceFor(sizes: readonly number[]): Lent | null {
  const module = stagesModule();
  const at: number[] = [];
  let end = MEMORY_PAGE;
  for (const size of sizes) {
    end = Math.ceil(end / VECTOR) * VECTOR;
    at.push(end);
    end += size + VECTOR;
  }
  if (!module || end > MOST) return null;
  const exports = kept ?? (new WebAssembly.Instance(module).exports as unknown as StageExports);
  try {
    const missing = Math.ceil(end / MEMORY_PAGE) - exports.memory.buffer.byteLength / MEMORY_PAGE;
    if (missing > 0) exports.memory.grow(missing);
  } catch {
    return null;
  }
  kept = end <= KEEP ? exports : null;
  return { exports, buffer: exports.memory.buffer as ArrayBuffer, at };
}

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
