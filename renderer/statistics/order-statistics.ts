/** Order statistics on small lists. Empty lists answer null: an unknown is never NaN. */

/** The k-th smallest (from 0) of the first `count` values by Hoare's selection; reorders them. */
function select(values: Float64Array, k: number, count = values.length): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1]!;
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i += 1;
      while (values[j]! > pivot) j -= 1;
      if (i <= j) {
        const kept = values[i]!;
        values[i] = values[j]!;
        values[j] = kept;
        i += 1;
        j -= 1;
      }
    }
    if (k <= j) high = j;
    else if (k >= i) low = i;
    else break;
  }
  return values[k]!;
}

/** Room for a copy of the values: thousands of short lists are looked through for a page. */
let scratch = new Float64Array(1024);

/** Quantile q (0 to 1), linear between order statistics (type 7). */
export function quantile(values: ArrayLike<number>, q: number): number | null {
  const n = values.length;
  if (n === 0) return null;
  if (scratch.length < n) scratch = new Float64Array(2 * n);
  const copy = scratch;
  for (let i = 0; i < n; i += 1) copy[i] = values[i]!;
  const at = (n - 1) * q;
  const k = Math.floor(at);
  const lower = select(copy, k, n);
  if (k === at || k + 1 >= n) return lower;
  let upper = Infinity;
  for (let i = k + 1; i < n; i += 1) if (copy[i]! < upper) upper = copy[i]!;
  return lower + (upper - lower) * (at - k);
}

export function median(values: ArrayLike<number>): number | null {
  return quantile(values, 0.5);
}

/** Median of bytes: counted, not sorted. */
export function medianOfBytes(values: Uint8Array): number | null {
  const n = values.length;
  if (n === 0) return null;
  byteCounts.fill(0);
  for (let i = 0; i < n; i += 1) byteCounts[values[i]!]! += 1;
  let lower = 0;
  let seen = byteCounts[0]!;
  while (seen <= (n - 1) >> 1) seen += byteCounts[++lower]!;
  let upper = lower;
  while (seen <= n >> 1) seen += byteCounts[++upper]!;
  return (lower + upper) / 2;
}

const byteCounts = new Int32Array(256);

/** Robust standard deviation: 1.4826 times the median absolute deviation (normal consistency). */
export function robustSd(values: ArrayLike<number>): number | null {
  const middle = median(values);
  if (middle === null) return null;
  return 1.4826 * median(new Float64Array(values).map((v) => Math.abs(v - middle)))!;
}

/** Indices of the values in order of size, equal ones as they come: merged from ever longer sorted stretches. */
export function sortedOrder(values: Float64Array): Int32Array {
  const n = values.length;
  let order = new Int32Array(n);
  let merged = new Int32Array(n);
  for (let i = 0; i < n; i += 1) order[i] = i;
  for (let size = 1; size < n; size *= 2) {
    for (let start = 0; start < n; start += 2 * size) {
      const middle = Math.min(start + size, n);
      const end = Math.min(start + 2 * size, n);
      let left = start;
      let right = middle;
      for (let k = start; k < end; k += 1) {
        const takesLeft = right >= end || (left < middle && values[order[left]!]! <= values[order[right]!]!);
        merged[k] = takesLeft ? order[left++]! : order[right++]!;
      }
    }
    [order, merged] = [merged, order];
  }
  return order;
}

export function mean(values: ArrayLike<number>): number | null {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]!;
  return values.length === 0 ? null : sum / values.length;
}

/** Sum of the squares about the mean; 0 without values. */
export function scatter(values: ArrayLike<number>): number {
  const middle = mean(values) ?? 0;
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += (values[i]! - middle) ** 2;
  return sum;
}

/** Sample standard deviation (n - 1); null below two values. */
export function standardDeviation(values: ArrayLike<number>): number | null {
  return values.length < 2 ? null : Math.sqrt(scatter(values) / (values.length - 1));
}
