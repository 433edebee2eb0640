/** Choices that look random and are the same for the same seed: nothing here reads a clock or a random source. */

/** 32-bit number of a text (FNV-1a). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

export interface Choice {
  /** Whole number from 0 to below `count`; 0 where count is 0. */
  below(count: number): number;
  /** One of the list. @throws RangeError on an empty list */
  of<T>(list: readonly T[]): T;
  /** True in about `share` of the draws. */
  chance(share: number): boolean;
}

/** mulberry32 (Tommy Ettinger's generator, public domain): 32 bits of state, enough for choosing words. */
export function choiceFrom(seed: number): Choice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    below: (count) => Math.floor(next() * count),
    of: (list) => {
      if (list.length === 0) throw new RangeError('There is nothing to choose from.');
      return list[Math.floor(next() * list.length)]!;
    },
    chance: (share) => next() < share,
  };
}
