/** Runs the demo visit in a hidden window on a folder of its own, and leaves its pages and pictures in `--out`. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { DemoResult } from './demo-visit.ts';
import { DemoVisit } from './demo-visit.ts';
import { hiddenProblems, inHiddenWindow } from './hidden.ts';

/**
 * Walks the demo caseload. Its clients are invented, so its folder may lie among the temporary files; it is removed.
 * @param out folder that gets the pages and pictures
 * @param tell gets one line a step
 * @returns what was written, or a sentence that says why nothing was
 */
export async function runDemo(out: string, tell: (line: string) => void): Promise<DemoResult | { error: string }> {
  const folder = mkdtempSync(path.join(tmpdir(), 'fairhand-demo-'));
  const saved: string[] = [];
  try {
    const outcome = await inHiddenWindow(
      {
        dataFolder: path.join(folder, 'caseload'),
        save: async (save) => {
          // Named for the page alone, so that the next visit replaces it.
          const name = `${/[a-z]+-[a-z]+/.exec(save.suggestedName)?.[0] ?? 'page'}${path.extname(save.suggestedName)}`;
          writeFileSync(path.join(out, name), save.bytes);
          saved.push(name);
          return { saved: true, name };
        },
      },
      ({ page }) => new DemoVisit(page, out, tell).run(),
    );
    if ('problem' in outcome) return { error: hiddenProblems[outcome.problem] };
    return { ...outcome.done, files: [...outcome.done.files, ...saved] };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** `--data` is taken and not used: `npm start` passes its options on, and the demo has a folder of its own. */
function options(): { out?: string } | null {
  try {
    return parseArgs({ options: { out: { type: 'string' }, data: { type: 'string' } } }).values;
  } catch {
    return null;
  }
}

async function main(): Promise<void> {
  const tell = (line: string) => void process.stdout.write(`${line}\n`);
  const wanted = options();
  if (!wanted) {
    tell('The only option of the demo visit is --out FOLDER, where its pages and pictures go. Nothing was started.');
    process.exitCode = 2;
    return;
  }
  const out = path.resolve(wanted.out ?? 'out');
  const result = await runDemo(out, tell);
  if ('error' in result) {
    tell(result.error);
    process.exitCode = 2;
    return;
  }
  for (const problem of result.problems) tell(problem);
  tell(`The demo visit left ${result.files.length} files in ${out}.`);
  process.exitCode = result.problems.length > 0 ? 1 : 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
