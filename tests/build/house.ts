/** Counts of what the house promises: each names what breaks the promise. Files are paths from the root, with `/`. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { METHOD_VERSION } from '../../renderer/measure/version.ts';
import { rulesCurrent, ruleVersion } from '../../db/rules/index.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Every file of the house, in order. */
const files: readonly string[] = ['build', 'db', 'electron', 'renderer', 'tests']
  .flatMap((room) => readdirSync(path.join(root, room), { recursive: true, withFileTypes: true }))
  .filter((entry) => entry.isFile())
  .map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)).replaceAll(path.sep, '/'))
  .filter((file) => !/(^|\/)(node_modules|__pycache__)\/|\.DS_Store$/.test(file))
  .sort();

const textOf = (file: string): string => readFileSync(path.join(root, file), 'utf8');

/** Code that ships: no tests, no declarations of what is not TypeScript. */
const code = files.filter((file) => /^(renderer|electron|db)\/.*\.(ts|svelte)$/.test(file) && !file.endsWith('.d.ts'));

/** `file:line` of each line of these rooms that the pattern hits. */
function hits(pattern: RegExp, ...rooms: string[]): string[] {
  return files
    .filter((file) => rooms.some((room) => file.startsWith(room)) && /\.(ts|svelte|js|json|css|as)$/.test(file))
    .flatMap((file) =>
      textOf(file)
        .split('\n')
        .flatMap((line, i) => (pattern.test(line) ? [`${file}:${i + 1}`] : [])),
    );
}

const lineCount = (file: string): number => textOf(file).split('\n').length - 1;

/** Imports that enter an engine past its index.ts. */
function pastDoors(): string[] {
  return files
    .filter(
      (file) =>
        /^(renderer\/(logic|window)\/|renderer\/main\.ts$|electron\/).*\.(ts|js|svelte)$/.test(file) ||
        file === 'renderer/main.ts',
    )
    .flatMap((file) =>
      [...textOf(file).matchAll(/(?:from|import)\s*\(?\s*["'](\.[^"']+)/g)]
        .map((match) => path.posix.join(path.posix.dirname(file), match[1]!))
        .filter((to) => /^renderer\/(measure|ink|change)\//.test(to) && !/^renderer\/\w+\/index\.ts$/.test(to))
        .map((to) => `${file} -> ${to}`),
    );
}

/** Names that stand twice, where one of them could be taken for the other. */
function namesTwice(): string[] {
  const named = code.filter(
    (file) =>
      !/^(electron\/(contract|handlers|commands)|db\/types)\//.test(file) &&
      !/\/(index|main|version|constants|types)\.ts$/.test(file),
  );
  const seen = new Map<string, string[]>();
  for (const file of named) {
    const name = path.posix.basename(file);
    seen.set(name, [...(seen.get(name) ?? []), file]);
  }
  return [...seen.values()].filter((same) => same.length > 1).map((same) => same.join(' = '));
}

function crowdedFolders(): string[] {
  const counts = new Map<string, number>();
  for (const file of files) {
    const folder = path.posix.dirname(file);
    // Worked cases of the rules: one file a rule, by design.
    if (!`${folder}/`.includes('/cases/')) counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  return [...counts].filter(([, count]) => count > 20).map(([folder, count]) => `${folder}: ${count}`);
}

/** What breaks each promise. */
export const broken: Readonly<Record<string, () => string[]>> = {
  'everything of renderer/ lies in a room': () =>
    files.filter(
      (file) =>
        file.startsWith('renderer/') &&
        !/^renderer\/(window|logic|measure|ink|change|statistics)\/|^renderer\/(main\.ts|index\.html|icon\.svg)$/.test(
          file,
        ),
    ),
  'views lie in renderer/window': () =>
    files.filter((file) => /^renderer\/.*\.svelte(\.ts)?$/.test(file) && !file.startsWith('renderer/window/')),
  'engines are entered by their index.ts': pastDoors,
  'no role is read from the spelling of an id': () =>
    hits(
      /\.test\(rule\.id\)|(rule|item|code|id)\)?\??\.startsWith\('(W|paper-|text-|goal-|log)/,
      'renderer/',
      'electron/',
    ),
  'no prose is parsed again': () => hits(/\b(howOf|inEnglish|saidBySigns)\b/, 'renderer/', 'electron/'),
  'no threshold has a number beside it': () =>
    hits(/limit\('[a-z-]+', [0-9.]+\)|thresholds\.(get|find)\([^;]*\?\? [0-9]/, 'renderer/', 'electron/'),
  'no grade is made up': () => hits(/grade \?\? [0-3]/, 'renderer/', 'electron/'),
  'no measure is known by a part of its name': () =>
    hits(/(measure|code)\.(startsWith|includes)\('/, 'renderer/').filter(
      (hit) => !/event\.code/.test(textOf(hit.split(':')[0]!).split('\n')[Number(hit.split(':')[1]) - 1] ?? ''),
    ),
  'file names stand once': namesTwice,
  'no .ts file is over 300 lines': () => code.filter((file) => file.endsWith('.ts') && lineCount(file) > 300),
  'no .svelte file is over 250 lines': () => code.filter((file) => file.endsWith('.svelte') && lineCount(file) > 250),
  'one file in twenty is over 200 lines at most': () => {
    const long = code.filter((file) => lineCount(file) > 200);
    return long.length > code.length / 20 ? long : [];
  },
  'no folder holds over 20 files': crowdedFolders,
  'the words of the field are used': () =>
    hits(/\b([Hh]eads?|[Ff]eet|[Ff]oot)\b|\bmelt|drawn (to|towards|anew|together)|gone through/, 'renderer/measure/'),
  'every rule has a worked case': () =>
    rulesCurrent()
      .rules.map(({ id }) => `tests/logic/program/cases/${id}.json`)
      .filter((file) => !files.includes(file)),
  'the method version has its snapshot': () =>
    [`tests/measure/snapshots/${METHOD_VERSION}.json`].filter((file) => !files.includes(file)),
  'the rule version has its digest': () =>
    [ruleVersion].filter((version) => !new RegExp(`"${version}": "[0-9a-f]{64}"`).test(textOf('db/rules/digest.json'))),
};

export const engineDoors = (): string[] =>
  files.filter((file) => /^renderer\/(measure|ink|change)\/index\.ts$/.test(file));
