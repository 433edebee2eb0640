import { median } from '../../statistics/order-statistics.ts';
import type { Contact } from '../prepare/contacts.ts';

/** Cut off each end of a contact: pressure rises and falls there, ms. */
const ENDS_MS = 50;
/** Under this many contacts, stretches of half a second stand for them. */
const LEAST_CONTACTS = 8;
const BLOCK_MS = 500;
/** Times in seconds are not whole milliseconds after their conversion. */
const ROUNDING_MS = 1e-6;
/** A block with fewer samples than this tells no median. */
const LEAST_IN_BLOCK = 4;

export interface Pressure {
  /** Of all samples within the contacts. */
  mean: number;
  /** Percent. */
  cv: number;
  n: number;
  /** Medians of contacts or half seconds, with their times in s. */
  medians: { atS: number; value: number }[];
}

interface Pressed {
  t: number[];
  force: number[];
}

function pressedOf({ t, force }: Contact): Pressed {
  const [first, last] = [t[0]! + ENDS_MS - ROUNDING_MS, t.at(-1)! - ENDS_MS + ROUNDING_MS];
  const inside: Pressed = { t: [], force: [] };
  for (let i = 0; i < t.length; i += 1) {
    if (t[i]! < first || t[i]! > last || Number.isNaN(force![i]!)) continue;
    inside.t.push(t[i]!);
    inside.force.push(force![i]!);
  }
  return inside;
}

const middle = ({ t, force }: Pressed): { atS: number; value: number } => ({
  atS: (t[0]! + t.at(-1)!) / 2000,
  value: median(force)!,
});

function blocksOf({ t, force }: Pressed): { atS: number; value: number }[] {
  const blocks = new Map<number, Pressed>();
  for (let i = 0; i < t.length; i += 1) {
    const key = Math.floor((t[i]! - t[0]! + ROUNDING_MS) / BLOCK_MS);
    const block = blocks.get(key) ?? { t: [], force: [] };
    block.t.push(t[i]!);
    block.force.push(force[i]!);
    blocks.set(key, block);
  }
  return [...blocks.values()].filter((block) => block.t.length >= LEAST_IN_BLOCK).map(middle);
}

/** Whether the pen tells a pressure at all: one that never moves is none. */
export function hasPressure(contacts: readonly Contact[]): boolean {
  let [low, high] = [Infinity, -Infinity];
  for (const { force } of contacts) {
    if (!force) return false;
    for (const each of force) {
      if (each < low) low = each;
      if (each > high) high = each;
    }
  }
  return high > low;
}

/** Null where no contact is long enough. Every contact must have a pressure. */
export function pressureOf(contacts: readonly Contact[]): Pressure | null {
  const pressed = contacts.map(pressedOf).filter(({ t }) => t.length > 0);
  const n = pressed.reduce((sum, { t }) => sum + t.length, 0);
  if (n < 2) return null;
  let sum = 0;
  for (const { force } of pressed) for (const each of force) sum += each;
  const mean = sum / n;
  let squares = 0;
  for (const { force } of pressed) for (const each of force) squares += (each - mean) ** 2;
  const medians = pressed.length < LEAST_CONTACTS ? pressed.flatMap(blocksOf) : pressed.map(middle);
  return { mean, cv: mean > 0 ? (100 * Math.sqrt(squares / (n - 1))) / mean : NaN, n, medians };
}
