/**
 * `node build/hooks/commit-subject.js FILE`: refuses a commit message (exit 1) whose subject is empty, over 72 characters or
 * ends in a period. Run by build/hooks/commit-msg, on the machine's own Node: plain JavaScript.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const MOST = 72;

/** What is wrong with a commit's first line; null = nothing. Merges and marks of an interactive rebase pass. */
export function wrongWithSubject(subject) {
  if (/^(Merge |Revert "|fixup! |squash! |amend! )/.test(subject)) return null;
  const length = [...subject].length;
  if (length === 0) return 'The subject is empty.';
  if (length > MOST) return `The subject has ${length} characters, ${MOST} are the most.`;
  return subject.endsWith('.') ? 'The subject ends in a period.' : null;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [subject = ''] = readFileSync(process.argv[2], 'utf8')
    .split('\n')
    .filter((line) => !line.startsWith('#'));
  const wrong = wrongWithSubject(subject.trimEnd());
  if (wrong) {
    process.stderr.write(`${wrong} Nothing was committed: say it shorter and put the why into the body.\n`);
    process.exitCode = 1;
  }
}
