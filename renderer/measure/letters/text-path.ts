import { expectedOf, wordCost } from './word-cost.ts';
import type { Expected, Seen } from './word-cost.ts';

/** Letters of one line as the text is laid along them: places in x-heights. */
export interface PathLine {
  from: readonly number[];
  to: readonly number[];
  tall: readonly (readonly number[])[];
  hanging: readonly (readonly number[])[];
  /** Log odds of the gap after each letter but the last for parting words. */
  odds: readonly number[];
  /** Whether a point or comma stands after each letter. */
  ends: readonly boolean[];
}

/** A stretch of letters of a line as words of the text. */
interface Stretch {
  line: number;
  first: number;
  /** One past its last letter. */
  last: number;
  /** Words of the text; empty for ink that is none of them, two for words that touch. */
  words: number[];
}

export interface TextPath {
  stretches: Stretch[];
  /** Words of the text that were left out. */
  missing: number[];
  /** Price over all, and per word of the text. */
  cost: number;
  perWord: number;
  scale: number;
}

/** Log odds of a gap that was decided by hand. */
export const DECIDED = 1e6;
/** Prices: a word left out, ink that is no word of the text, two words without a gap. */
const LEFT_OUT = 4.5;
const FOREIGN = 4;
const TOUCHING = 3.5;
/** How much the odds of a gap weigh, and at most. */
const GAP = 0.6;
const GAP_MOST = 6;
/** A point or comma that should be there or should not. */
const MARK = 0.5;
/** Ink wider or narrower than the word by this factor is not tried as it. */
const WIDEST = 2.4;
const NARROWEST = 0.35;
/** Widest ink that is no word of the text, x-heights. */
const MOST_FOREIGN = 12;
/** Words of the text tried at a place: this many to each side of where it should be, and this share of the text. */
const BAND = 7;
const BAND_SHARE = 0.06;

/** Lays the words of a text along the letters of a page. */
export function layText(
  lines: readonly PathLine[],
  words: readonly string[],
  widthOf?: (char: string) => number,
): TextPath {
  const expected = words.map((word) => expectedOf(word, widthOf));
  const ink = lines.reduce(
    (sum, line) => sum + line.from.reduce((s, from, k) => s + Math.max(0, line.to[k]! - from), 0),
    0,
  );
  // Gaps inside words take up room as well: the first scale is from the ink alone, the second from the words found.
  let scale = Math.max(0.5, Math.min(2.5, (1.12 * ink) / expected.reduce((sum, { width }) => sum + width, 0)));
  let path = pathOf(lines, expected, scale);
  for (let round = 0; round < 2; round += 1) {
    const ratios = path.stretches.flatMap(({ line, first, last, words: own }) =>
      own.length === 1 && expected[own[0]!]!.letters > 2
        ? [(Math.max(...lines[line]!.to.slice(first, last)) - lines[line]!.from[first]!) / expected[own[0]!]!.width]
        : [],
    );
    ratios.sort((a, b) => a - b);
    const next = ratios.length < 3 ? scale : Math.max(0.5, Math.min(3, ratios[ratios.length >> 1]!));
    if (Math.abs(next / scale - 1) < 0.04) break;
    scale = next;
    path = pathOf(lines, expected, scale);
  }
  return path;
}

/** Prices of a gap as one inside a word and as one between words. */
const inside = (odds: number): number => (odds >= DECIDED ? Infinity : Math.min(GAP_MOST, Math.max(0, GAP * odds)));
const between = (odds: number): number => (odds <= -DECIDED ? Infinity : Math.min(GAP_MOST, Math.max(0, -GAP * odds)));

function pathOf(lines: readonly PathLine[], words: readonly Expected[], scale: number): TextPath {
  const m = words.length;
  const offsets: number[] = [];
  let total = 0;
  for (const line of lines) {
    offsets.push(total);
    total += line.from.length;
  }
  // Where along the text each letter should be, by width.
  const textAt = new Float64Array(m + 1);
  words.forEach(({ width }, j) => (textAt[j + 1] = textAt[j]! + width + 0.6));
  const inkAt = new Float64Array(total + 1);
  let p = 0;
  for (const line of lines)
    line.from.forEach((from, k) => {
      inkAt[p + 1] = inkAt[p]! + Math.max(0, line.to[k]! - from) + 0.1;
      p += 1;
    });
  const band = BAND + Math.ceil(BAND_SHARE * m);
  const low = new Int32Array(total + 1);
  const high = new Int32Array(total + 1);
  for (let i = 0, j = 0; i <= total; i += 1) {
    const share = (inkAt[i]! / inkAt[total]!) * textAt[m]!;
    while (j < m && textAt[j + 1]! <= share) j += 1;
    low[i] = i === 0 ? 0 : Math.max(0, j - band);
    high[i] = i === total ? m : Math.min(m, j + band);
  }
  low[total] = Math.min(low[total]!, Math.max(0, m - 2 * band));
  const width = m + 1;
  const cost = new Float64Array((total + 1) * width).fill(Infinity);
  const from = new Int32Array((total + 1) * width).fill(-1);
  cost[0] = 0;
  const offer = (target: number, price: number, source: number): void => {
    if (price < cost[target]!) {
      cost[target] = price;
      from[target] = source;
    }
  };
  const pair = new Map<number, Expected>();
  const pairOf = (j: number): Expected => {
    let known = pair.get(j);
    if (!known) {
      known = joined(words[j]!, words[j + 1]!);
      pair.set(j, known);
    }
    return known;
  };
  lines.forEach((line, l) => {
    const n = line.from.length;
    for (let k = 0; k < n; k += 1) {
      const i = offsets[l]! + k;
      for (let j = low[i]!; j <= high[i]!; j += 1) {
        const here = i * width + j;
        if (cost[here]! < Infinity && j < m) offer(here + 1, cost[here]! + LEFT_OUT, here);
      }
      const before = k === 0 ? 0 : between(line.odds[k - 1]!);
      let gaps = 0;
      let right = -Infinity;
      const tall: number[] = [];
      const hanging: number[] = [];
      for (let q = k; q < n; q += 1) {
        if (q > k) gaps += inside(line.odds[q - 1]!);
        right = Math.max(right, line.to[q]!);
        tall.push(...line.tall[q]!);
        hanging.push(...line.hanging[q]!);
        const seen: Seen = { from: line.from[k]!, to: right, tall, hanging };
        const wide = right - line.from[k]!;
        if (wide > 40 || gaps > 16) break;
        const next = i + q - k + 1;
        const fixed = before + gaps;
        for (let j = low[i]!; j <= high[i]!; j += 1) {
          const here = i * width + j;
          const base = cost[here]!;
          if (base === Infinity) continue;
          if (wide < MOST_FOREIGN && j >= low[next]! && j <= high[next]!)
            offer(next * width + j, base + fixed + FOREIGN, here);
          if (j >= m) continue;
          const word = words[j]!;
          const ratio = wide / (scale * word.width);
          if (
            ratio < WIDEST &&
            (ratio > NARROWEST || word.letters < 3) &&
            j + 1 >= low[next]! &&
            j + 1 <= high[next]!
          ) {
            const mark = word.ends === line.ends[q]! ? 0 : MARK;
            offer(next * width + j + 1, base + fixed + mark + wordCost(seen, word, scale), here);
          }
          if (j + 1 < m && j + 2 >= low[next]! && j + 2 <= high[next]!) {
            const two = pairOf(j);
            const both = wide / (scale * two.width);
            if (both < 1.5 && both > 0.6) {
              const mark = two.ends === line.ends[q]! ? 0 : MARK;
              offer(next * width + j + 2, base + fixed + mark + TOUCHING + wordCost(seen, two, scale), here);
            }
          }
        }
      }
    }
  });
  for (let j = low[total]!; j < m; j += 1) {
    const here = total * width + j;
    if (cost[here]! < Infinity) offer(here + 1, cost[here]! + LEFT_OUT, here);
  }
  const stretches: Stretch[] = [];
  const missing: number[] = [];
  let here = total * width + m;
  if (cost[here] === Infinity)
    return { stretches, missing: words.map((_, j) => j), cost: Infinity, perWord: Infinity, scale };
  while (here !== 0) {
    const source = from[here]!;
    const [i, j] = [Math.floor(source / width), source % width];
    const [i1, j1] = [Math.floor(here / width), here % width];
    if (i1 === i) missing.push(j);
    else {
      let l = offsets.length - 1;
      while (offsets[l]! > i) l -= 1;
      const own: number[] = [];
      for (let w = j; w < j1; w += 1) own.push(w);
      stretches.push({ line: l, first: i - offsets[l]!, last: i1 - offsets[l]!, words: own });
    }
    here = source;
  }
  stretches.reverse();
  missing.reverse();
  const sum = cost[total * width + m]!;
  return { stretches, missing, cost: sum, perWord: sum / Math.max(1, m), scale };
}

/** Two words written without a gap. */
function joined(a: Expected, b: Expected): Expected {
  const width = a.width + b.width + 0.4;
  const [left, right] = [a.width / width, (a.width + 0.4) / width];
  return {
    text: `${a.text} ${b.text}`,
    letters: a.letters + b.letters,
    width,
    tall: [
      ...a.tall.map((p) => ({ ...p, at: p.at * left })),
      ...b.tall.map((p) => ({ ...p, at: right + (p.at * b.width) / width })),
    ],
    hanging: [
      ...a.hanging.map((p) => ({ ...p, at: p.at * left })),
      ...b.hanging.map((p) => ({ ...p, at: right + (p.at * b.width) / width })),
    ],
    ends: b.ends,
  };
}
