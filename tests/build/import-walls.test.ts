/** Plants one bad import per rule and expects the refusal, on the graph and in the editor's linter. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ICruiseResult, IForbiddenRuleType } from 'dependency-cruiser';
import { cruise } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { ESLint } from 'eslint';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const walls = createRequire(import.meta.url)('../../build/import-walls.cjs') as {
  forbidden: IForbiddenRuleType[];
  options: Record<string, unknown>;
};

/** Rule -> the file that breaks it and what that file says. */
const bad: Record<string, [file: string, text: string]> = {
  'no-cycles': [
    'renderer/logic/goals/circle-2.ts',
    "import type { A } from './circle.ts'; export type B = A; export const b = 1;",
  ],
  resolvable: ['db/lost.ts', "import './nowhere.ts';"],
  'nothing-imports-tests-or-build': ['electron/tested.ts', "import '../tests/helper.ts';"],
  'logic-stays-pure': [
    'renderer/logic/intake/shows.ts',
    "import type { V } from '../../window/intake/typed.ts'; export type W = V;",
  ],
  'logic-names-requests-only': ['renderer/logic/intake/asks.ts', "import '../../../electron/contract/ask.ts';"],
  'logic-touches-no-system': ['renderer/logic/intake/reads.ts', "import 'node:fs';"],
  'logic-knows-no-window-library': ['renderer/logic/intake/draws.ts', "import 'svelte/store';"],
  'engines-are-entered-by-their-door': ['renderer/logic/sample/peeks.ts', "import '../../measure/inside.ts';"],
  'engines-stand-alone': ['renderer/measure/climbs.ts', "import '../logic/intake/pure.ts';"],
  'statistics-are-textbook-functions': ['renderer/statistics/climbs.ts', "import '../logic/intake/pure.ts';"],
  'window-touches-no-system': ['renderer/window/parts/Opens.svelte', "<script>import 'sharp';</script>"],
  'window-knows-no-node': ['renderer/window/frame/Reads.svelte', "<script>import 'node:fs';</script>"],
  'views-ask-the-contract': ['renderer/window/intake/Asks.svelte', "<script>import '../../../db/open.ts';</script>"],
  'tasks-meet-through-facts': [
    'renderer/window/goals/Borrows.svelte',
    "<script>import '../intake/View.svelte';</script>",
  ],
  'parts-know-no-task': ['renderer/window/parts/Knows.svelte', "<script>import '../intake/View.svelte';</script>"],
  'contract-is-types-only': ['electron/contract/reaches.ts', "import '../../db/open.ts';"],
  'types-are-shapes-only': ['db/types/reaches.ts', "import '../open.ts';"],
  'rules-are-data': ['db/rules/reaches.ts', "import '../open.ts';"],
  'db-lies-at-the-bottom': ['db/climbs.ts', "import '../renderer/logic/intake/pure.ts';"],
  'only-db-speaks-sql': ['electron/handlers/queries.ts', "import 'better-sqlite3';"],
  'electron-shows-no-views': ['electron/handlers/shows.ts', "import '../../renderer/window/intake/View.svelte';"],
  'only-the-desktop-shell-knows-electron': ['electron/handlers/native.ts', "import 'electron';"],
  'only-the-browser-shell-knows-playwright': ['electron/handlers/drives.ts', "import 'playwright-core';"],
  'shells-do-not-meet': ['electron/desktop/meets.ts', "import '../browser/shell.ts';"],
  'handlers-know-no-shell': ['electron/handlers/prints.ts', "import '../browser/shell.ts';"],
  'shipped-code-needs-shipped-packages': ['electron/handlers/dates.ts', "import 'syllable';"],
};

/** Each room of logic but the last has a rule of its own: a file of it that looks at the last room. */
const lookUps = walls.forbidden
  .map(({ name }) => /^logic-(\w+)-looks-up$/.exec(name ?? '')?.[1])
  .filter((room) => room !== undefined);
for (const room of lookUps) {
  bad[`logic-${room}-looks-up`] = [`renderer/logic/${room}/looks-up.ts`, "import '../caseload/last.ts';"];
}

const innocent: Record<string, string> = {
  'renderer/logic/goals/circle.ts': "import type { B } from './circle-2.ts'; export type A = B; export const a = 1;",
  'renderer/logic/caseload/last.ts': "import '../intake/pure.ts'; import '../../measure/index.ts';",
  'renderer/window/intake/View.svelte': '<p>view</p>',
  'renderer/window/intake/typed.ts': 'export type V = string;',
  'renderer/measure/index.ts': "import './inside.ts'; import '../statistics/median.ts';",
  'renderer/measure/inside.ts': 'export const inside = 1;',
  'renderer/statistics/median.ts': 'export const median = 1;',
  'renderer/logic/intake/pure.ts': 'export const pure = 1;',
  'renderer/logic/intake/typed-only.ts':
    "import type { Ask } from '../../../electron/contract/ask.ts'; export type Mine = Ask;",
  'electron/contract/ask.ts': 'export type Ask = string;',
  'electron/browser/shell.ts': 'export const shell = 1;',
  'db/open.ts': 'export const open = 1;',
  'tests/helper.ts': 'export const help = 1;',
};

let house: string;
let found: { rule: string; from: string }[];

beforeAll(async () => {
  mkdirSync(path.join(root, '.cache'), { recursive: true });
  house = mkdtempSync(path.join(root, '.cache', 'walls-'));
  for (const [file, text] of [...Object.entries(innocent), ...Object.values(bad)]) {
    mkdirSync(path.dirname(path.join(house, file)), { recursive: true });
    writeFileSync(path.join(house, file), text);
  }
  symlinkSync(path.join(root, 'node_modules'), path.join(house, 'node_modules'));
  for (const file of ['tsconfig.json', 'package.json']) symlinkSync(path.join(root, file), path.join(house, file));
  const result = await cruise(
    ['electron', 'db', 'renderer'],
    {
      ...walls.options,
      baseDir: house,
      preserveSymlinks: true,
      validate: true,
      ruleSet: { forbidden: walls.forbidden },
    },
    undefined,
    { tsConfig: extractTSConfig(path.join(root, 'tsconfig.json')) },
  );
  found = (result.output as ICruiseResult).summary.violations.map(({ rule, from }) => ({ rule: rule.name, from }));
});

afterAll(() => rmSync(house, { recursive: true, force: true }));

test('every rule of the graph has a planted breach', () => {
  expect(Object.keys(bad).sort()).toEqual(walls.forbidden.map((rule) => rule.name).sort());
});

test.each(Object.entries(bad))('the graph refuses %s', (rule, [file]) => {
  expect(found).toContainEqual({ rule, from: file });
});

test('what is allowed is not refused', () => {
  const blamed = new Set(found.map(({ from }) => from));
  const guilty = new Set([...Object.values(bad).map(([file]) => file), 'renderer/logic/goals/circle.ts']);
  expect([...blamed].filter((file) => !guilty.has(file))).toEqual([]);
});

/** File -> line that the linter must refuse there. */
const inTheEditor: [file: string, text: string, rule: string][] = [
  ['renderer/logic/intake/x.ts', "import '../../../db/open.ts';", 'no-restricted-imports'],
  ['renderer/logic/intake/x.ts', "import { readFileSync } from 'node:fs'; readFileSync('x');", 'no-restricted-imports'],
  ['renderer/logic/intake/x.ts', "import './View.svelte';", 'no-restricted-imports'],
  ['renderer/logic/intake/x.ts', 'export const now = Date.now();', 'no-restricted-properties'],
  ['renderer/logic/intake/x.ts', 'export const now = new Date();', 'no-restricted-syntax'],
  ['renderer/logic/intake/x.ts', 'export const chance = Math.random();', 'no-restricted-properties'],
  ['renderer/logic/intake/x.ts', 'export const page = document.title;', 'no-restricted-globals'],
  ['renderer/window/intake/X.svelte', "<script>import '../../../db/open.ts';</script>", 'no-restricted-imports'],
  [
    'renderer/window/intake/X.svelte',
    "<script>import '../../../electron/handlers/x.ts';</script>",
    'no-restricted-imports',
  ],
  ['renderer/window/intake/X.svelte', '<script>let name = $state("");</script>{@html name}', 'svelte/no-at-html-tags'],
  ['electron/contract/x.ts', "import '../handlers/x.ts';", 'no-restricted-imports'],
  ['electron/handlers/x.ts', "import 'electron';", 'no-restricted-imports'],
  ['electron/handlers/x.ts', "import 'better-sqlite3';", 'no-restricted-imports'],
  ['electron/browser/x.ts', "import '../../tests/x.ts';", 'no-restricted-imports'],
  ['db/x.ts', "import '../electron/x.ts';", 'no-restricted-imports'],
  ['electron/handlers/x.ts', 'console.log(1);', 'no-console'],
  ['db/x.ts', "export const run = eval('1');", 'no-eval'],
];

test.each(inTheEditor)('the linter refuses in %s: %s', async (file, text, rule) => {
  const linter = new ESLint({ cwd: root, overrideConfigFile: path.join(root, 'build/eslint.config.js') });
  const [result] = await linter.lintText(text, { filePath: path.join(root, file) });
  expect(result?.messages.map(({ ruleId }) => ruleId)).toContain(rule);
});

test('the linter lets the same lines stand where they belong', async () => {
  const linter = new ESLint({ cwd: root, overrideConfigFile: path.join(root, 'build/eslint.config.js') });
  const lint = async (file: string, text: string) =>
    (await linter.lintText(text, { filePath: path.join(root, file) }))[0]?.messages.map(({ ruleId }) => ruleId);
  expect(await lint('renderer/logic/intake/x.ts', "import '../../../db/types/x.ts';")).toEqual([]);
  expect(await lint('electron/desktop/x.ts', "import 'electron';")).toEqual([]);
  expect(await lint('db/x.ts', "import 'better-sqlite3';")).toEqual([]);
});
