/** Ways to spoil bytes, text and JSON. Repeatable: all chance comes from the caller. */
import { pick } from '../random.ts';

type Random = () => number;

const whole = (random: Random, below: number): number => Math.floor(random() * below);

/** Numbers that sizes, offsets and counts are made of when somebody means harm. */
const NASTY_NUMBERS = [0, 1, 0x7f, 0x80, 0xff, 0x7fff, 0x8000, 0xffff, 0x7fff_ffff, 0x8000_0000, 0xffff_ffff];

/** One way to spoil bytes. Half of the changes fall into the first `head` bytes, where sizes and offsets stand. */
export function mutatedBytes(bytes: Buffer, random: Random, head = 4096): Buffer {
  if (bytes.length === 0) return bytes;
  const copy = Buffer.from(bytes);
  const spot = whole(random, random() < 0.5 ? Math.min(head, bytes.length) : bytes.length);
  const until = (size: number): number => Math.min(copy.length, spot + size);
  switch (pick(random, ['bit', 'byte', 'number', 'cut', 'zero', 'swap', 'double', 'insert', 'noise'])) {
    case 'bit':
      copy[spot]! ^= 1 << whole(random, 8);
      return copy;
    case 'byte':
      copy[spot] = whole(random, 256);
      return copy;
    case 'number': {
      const value = pick(random, NASTY_NUMBERS);
      const size = Math.min(pick(random, [2, 4]), copy.length - spot);
      const kept = size < 4 ? value % 256 ** size : value;
      if (random() < 0.5) copy.writeUIntBE(kept, spot, size);
      else copy.writeUIntLE(kept, spot, size);
      return copy;
    }
    case 'cut':
      return copy.subarray(0, whole(random, bytes.length));
    case 'zero':
      return copy.fill(0, spot, until(600));
    case 'swap':
      bytes.copy(copy, spot, whole(random, bytes.length));
      return copy;
    case 'double':
      return Buffer.concat([copy.subarray(0, spot), copy.subarray(Math.floor(spot / 2))]);
    case 'insert':
      return Buffer.concat([copy.subarray(0, spot), Buffer.from('../../../etc/passwd\0'), copy.subarray(spot)]);
    default:
      for (let at = spot; at < until(64); at++) copy[at] = whole(random, 256);
      return copy;
  }
}

/** Several spoilings on top of each other, mostly one. */
export function mutatedOften(bytes: Buffer, random: Random, head?: number): Buffer {
  let out = bytes;
  do out = mutatedBytes(out, random, head);
  while (random() < 0.4);
  return out;
}

const NASTY_TEXTS = [
  '',
  '../../../../etc/passwd',
  'C:\\Windows\\win.ini',
  '<script>globalThis.ran = 1</script>',
  '=HYPERLINK("http://example.invalid")',
  '__proto__',
  'constructor',
  '\u0000',
  '\ud800',
  '\u202e',
  "'; DROP TABLE client; --",
  '${7*7}{{7*7}}',
  'x'.repeat(20_000),
  '(a+)+$',
  '9'.repeat(400),
  '1e999',
];

const nested = (depth: number): unknown => {
  let value: unknown = 1;
  for (let n = 0; n < depth; n++) value = n % 2 === 0 ? [value] : { a: value };
  return value;
};

/** Any JSON value that a careless reader may stumble over. */
export function nastyValue(random: Random): unknown {
  return pick<() => unknown>(random, [
    () => null,
    () => true,
    () => pick(random, [-1, 0, 0.5, 1e308, -1e308, 2 ** 53, 1e21, ...NASTY_NUMBERS]),
    () => pick(random, NASTY_TEXTS),
    () => [],
    () => ({}),
    () => JSON.parse('{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}') as unknown,
    () => Array.from({ length: 3000 }, () => 1),
    () => nested(60),
    () => nested(300),
  ])();
}

/** Every object and array inside a JSON value. */
function containers(value: unknown): (Record<string, unknown> | unknown[])[] {
  const found: (Record<string, unknown> | unknown[])[] = [];
  const walk = (each: unknown): void => {
    if (typeof each !== 'object' || each === null || found.length > 5000) return;
    found.push(each as Record<string, unknown>);
    for (const inner of Object.values(each)) walk(inner);
  };
  walk(value);
  return found;
}

/** A copy with some of its values replaced, removed, doubled, moved or added. */
export function mutatedJson(value: unknown, random: Random): unknown {
  const copy = structuredClone(value);
  do {
    const all = containers(copy);
    if (all.length === 0) return nastyValue(random);
    const spot = pick(random, all) as Record<string, unknown>;
    const keys = Object.keys(spot);
    const key = keys.length > 0 ? pick(random, keys) : 'a';
    switch (pick(random, ['replace', 'replace', 'remove', 'move', 'add', 'double'])) {
      case 'replace':
        spot[key] = nastyValue(random);
        break;
      case 'remove':
        if (Array.isArray(spot)) spot.splice(whole(random, spot.length), 1);
        else delete spot[key];
        break;
      case 'move':
        spot[key] = structuredClone(pick(random, all));
        break;
      case 'add':
        if (Array.isArray(spot)) spot.push(nastyValue(random));
        else spot[pick(random, ['extra', 'id', 'toString', '0'])] = nastyValue(random);
        break;
      default:
        if (Array.isArray(spot)) spot.push(...(structuredClone(spot) as unknown[]));
        break;
    }
  } while (random() < 0.4);
  return copy;
}

/** Text with a token replaced, doubled, nested or cut. */
export function mutatedText(text: string, random: Random): string {
  const at = whole(random, text.length + 1);
  switch (pick(random, ['number', 'insert', 'cut', 'double', 'nest', 'drop'])) {
    case 'number': {
      const numbers = [...text.matchAll(/\d+/g)];
      const one = numbers.length > 0 ? pick(random, numbers) : null;
      if (one === null) return text;
      const value = String(pick(random, [-1, 0, 1e9, 99999999999, 0.0001, ...NASTY_NUMBERS]));
      return text.slice(0, one.index) + value + text.slice(one.index + one[0].length);
    }
    case 'insert':
      return text.slice(0, at) + pick(random, NASTY_TEXTS) + text.slice(at);
    case 'cut':
      return text.slice(0, at);
    case 'double':
      return text.slice(0, at) + text.slice(Math.floor(at / 2));
    case 'nest':
      return (
        text.slice(0, at) +
        pick(random, ['[', '{"a":', '<<', '(', 'q ']).repeat(pick(random, [200, 2000, 10_000])) +
        text.slice(at)
      );
    default:
      return text.slice(0, at) + text.slice(at + whole(random, 80));
  }
}
