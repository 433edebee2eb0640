import { WASM_BASE64 } from './bytes.ts';

/** The compiled stages of page.as, curves.as and outlines.as; addresses and sizes in bytes, see there. */
interface StageExports {
  threshold(gray: number, ink: number, ...rest: number[]): void;
  votes(gray: number, across: number, down: number, ...rest: number[]): void;
  runs(bitmap: number, w: number, h: number, rows: number, from: number, to: number): number;
  rims(bitmap: number, ...rest: number[]): void;
  markBands(bitmap: number, ...rest: number[]): void;
  eraseBands(gray: number, bitmap: number, ...rest: number[]): void;
  halfContrast(gray: number, bitmap: number, ...rest: number[]): void;
  seam(gray: number, bitmap: number, ...rest: number[]): void;
  gatherPaper(gray: number, bitmap: number, ...rest: number[]): void;
  gatherInk(gray: number, bitmap: number, ...rest: number[]): void;
  outlines(page: number, first: number, end: number, work: number): void;
  luma(from: number, to: number, count: number, red: number, green: number, blue: number): void;
  topSums(ys: number, lines: number, count: number, ...rest: number[]): void;
}

export type StageName = keyof StageExports;

/** The stages over some memory. */
export interface Instance {
  exports: StageExports;
  memory: WebAssembly.Memory;
}

/** Memory of the stages with room for what was asked. */
export interface Lent {
  exports: StageExports;
  buffer: ArrayBufferLike;
  /** Address of each part asked for. */
  at: number[];
}

/** A page of WebAssembly memory; the first one holds the module's own data. */
const MEMORY_PAGE = 65_536;
/** A vector has 16 bytes; reads may run this far over the end of a part. */
const VECTOR = 16;
/**
 * Memory up to this size is kept for the next page, and two threads share it: A4 takes 53 MB of addresses at 300 dpi and
 * 94 at 400, a third of it used. Shared memory never shrinks, so A4 at 600 dpi (212 MB) is left to one thread.
 */
const KEEP = 120_000_000;
/** WebAssembly addresses end here, in pages. */
const MOST_PAGES = 65_536;

let compiled: WebAssembly.Module | null | undefined;
let kept: Instance | null = null;

/** The compiled module; null where there is no WebAssembly with SIMD. */
export function stagesModule(): WebAssembly.Module | null {
  if (compiled === undefined) {
    try {
      compiled = new WebAssembly.Module(bytesOf(WASM_BASE64));
    } catch {
      compiled = null;
    }
  }
  return compiled;
}

/** The stages over memory of their own; null where the machine has no WebAssembly with SIMD and shared memory. */
export function instance(): Instance | null {
  const module = stagesModule();
  if (!module) return null;
  try {
    const memory = new WebAssembly.Memory({ initial: 1, maximum: MOST_PAGES, shared: true });
    const { exports } = new WebAssembly.Instance(module, { env: { memory } });
    return { exports: exports as unknown as StageExports, memory };
  } catch {
    return null;
  }
}

/** Where parts of these sizes (bytes) lie in the memory, and where the last one ends. */
function laidOut(sizes: readonly number[]): { at: number[]; end: number } {
  const at: number[] = [];
  let end = MEMORY_PAGE;
  for (const size of sizes) {
    end = Math.ceil(end / VECTOR) * VECTOR;
    at.push(end);
    end += size + VECTOR;
  }
  return { at, end };
}

/** Whether parts of these sizes fit into memory that is kept from page to page. */
export function fitsKept(sizes: readonly number[]): boolean {
  return laidOut(sizes).end <= KEEP;
}

/**
 * Memory with room for parts of these sizes (bytes). It is lent: the next call may give it away again.
 * @param own the instance to use; without one that of this thread
 * @returns null where the stages cannot run or the parts are too large for them
 */
export function lend(sizes: readonly number[], own?: Instance): Lent | null {
  const { at, end } = laidOut(sizes);
  const used = own ?? kept ?? instance();
  if (!used || end > MOST_PAGES * MEMORY_PAGE) return null;
  try {
    const missing = Math.ceil(end / MEMORY_PAGE) - used.memory.buffer.byteLength / MEMORY_PAGE;
    if (missing > 0) used.memory.grow(missing);
  } catch {
    return null;
  }
  if (!own) kept = end <= KEEP ? used : null;
  return { exports: used.exports, buffer: used.memory.buffer, at };
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
