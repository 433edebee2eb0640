/**
 * `npm run torture`: the long runs behind the README's figures. The report is kept in tests/torture-report.json.
 * Options: --kills N, --backup-kills N, --key-kills N, --pen-kills N, --fuzz N (backup files), --files N, --ink N (ink files), --gigabytes N, --clients N, --messages N, --imports N, --trails N, --wait SECONDS, --shares N, --share WALK@N/OF, --windows N, --seed N,
 * --only PART, --out FILE.
 * The walk for leaks takes 3.5 hours in one window: each long walk is cut into --shares, each with a caseload and a
 * window of its own, and --windows of them are open side by side (half a gigabyte each). leaksOfOneShare walks through
 * one of them alone, and only when it is asked for.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, release } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { backupFuzz, backupKillTest } from './torture/backups.ts';
import { fuzz } from './torture/fuzz/index.ts';
import { importTest } from './torture/imports.ts';
import { keyChangeKilledAtEachStep } from './torture/key-change-steps.ts';
import { keyChangeKillTest } from './torture/key-change.ts';
import { killTest } from './torture/kill.ts';
import { peopleKilledAtEachStep } from './torture/people/people-kill.ts';
import { penKillTest } from './torture/pen-kill.ts';
import { leakTest, type WalkOptions } from './torture/leaks/index.ts';
import { printTest } from './torture/leaks/printed.ts';
import { migrationKillTest } from './torture/migration.ts';
import { memoryTest } from './torture/memory/index.ts';
import { messageTest } from './torture/messages.ts';
import { picturesAtScale } from './torture/scale-pictures.ts';
import { scaleTest } from './torture/scale.ts';
import { trailTest } from './torture/trail.ts';

const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '1000' },
    'key-kills': { type: 'string', default: '200' },
    'pen-kills': { type: 'string', default: '100' },
    'backup-kills': { type: 'string', default: '100' },
    fuzz: { type: 'string', default: '5000' },
    imports: { type: 'string', default: '2000' },
    trails: { type: 'string', default: '200' },
    ink: { type: 'string', default: '5000' },
    files: { type: 'string', default: '10000' },
    /** Pictures of the large caseload; less where the disk is short. */
    gigabytes: { type: 'string', default: '20' },
    clients: { type: 'string', default: '5000' },
    messages: { type: 'string', default: '100000' },
    /** How long each screen stays open in the search for leaks, in seconds. */
    wait: { type: 'string', default: '120' },
    /** Into how many shares each of its long walks is cut. */
    shares: { type: 'string', default: '3' },
    /** What leaksOfOneShare walks through: WALK@N/OF. */
    share: { type: 'string', default: 'few@0/1' },
    /** How many windows it goes through side by side. */
    windows: { type: 'string', default: '6' },
    seed: { type: 'string', default: '20260304' },
    /** Name of one part; the others of the last report stay. */
    only: { type: 'string' },
    out: { type: 'string', default: fileURLToPath(new URL('../tests/torture-report.json', import.meta.url)) },
  },
});
const seed = Number(values.seed);

/** The runs of other kinds keep their own parts of the report. */
function previous(): Record<string, unknown> {
  try {
    return JSON.parse(readFileSync(values.out, 'utf8')) as Record<string, unknown>;
  } catch {
    return {};
  }
}

const report: Record<string, unknown> = {
  ...previous(),
  seed,
  on: `${process.platform} ${release()}, ${cpus().length} cores, Node ${process.version}`,
};
let faults = 0;
async function part(name: string, run: () => Promise<{ faults: string[]; lost?: number }>): Promise<void> {
  const began = performance.now();
  const result = await run();
  const seconds = Math.round((performance.now() - began) / 1000);
  report[name] = { ...result, seconds };
  faults += result.faults.length + (result.lost ?? 0);
  console.log(`${name}: ${JSON.stringify(report[name])}`);
  writeFileSync(values.out, `${JSON.stringify(report, null, 2)}\n`);
}

const allWalks: WalkOptions[] = [
  ...Array.from({ length: Number(values.shares) }, (_, n) => `${n}/${values.shares}`).flatMap((share) =>
    (['demo', 'hidden', 'all'] as const).map((walk) => ({ walk, ending: 'closed' as const, share })),
  ),
  ...(['window killed', 'main killed', 'both killed', 'page crashed', 'main crashed'] as const).map((ending) => ({
    walk: 'few' as const,
    ending,
  })),
];
/** 'hidden@3/6': the fourth of six shares of that walk. */
function oneShare(said: string): WalkOptions {
  const [walk, share] = said.split('@');
  return { walk: walk as WalkOptions['walk'], ending: 'closed', ...(share !== undefined && { share }) };
}
/** A share alone is not blamed for the fields that others reach. */
const leaks = (walks: readonly WalkOptions[], everyField: boolean) =>
  leakTest({
    walks,
    waitMs: Number(values.wait) * 1000,
    atOnce: Number(values.windows),
    hands: cpus().length,
    everyField,
    places: ['/'],
    tell: (where) => console.error(where),
  });

const parts: Record<string, () => Promise<{ faults: string[]; lost?: number }>> = {
  migrationKilledAtEveryStatement: () => migrationKillTest(1),
  backupFilesMutated: () => backupFuzz(Number(values.fuzz), seed),
  filesMutated: () => fuzz(Number(values.files), seed),
  inkFilesMutated: () => fuzz(Number(values.ink), seed, ['ink']),
  randomMessages: () => messageTest(Number(values.messages), seed),
  backupAndRestoreKilled: () => backupKillTest(Number(values['backup-kills']), seed),
  fiveThousandClients: () => scaleTest(5000, 10, seed),
  picturesOfYears: () => picturesAtScale(Number(values.clients), 10, Number(values.gigabytes), seed),
  penKilled: () => penKillTest(Number(values['pen-kills']), seed),
  importsSpoiled: () => importTest(Number(values.imports), seed),
  trailTampered: () => trailTest(Number(values.trails), seed),
  memoryAfterTheLock: memoryTest,
  keyChangeKilledAtEachStep: async () =>
    (await keyChangeKilledAtEachStep()) ?? { kills: 0, faults: ['strace is not here or may not trace'] },
  peopleKilledAtEachStep: async () =>
    (await peopleKilledAtEachStep()) ?? { kills: 0, faults: ['strace is not here or may not trace'] },
  keyChangeKilled: () => keyChangeKillTest(Number(values['key-kills']), seed),
  leaks: () => leaks(allWalks, true),
  leaksOfOneShare: () => leaks([oneShare(values.share)], false),
  printedOnPaper: async () =>
    (await printTest()) ?? { faults: ['no print queue can be started here: it takes CUPS (cups-daemon), and root'] },
  typistKilled: () =>
    killTest(Number(values.kills), seed, (done) => {
      if (process.stderr.isTTY) process.stderr.write(`\r${done} kills`);
    }),
};
for (const [name, run] of Object.entries(parts))
  if (values.only === name || (values.only === undefined && name !== 'leaksOfOneShare')) await part(name, run);
console.log(faults === 0 ? 'Nothing was lost, nothing was damaged.' : `${faults} faults.`);
process.exitCode = faults === 0 ? 0 : 1;
