/**
 * The code on sheets that come back: whose, which and from which day, in 12 bytes and 12 check bytes, as four rows of
 * small squares below the writing. It names nobody: what it holds of the client is a number that only the caseload knows.
 */
import { checkBytes, corrected } from './reed-solomon.ts';

export interface PageCode {
  /** Number of the layout that the sheet was drawn by. */
  layout: number;
  kind: 'log' | 'practice';
  /** Rows with few minutes to mark. */
  few: boolean;
  /** The last ten hex digits of the client's id. */
  client: string;
  /** ISO date: of a log its first row, of a practice page the day it was made. */
  firstDay: string;
  /** Its place in the packet, from 1. */
  sheet: number;
  /** Six hex digits that tell two versions of the same page apart. */
  content: string;
}

export const CODE_GRID = { columns: 48, rows: 4, moduleMm: 1 } as const;
const DATA = 12;
const CHECK = 12;
/** Of six that could be put right: the rest of the check bytes tells a code from scribble. */
const MOST_WRONG = 4;
const KINDS = ['log', 'practice'] as const;
const DAY_MS = 86_400_000;
const FIRST = Date.UTC(2020, 0, 1);

/** Top left corner of the code on a sheet, mm: right of the last words, above the bar to check the print by. */
export function codePlace(widthMm: number, heightMm: number): { x: number; y: number } {
  return { x: widthMm - 25 - 27 - CODE_GRID.columns * CODE_GRID.moduleMm, y: heightMm - 28.6 };
}

const hexOf = (bytes: Uint8Array): string => [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
const bytesOf = (hex: string): Uint8Array => Uint8Array.from(hex.match(/../g) ?? [], (pair) => parseInt(pair, 16));

/** The code as 24 hex digits: what the page's model keeps. */
export function codeText({ layout, kind, few, client, firstDay, sheet, content }: PageCode): string {
  const bytes = new Uint8Array(DATA);
  bytes[0] = (layout << 4) | (KINDS.indexOf(kind) << 1) | (few ? 1 : 0);
  bytes.set(bytesOf(client).subarray(0, 5), 1);
  const day = Math.round((Date.parse(`${firstDay}T00:00:00Z`) - FIRST) / DAY_MS);
  bytes.set([(day >> 8) & 255, day & 255, sheet & 255], 6);
  bytes.set(bytesOf(content).subarray(0, 3), 9);
  return hexOf(bytes);
}

/** @param text 24 hex digits */
export function codeOfText(text: string): PageCode | null {
  const bytes = bytesOf(text);
  const kind = KINDS[(bytes[0]! >> 1) & 7];
  if (bytes.length !== DATA || kind === undefined) return null;
  return {
    layout: bytes[0]! >> 4,
    kind,
    few: (bytes[0]! & 1) === 1,
    client: hexOf(bytes.subarray(1, 6)),
    firstDay: new Date(FIRST + ((bytes[6]! << 8) | bytes[7]!) * DAY_MS).toISOString().slice(0, 10),
    sheet: bytes[8]!,
    content: hexOf(bytes.subarray(9, 12)),
  };
}

/** Bits lie in rows, and are turned over like a chessboard, so that no code is all paper. */
const turnedOver = (at: number): boolean => ((at % CODE_GRID.columns) + Math.floor(at / CODE_GRID.columns)) % 2 === 0;

/** Which squares of the grid are black, row by row. */
export function codeSquares(text: string): boolean[] {
  const data = bytesOf(text);
  const word = [...data, ...checkBytes(data, CHECK)];
  return Array.from({ length: 8 * word.length }, (_, at) => {
    const bit = ((word[at >> 3]! >> (7 - (at & 7))) & 1) === 1;
    return bit !== turnedOver(at);
  });
}

/** The code of squares as they were read; null where they are none. */
export function codeOfSquares(black: readonly boolean[]): string | null {
  const word = new Uint8Array(DATA + CHECK);
  black.forEach((square, at) => {
    if (square !== turnedOver(at)) word[at >> 3]! |= 1 << (7 - (at & 7));
  });
  const right = corrected(word, CHECK, MOST_WRONG);
  return right && hexOf(right.subarray(0, DATA));
}
