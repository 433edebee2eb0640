/** One step from what was intended to what was read; null marks the missing side. */
export interface Step<T> {
  kind: 'match' | 'substitute' | 'delete' | 'insert';
  intended: T | null;
  read: T | null;
}

/**
 * Shortest way from one sequence to another, unit costs. Among equally short ways the one found by walking back
 * from the end and preferring match, then substitute, then delete, then insert, so that the answer is always the same.
 * Source: Levenshtein distance; Jurafsky & Martin, Speech and Language Processing (from memory).
 */
export function align<T>(
  intended: readonly T[],
  read: readonly T[],
  same: (a: T, b: T) => boolean = (a, b) => a === b,
): Step<T>[] {
  const width = read.length + 1;
  const cost = new Uint32Array((intended.length + 1) * width);
  for (let j = 0; j < width; j++) cost[j] = j;
  for (let i = 1; i <= intended.length; i++) {
    cost[i * width] = i;
    for (let j = 1; j < width; j++) {
      const diagonal = cost[(i - 1) * width + j - 1]! + (same(intended[i - 1]!, read[j - 1]!) ? 0 : 1);
      cost[i * width + j] = Math.min(diagonal, cost[(i - 1) * width + j]! + 1, cost[i * width + j - 1]! + 1);
    }
  }
  const steps: Step<T>[] = [];
  let i = intended.length;
  let j = read.length;
  while (i > 0 || j > 0) {
    const here = cost[i * width + j]!;
    const diagonal = i > 0 && j > 0 ? cost[(i - 1) * width + j - 1]! : Infinity;
    if (diagonal === here && same(intended[i - 1]!, read[j - 1]!)) {
      steps.push({ kind: 'match', intended: intended[--i]!, read: read[--j]! });
    } else if (diagonal + 1 === here) {
      steps.push({ kind: 'substitute', intended: intended[--i]!, read: read[--j]! });
    } else if (i > 0 && cost[(i - 1) * width + j]! + 1 === here) {
      steps.push({ kind: 'delete', intended: intended[--i]!, read: null });
    } else {
      steps.push({ kind: 'insert', intended: null, read: read[--j]! });
    }
  }
  return steps.reverse();
}

/** Number of edits in an alignment. */
export function edits(steps: readonly Step<unknown>[]): number {
  return steps.filter((step) => step.kind !== 'match').length;
}
