/**
 * Do the options of a trial differ? Exact permutation test within blocks: under "no difference" each order of the
 * values within a block was equally likely. With 6 blocks of 2 the smallest p is 2 / 2^6 = .031.
 * Method: randomization test of alternating treatments (Edgington; from memory).
 */

/** All orders of 0 to n - 1. */
export function orders(n: number): number[][] {
  if (n <= 1) return n === 1 ? [[0]] : [[]];
  return orders(n - 1).flatMap((rest) =>
    Array.from({ length: n }, (_, at) => [...rest.slice(0, at), n - 1, ...rest.slice(at)]),
  );
}

/** Spread of the options' sums: squares about their mean. */
function spread(sums: readonly number[]): number {
  const mean = sums.reduce((a, b) => a + b, 0) / sums.length;
  return sums.reduce((total, sum) => total + (sum - mean) ** 2, 0);
}

/**
 * Share of all orders within blocks whose options lie at least as far apart as those seen.
 * @param blocks a row a block, a value an option; every row as long
 * @returns p from above 0 to 1; null without a block or with fewer than two options
 * @throws RangeError beyond ten million orders or with rows of unequal length
 */
export function blockPermutation(blocks: readonly (readonly number[])[]): number | null {
  const options = blocks[0]?.length ?? 0;
  if (options < 2) return null;
  if (blocks.some((row) => row.length !== options)) throw new RangeError('Every block must hold every option once.');
  const ways = orders(options);
  if (ways.length ** (blocks.length - 1) > 10_000_000) throw new RangeError('Too many blocks for an exact test.');
  const seen = spread(ways[0]!.map((_, option) => blocks.reduce((sum, row) => sum + row[option]!, 0)));
  // By symmetry the first block may stay as it is: which option is called which does not matter to the spread.
  let as = 0;
  let all = 0;
  const sums = [...blocks[0]!];
  const go = (at: number): void => {
    if (at === blocks.length) {
      all += 1;
      if (spread(sums) >= seen - 1e-9) as += 1;
      return;
    }
    for (const way of ways) {
      way.forEach((from, option) => (sums[option]! += blocks[at]![from]!));
      go(at + 1);
      way.forEach((from, option) => (sums[option]! -= blocks[at]![from]!));
    }
  };
  go(1);
  return as / all;
}
