/**
 * A text for whoever helps: versions, sizes, counts and the kinds of recent failures. It is made of a fixed list of
 * facts, none of which is typed by anybody; names, codes, notes, initials, clinic and passphrases are not among them.
 */
import type { Told } from '../../renderer/logic/texts/screens/en/screens-en.ts';
import { readdirSync, statSync } from 'node:fs';
import { arch, homedir, platform, release, totalmem } from 'node:os';
import path from 'node:path';
import { CHANGE_VERSION } from '../../renderer/change/index.ts';
import { METHOD_VERSION } from '../../renderer/measure/index.ts';
import { ruleVersion } from '../../db/rules/index.ts';
import { toldEnglish } from '../../renderer/logic/texts/screens/told-english.ts';

/** One request that failed: its name and the kind of error, never what the error said. */
export interface Failure {
  at: string;
  request: string;
  kind: string;
}

const MOST_FAILURES = 40;
const failures: Failure[] = [];

export function noteFailure(failure: Failure): void {
  failures.push(failure);
  if (failures.length > MOST_FAILURES) failures.shift();
}

/** Versions of the program and of what it runs on. */
export function versionRows(
  version: string,
  shell: string,
  words: Told['system']['about'],
): { what: string; is: string }[] {
  const { versions } = process;
  const rows: [string, string | undefined][] = [
    ['Fairhand', version],
    [words.window, shell === 'electron' ? `Electron ${versions['electron'] ?? ''}` : words.browser],
    ['Chromium', versions['chrome']],
    ['Node', versions.node],
    [words.system, `${platform()} ${release()} ${arch()}`],
    [words.ruleTable, ruleVersion],
    [words.measures, METHOD_VERSION],
    [words.change, CHANGE_VERSION],
  ];
  return rows.flatMap(([what, is]) => (is ? [{ what, is }] : []));
}

/** Names that Fairhand itself gives; anything else in the folder is told by its ending only. */
const OURS =
  /^(caseload\.[a-z-]+(\.json)?(-wal|-shm)?|backups|copies|set-aside|exports|demo|second-place\.json|profile)$/;

function folderLines(folder: string): string[] {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .map((entry) => {
        const known = OURS.test(entry.name)
          ? entry.name
          : `something else (${path.extname(entry.name) || 'no ending'})`;
        if (entry.isDirectory()) return `${known}: a folder`;
        return `${known}: ${statSync(path.join(folder, entry.name)).size} bytes`;
      })
      .sort();
  } catch (error) {
    return [`cannot be listed: ${(error as NodeJS.ErrnoException).code ?? 'unknown'}`];
  }
}

export interface Condition {
  version: string;
  shell: string;
  now: string;
  folder: string;
  state: string;
  demo: boolean;
  damageFound: boolean;
  missing: string;
  schema: number | null;
  counts: Readonly<Record<string, number>> | null;
  backups: number;
  lastBackupAt: string | null;
  secondPlace: boolean;
}

/** A path without the name of the account. */
export const withoutHome = (folder: string, home = homedir()): string =>
  home !== '' && folder.startsWith(home) ? `~${folder.slice(home.length)}` : '(a folder outside the home folder)';

export function diagnosticText(now: Condition, recent: readonly Failure[] = failures): string {
  const counts = Object.entries(now.counts ?? {}).map(([kind, count]) => `${kind}: ${count}`);
  const parts: [string, string[]][] = [
    ['Made', [now.now]],
    ['Versions', versionRows(now.version, now.shell, toldEnglish.system.about).map(({ what, is }) => `${what}: ${is}`)],
    ['Machine', [`memory: ${Math.round(totalmem() / 2 ** 20)} MB`]],
    ['Folder', [withoutHome(now.folder), ...folderLines(now.folder)]],
    [
      'Caseload',
      [
        `state: ${now.state}${now.demo ? ', demo' : ''}`,
        `version of the tables: ${now.schema ?? 'not open'}`,
        `damage found: ${now.damageFound ? 'yes' : 'no'}`,
        `missing at opening: ${now.missing}`,
        `backups: ${now.backups}, newest ${now.lastBackupAt ?? 'none or not open'}`,
        `second place for backups: ${now.secondPlace ? 'set' : 'not set or not open'}`,
      ],
    ],
    ['How many', counts.length ? counts : ['not open']],
    [
      'Failures since the start',
      recent.length ? recent.map(({ at, request, kind }) => `${at} ${request}: ${kind}`) : ['none'],
    ],
  ];
  const words = parts.map(([title, lines]) => `${title}\n${lines.map((line) => `  ${line}`).join('\n')}`);
  return ['Fairhand, for whoever helps. Nothing in it names a client or says what was recorded.', ...words, ''].join(
    '\n\n',
  );
}
