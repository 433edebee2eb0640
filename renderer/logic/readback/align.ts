/** One step from what was intended to what was read; null marks the missing side. */
export interface Step<T> {
  kind: 'match' | 'substitute' | 'delete' | 'insert';
  intended: T | null;
  read: T | null;
}

const MATCH = 0;
const SUBSTITUTE = 1;
const DELETE = 2;
const INSERT = 3;
const KINDS = ['match', 'substitute', 'delete', 'insert'] as const;

/**
 * Shortest way from one sequence to another, unit costs. Among equally short ways the one found by walking back
 * from the end and preferring match, then substitute, then delete, then insert, so that the answer is always the same.
 * Source: Levenshtein distance; Jurafsky & Martin, Speech and Language Processing (from memory).
 */
export function align<T>(intended: readonly T[], read: readonly T[], same?: (a: T, b: T) => boolean): Step<T>[] {
  const width = read.length + 1;
  // Two rows of costs and two bits a cell for the way back: a long text must not need gigabytes.
  const ways = new Uint8Array(Math.ceil(((intended.length + 1) * width) / 4));
  const put = (cell: number, way: number) => (ways[cell >> 2]! |= way << ((cell & 3) * 2));
  const [a, b] = numbered(intended, read);
  let above = Uint32Array.from({ length: width }, (_, j) => j);
  let row = new Uint32Array(width);
  for (let j = 1; j < width; j++) put(j, INSERT);
  for (let i = 1; i <= intended.length; i++) {
    row[0] = i;
    put(i * width, DELETE);
    for (let j = 1; j < width; j++) {
      const match = same ? same(intended[i - 1]!, read[j - 1]!) : a[i - 1] === b[j - 1];
      const diagonal = above[j - 1]! + (match ? 0 : 1);
      const down = above[j]! + 1;
      const across = row[j - 1]! + 1;
      const other = down < across ? down : across;
      const cost = diagonal < other ? diagonal : other;
      row[j] = cost;
      if (cost === diagonal) put(i * width + j, match ? MATCH : SUBSTITUTE);
      else put(i * width + j, cost === down ? DELETE : INSERT);
    }
    [above, row] = [row, above];
  }
  const steps: Step<T>[] = [];
  let i = intended.length;
  let j = read.length;
  while (i > 0 || j > 0) {
    const cell = i * width + j;
    const way = (ways[cell >> 2]! >> ((cell & 3) * 2)) & 3;
    const kind = KINDS[way]!;
    steps.push({
      kind,
      intended: way === INSERT ? null : intended[--i]!,
      read: way === DELETE ? null : read[--j]!,
    });
  }
  return steps.reverse();
}

/** The same sequences as numbers, equal where the members are: comparing numbers is what takes the time. */
function numbered<T>(first: readonly T[], second: readonly T[]): [Int32Array, Int32Array] {
  const numbers = new Map<T, number>();
  const number = (member: T) => {
    const known = numbers.get(member) ?? numbers.size;
    numbers.set(member, known);
    return known;
  };
  return [Int32Array.from(first, number), Int32Array.from(second, number)];
}

/** Number of edits in an alignment. */
export function edits(steps: readonly Step<unknown>[]): number {
  return steps.filter((step) => step.kind !== 'match').length;
}
