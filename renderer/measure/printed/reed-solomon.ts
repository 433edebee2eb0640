/**
 * Reed-Solomon codes over GF(256), in the field of Data Matrix (x^8 + x^5 + x^3 + x^2 + 1, first root alpha^1;
 * ISO/IEC 16022): bytes that are read wrongly are put right, and too many of them are noticed.
 */
const FIELD = 0x12d;
const EXP = new Uint8Array(510);
const LOG = new Uint8Array(256);
for (let power = 0, value = 1; power < 255; power += 1) {
  EXP[power] = value;
  EXP[power + 255] = value;
  LOG[value] = power;
  value <<= 1;
  if (value > 255) value ^= FIELD;
}

const times = (a: number, b: number): number => (a === 0 || b === 0 ? 0 : EXP[LOG[a]! + LOG[b]!]!);
const over = (a: number, b: number): number => (a === 0 ? 0 : EXP[LOG[a]! + 255 - LOG[b]!]!);
const power = (exponent: number): number => EXP[((exponent % 255) + 255) % 255]!;

/** The check bytes of `data`, to be written behind it. */
export function checkBytes(data: ArrayLike<number>, count: number): Uint8Array {
  // The product of (x - alpha^i), highest power first without its leading 1.
  let generator = [1];
  for (let i = 1; i <= count; i += 1) {
    const next = [...generator, 0];
    generator.forEach((factor, k) => (next[k + 1]! ^= times(factor, power(i))));
    generator = next;
  }
  const rest = new Uint8Array(count);
  for (let k = 0; k < data.length; k += 1) {
    const lead = data[k]! ^ rest[0]!;
    rest.copyWithin(0, 1);
    rest[count - 1] = 0;
    for (let i = 0; i < count; i += 1) rest[i]! ^= times(generator[i + 1]!, lead);
  }
  return rest;
}

function syndromesOf(word: Uint8Array, count: number): number[] {
  return Array.from({ length: count }, (_, j) => word.reduce((sum, byte) => times(sum, power(j + 1)) ^ byte, 0));
}

/** The polynomial whose roots tell the wrong places (Berlekamp and Massey), lowest power first, and how many there are. */
function locator(syndromes: readonly number[]): { places: number[]; errors: number } {
  let [now, before]: [number[], number[]] = [[1], [1]];
  let [errors, gap, last] = [0, 1, 1];
  syndromes.forEach((syndrome, n) => {
    let off = syndrome;
    for (let i = 1; i <= errors; i += 1) off ^= times(now[i] ?? 0, syndromes[n - i]!);
    if (off === 0) {
      gap += 1;
      return;
    }
    const factor = over(off, last);
    const next = [...now];
    before.forEach((value, i) => (next[i + gap] = (next[i + gap] ?? 0) ^ times(factor, value)));
    for (let i = 0; i < next.length; i += 1) next[i] ??= 0;
    if (2 * errors <= n) {
      [before, last, gap] = [now, off, 1];
      errors = n + 1 - errors;
    } else gap += 1;
    now = next;
  });
  return { places: now, errors };
}

const valueAt = (polynomial: readonly number[], x: number): number =>
  polynomial.reduceRight((sum, factor) => times(sum, x) ^ factor, 0);

/**
 * The word with its wrong bytes put right; null where more than `most` are wrong.
 * @param count how many of its bytes, at the end, are check bytes
 * @param most fewer than half of them: what is left over notices words that are none
 */
export function corrected(word: Uint8Array, count: number, most: number): Uint8Array | null {
  const syndromes = syndromesOf(word, count);
  if (syndromes.every((value) => value === 0)) return word.slice();
  const { places, errors } = locator(syndromes);
  if (errors > most) return null;
  const evaluator = Array.from({ length: count }, (_, k) =>
    places.reduce((sum, factor, i) => (i <= k ? sum ^ times(factor, syndromes[k - i]!) : sum), 0),
  );
  const slope = places.map((_, i) => (i % 2 === 0 ? (places[i + 1] ?? 0) : 0));
  const right = word.slice();
  let found = 0;
  for (let i = 0; i < word.length; i += 1) {
    const inverse = power(-(word.length - 1 - i));
    if (valueAt(places, inverse) !== 0) continue;
    found += 1;
    right[i]! ^= over(valueAt(evaluator, inverse), valueAt(slope, inverse));
  }
  return found === errors && syndromesOf(right, count).every((value) => value === 0) ? right : null;
}
