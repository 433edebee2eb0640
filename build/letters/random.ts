/** A stream of numbers in [0, 1) that is the same on every machine for the same seed. */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** Normal with mean 0 and standard deviation 1 (polar form of Box and Muller, 1958). */
  normal(): number;
  /** One element of a list that is not empty. */
  pick<T>(list: readonly T[]): T;
}

/** A seeded stream (sfc32, C. Doty-Humphrey's small fast counter generator, public domain). */
export function seededRandom(seed: number): Random {
  let a = 0x9e3779b9 ^ seed;
  let b = 0x243f6a88 ^ Math.imul(seed, 0x85ebca6b);
  let c = 0xb7e15162;
  let counter = 1;
  const step = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let warm = 0; warm < 12; warm += 1) step();
  let spare: number | null = null;
  const random: Random = {
    next: step,
    between: (low, high) => low + (high - low) * step(),
    normal() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      for (;;) {
        const u = 2 * step() - 1;
        const v = 2 * step() - 1;
        const square = u * u + v * v;
        if (square === 0 || square >= 1) continue;
        const factor = Math.sqrt((-2 * Math.log(square)) / square);
        spare = v * factor;
        return u * factor;
      }
    },
    pick(list) {
      const chosen = list[Math.floor(step() * list.length)];
      if (chosen === undefined) throw new RangeError('nothing to pick from');
      return chosen;
    },
  };
  return random;
}
