/**
 * Passphrases that are long and still guessed at once: one piece repeated, very few letters, or letters as they stand in
 * the alphabet or on the keyboard. Common practice, no source; it knows no list of common words.
 */
const ROWS = ['abcdefghijklmnopqrstuvwxyz', '01234567890', 'qwertyuiop', 'asdfghjkl', 'zxcvbnm', 'qwertz', 'azerty'];
const RUNS = ROWS.flatMap((row) => [row, [...row].reverse().join('')]);

/** Runs of four and more of a row, each counted as one letter. */
function withoutRuns(text: string): string {
  let left = '';
  for (let at = 0; at < text.length;) {
    let length = 1;
    for (let n = 4; at + n <= text.length && RUNS.some((run) => run.includes(text.slice(at, at + n))); n++) length = n;
    left += text[at];
    at += length;
  }
  return left;
}

export function isWeak(passphrase: string): boolean {
  const plain = passphrase
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');
  const once = /^(.+?)\1+$/u.exec(plain)?.[1] ?? plain;
  if (once !== plain && once.length < 12) return true;
  const told = withoutRuns(once);
  return [...told].length < 8 || new Set(told).size < 6;
}
