import type { InkBox, InkDocument, InkWord } from '../ink-types.ts';
import type { Contact } from '../prepare/contacts.ts';
import { liftMs } from './pen-times.ts';

/** Contacts of one word, in the order of time. */
export type WordContacts = Contact[];

/** Words as the file groups them; null where it groups none. */
export function groupedWords(document: InkDocument, contacts: readonly Contact[]): WordContacts[] | null {
  if (document.words.length === 0) return null;
  const words = document.words.map((traces) => contacts.filter(({ trace }) => traces.includes(trace)));
  return words.filter((word) => word.length > 0);
}

/**
 * Words as the drawn page shows them: a contact belongs to the box that holds its middle, else to the nearest one.
 * @param boxes words of the page, mm
 * @param origin place of the page's corner in the ink's own millimeters
 */
export function wordsByBoxes(
  contacts: readonly Contact[],
  boxes: readonly InkBox[],
  origin: { x: number; y: number },
): WordContacts[] {
  const words: WordContacts[] = boxes.map(() => []);
  for (const contact of contacts) {
    const { left, right, top, bottom } = extentOf([contact]);
    const [x, y] = [(left + right) / 2 - origin.x, (top + bottom) / 2 - origin.y];
    let best = 0;
    let nearest = Infinity;
    for (const [i, { xMm, yMm, widthMm, heightMm }] of boxes.entries()) {
      const away = Math.hypot(Math.max(xMm - x, 0, x - xMm - widthMm), Math.max(yMm - y, 0, y - yMm - heightMm));
      if (away < nearest) [best, nearest] = [i, away];
    }
    words[best]?.push(contact);
  }
  return words.filter((word) => word.length > 0);
}

export interface Extent {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export function extentOf(paths: readonly { x: Float64Array; y: Float64Array }[]): Extent {
  const extent = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  for (const { x, y } of paths) {
    for (let i = 0; i < x.length; i += 1) {
      if (x[i]! < extent.left) extent.left = x[i]!;
      if (x[i]! > extent.right) extent.right = x[i]!;
      if (y[i]! < extent.top) extent.top = y[i]!;
      if (y[i]! > extent.bottom) extent.bottom = y[i]!;
    }
  }
  return extent;
}

/** When each word was written, with how many lifts; its box on the page where there is one. */
export function wordsTold(
  words: readonly WordContacts[],
  startMs: number,
  intervalMs: number,
  origin: { x: number; y: number } | null,
): InkWord[] {
  return words.map((word) => {
    const { left, right, top, bottom } = extentOf(word);
    const lifts = word.slice(1).filter((contact, i) => liftMs(word[i]!, contact, intervalMs) !== null).length;
    const box = origin && { xMm: left - origin.x, yMm: top - origin.y, widthMm: right - left, heightMm: bottom - top };
    return { fromS: (word[0]!.t[0]! - startMs) / 1000, toS: (word.at(-1)!.t.at(-1)! - startMs) / 1000, lifts, box };
  });
}
