/** Horizontal runs of equal pixels: a page has some hundred thousand of them where it has millions of pixels. */
export interface Runs {
  width: number;
  height: number;
  count: number;
  /** First run of each row; `rows[height]` is the count. */
  rows: Int32Array;
  /** First column of each run. */
  from: Int32Array;
  /** Column after the last of each run. */
  to: Int32Array;
}

/** Room for runs that grows as needed. */
class RunList {
  count = 0;
  from = new Int32Array(1 << 14);
  to = new Int32Array(1 << 14);
  add(from: number, to: number): void {
    if (this.count === this.from.length) {
      this.from = grown(this.from);
      this.to = grown(this.to);
    }
    this.from[this.count] = from;
    this.to[this.count] = to;
    this.count += 1;
  }
}

function grown(list: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(list.length * 2);
  larger.set(list);
  return larger;
}

/** Runs of pixels that equal 1 in a bitmap of bytes (other values count as paper). Zeros are skipped four at a time. */
export function inkRuns(bitmap: Uint8Array, width: number, height: number): Runs {
  const list = new RunList();
  const rows = new Int32Array(height + 1);
  const words =
    bitmap.byteOffset % 4 === 0 && width % 4 === 0
      ? new Uint32Array(bitmap.buffer, bitmap.byteOffset, bitmap.length >> 2)
      : null;
  for (let y = 0; y < height; y += 1) {
    rows[y] = list.count;
    const row = y * width;
    const end = row + width;
    let i = row;
    while (i < end) {
      if (words && (i & 3) === 0) {
        let w = i >> 2;
        const last = end >> 2;
        while (w < last && words[w] === 0) w += 1;
        i = w << 2;
        if (i >= end) break;
      }
      if (bitmap[i] !== 1) {
        i += 1;
        continue;
      }
      const start = i;
      while (i < end && bitmap[i] === 1) i += 1;
      list.add(start - row, i - row);
    }
  }
  rows[height] = list.count;
  return { width, height, count: list.count, rows, from: list.from, to: list.to };
}

/** The runs of a picture from those of its parts, from top to bottom, with room of their own. */
export function joinedRuns(parts: readonly Runs[]): Runs {
  const sum = (of: (part: Runs) => number): number => parts.reduce((total, part) => total + of(part), 0);
  const height = sum((part) => part.height);
  const count = sum((part) => part.count);
  const rows = new Int32Array(height + 1);
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  let [row, run] = [0, 0];
  for (const part of parts) {
    for (let y = 0; y < part.height; y += 1) rows[row + y] = run + part.rows[y]!;
    from.set(part.from.subarray(0, part.count), run);
    to.set(part.to.subarray(0, part.count), run);
    row += part.height;
    run += part.count;
  }
  rows[height] = count;
  return { width: parts[0]?.width ?? 0, height, count, rows, from, to };
}

/** The runs between the runs: paper where they are ink. */
export function paperRuns(ink: Runs): Runs {
  const { width, height } = ink;
  // A row has one more at most.
  const from = new Int32Array(ink.count + height);
  const to = new Int32Array(ink.count + height);
  const rows = new Int32Array(height + 1);
  let count = 0;
  for (let y = 0; y < height; y += 1) {
    let x = 0;
    for (let r = ink.rows[y]!, end = ink.rows[y + 1]!; r < end; r += 1) {
      const left = ink.from[r]!;
      if (left > x) {
        from[count] = x;
        to[count] = left;
        count += 1;
      }
      x = ink.to[r]!;
    }
    if (x < width) {
      from[count] = x;
      to[count] = width;
      count += 1;
    }
    rows[y + 1] = count;
  }
  return { width, height, count, rows, from, to };
}
