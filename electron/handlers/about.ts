import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { aboutRequests } from '../contract/about.ts';
import { Refusal } from '../contract/envelope.ts';
import { backupNames, backupsFolder } from '../files/backup/backup-list.ts';
import { diagnosticText, versionRows } from '../files/diagnostics.ts';
import { keepPlace, lastPlace } from '../files/last-place.ts';
import type { Handler } from './handler.ts';
import type { Services } from './services.ts';

const NOTICES = 'THIRD-PARTY-NOTICES.txt';

interface Locked {
  version?: string;
  license?: string;
  dev?: boolean;
}

/** The notices of the package; in a copy of the sources, the list that the lock file gives. */
function licences(appRoot: string): string {
  // Electron puts them beside the program's archive.
  const beside = (process as { resourcesPath?: string }).resourcesPath ?? appRoot;
  for (const file of [path.join(beside, NOTICES), path.join(appRoot, 'dist', NOTICES)]) {
    if (existsSync(file)) return readFileSync(file, 'utf8');
  }
  const lock = path.join(appRoot, 'package-lock.json');
  if (!existsSync(lock)) throw new Refusal('not-found');
  const { packages } = JSON.parse(readFileSync(lock, 'utf8')) as { packages: Record<string, Locked> };
  const rows = Object.entries(packages)
    .filter(([place, { dev }]) => place !== '' && !dev)
    .map(
      ([place, { version, license }]) => `${place.split('node_modules/').at(-1)} ${version} (${license ?? 'unknown'})`,
    );
  return `Fairhand contains these open-source packages; the text of each licence lies in node_modules.\n\n${[...new Set(rows)].sort().join('\n')}\n`;
}

function diagnostics(services: Services): string {
  const { options, caseload } = services;
  const status = services.status();
  return diagnosticText({
    version: options.version,
    shell: options.shell,
    now: options.now().toISOString(),
    folder: services.folder,
    state: status.state,
    demo: status.demo,
    damageFound: status.damageFound,
    missing: status.missing,
    schema: caseload?.schemaVersion ?? null,
    counts: caseload?.counts() ?? null,
    backups: backupNames(backupsFolder(services.folder)).length,
    lastBackupAt: status.lastBackupAt,
    secondPlace: services.secondPlace() !== '',
  });
}

export const aboutHandlers: { [N in keyof typeof aboutRequests]: Handler<N> } = {
  'about.facts': (services) => {
    const { options, folder, caseload } = services;
    const words = services.told().system.about;
    const tables = caseload ? [{ what: words.tables, is: String(caseload.schemaVersion) }] : [];
    return { rows: [...versionRows(options.version, options.shell, words), ...tables], folder };
  },
  'about.licences': ({ options }) => ({ text: licences(options.appRoot ?? process.cwd()) }),
  'about.diagnostics': (services) => ({ text: diagnostics(services) }),
  'about.saveDiagnostics': async (services) => {
    const bytes = new TextEncoder().encode(diagnostics(services));
    const suggestedName = `fairhand-help-${services.today()}.txt`;
    try {
      return { saved: (await services.options.port.chooseSave({ suggestedName, bytes, mime: 'text/plain' })).saved };
    } catch {
      throw new Refusal('save-failed');
    }
  },
  'about.keepPlace': ({ folder, signedIn }, { at }) => {
    keepPlace(folder, at, signedIn.id);
    return {};
  },
  'about.lastPlace': ({ folder, signedIn }) => ({ at: lastPlace(folder, signedIn.id) }),
};
