import { align } from './align.ts';

/** A written line as the page measurement found it: its words' texts where known. */
export interface FoundLine {
  words: readonly { text: string | null }[];
}

/**
 * Which intended words stand in which written line. Line breaks typed by the therapist win; then the texts that the
 * measurement gave to words; else the words are dealt out by how many words each line was found to have.
 * @param text intended text, a line break for each written line where known
 * @param found lines found on the page, top to bottom; empty when there is no page
 */
export function assignLines(text: string, found: readonly FoundLine[]): string[] {
  const typed = text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (found.length === 0 || typed.length === found.length) return typed;
  const all = typed.join(' ').split(/\s+/).filter(Boolean);
  if (all.length === 0) return found.map(() => '');
  const known = found.map((line) => line.words.map((word) => word.text ?? ''));
  if (known.flat().filter(Boolean).length === all.length) return byKnownWords(all, known);
  return byCount(
    all,
    known.map((line) => line.length),
  );
}

function byKnownWords(all: readonly string[], known: readonly string[][]): string[] {
  const owners = known.flatMap((line, index) => line.filter(Boolean).map((word) => ({ word, index })));
  const lines: string[][] = known.map(() => []);
  let at = 0;
  let line = 0;
  for (const step of align(
    all,
    owners.map((o) => o.word),
  )) {
    if (step.read !== null) line = owners[at++]!.index;
    if (step.intended !== null) lines[line]!.push(step.intended);
  }
  return lines.map((words) => words.join(' '));
}

/** Deals words to lines in proportion to the words found in each; every word has a line. */
function byCount(all: readonly string[], counts: readonly number[]): string[] {
  const total = counts.reduce((sum, count) => sum + count, 0);
  let seen = 0;
  let start = 0;
  return counts.map((count, i) => {
    seen += count;
    const end = i === counts.length - 1 || total === 0 ? all.length : Math.round((seen / total) * all.length);
    const line = all.slice(start, end).join(' ');
    start = end;
    return line;
  });
}
