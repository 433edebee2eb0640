/** A made-up reader for the demo: gets a given share of words right and confuses letters the way readers do. */

const lookalikes: Record<string, string> = {
  a: 'o',
  o: 'a',
  u: 'v',
  v: 'u',
  n: 'u',
  m: 'w',
  g: 'q',
  q: 'g',
  e: 'c',
  c: 'e',
  t: 'l',
  l: 't',
  r: 'v',
  h: 'n',
  b: 'l',
  d: 'a',
  i: 'e',
  s: 'r',
  y: 'g',
  f: 't',
  k: 'h',
  p: 'y',
  w: 'u',
  x: 'r',
  z: 's',
  j: 'i',
};

/** Letters that the demo's hands spoil first. */
const spoilt = 'auonghrtebdcslivywmpkfqxzj';

function misread(word: string, turn: number): string {
  const letters = [...word];
  const order = [...spoilt].map((l) => word.toLowerCase().indexOf(l)).filter((i) => i >= 0);
  const at = order[turn % Math.max(1, Math.min(2, order.length))] ?? 0;
  letters[at] = turn % 7 === 6 ? '?' : (lookalikes[letters[at]!.toLowerCase()] ?? '?');
  return letters.join('');
}

/**
 * Reads lines with about `legibility` (0 to 1) of the words right; later words fail first, as tired writing does.
 * The same arguments give the same reading.
 */
export function readLines(
  lines: readonly string[],
  legibility: number,
  seed: number,
): { intended: string; read: string; seconds: number | null }[] {
  const words = lines.flatMap((line, l) => line.split(' ').map((word, w) => ({ l, w, word })));
  const wrong = Math.round((1 - legibility) * words.length);
  const ranked = words
    .map((entry, i) => ({
      ...entry,
      weight:
        ((Math.imul(i + 1, 2654435761) ^ Math.imul(seed, 40503)) >>> 0) / 2 ** 32 -
        (0.6 * i) / words.length -
        0.03 * entry.word.length,
    }))
    .sort((a, b) => a.weight - b.weight);
  const bad = new Set(ranked.slice(0, wrong).map(({ l, w }) => `${l}/${w}`));
  let turn = seed;
  return lines.map((intended, l) => ({
    intended,
    read: intended
      .split(' ')
      .map((word, w) => (bad.has(`${l}/${w}`) ? misread(word, turn++) : word))
      .join(' '),
    seconds: 9 + (seed % 5) + l,
  }));
}
