/**
 * Who may import whom, on the import graph (dependency-cruiser): the same walls as build/eslint.config.js, seen
 * through Svelte files too, and cycles. tests/build/import-walls.test.ts plants one bad import per rule.
 */
const tasks = '(caseload|intake|sample|readback|program|progress|goals|pages)';
/** Plain .ts files of a task are pure logic; frame/ and parts/ belong to the window. */
const logic = { path: `^renderer/${tasks}/.+\\.ts$`, pathNot: '\\.svelte\\.ts$' };
const views = { path: '^renderer/', pathNot: `^renderer/${tasks}/(?!.*\\.svelte\\.ts$).+\\.ts$` };
const npm = (names) => `^node_modules/(${names})(/|$)`;
const system = npm('electron|playwright|playwright-core|better-sqlite3|sharp|age-encryption');

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'no-cycles',
      comment: 'Two files that import each other cannot be read or tested one at a time.',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'resolvable',
      comment: 'An import that leads nowhere breaks at run time.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'nothing-imports-tests-or-build',
      comment: 'The app ships without them.',
      severity: 'error',
      from: { path: '^(electron|db|renderer)/' },
      to: { path: '^(tests|build)/' },
    },
    {
      name: 'logic-stays-pure',
      comment:
        'Logic imports other logic, the types and the rule table. Views, shells and the database come to it. ' +
        'Types of the contract may be named: they vanish before anything runs.',
      severity: 'error',
      from: logic,
      to: {
        path: '^(electron/|db/(?!types/|rules/)|renderer/(frame|parts)/|.+\\.svelte(\\.ts)?$)',
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'logic-touches-no-system',
      comment: 'Logic reads no clock, disk or network: pass the value in.',
      severity: 'error',
      from: logic,
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'logic-knows-no-window-library',
      comment: 'Logic runs in a worker and in a test, where there is no window.',
      severity: 'error',
      from: logic,
      to: { path: npm('svelte|chart\\.js|chartjs-[^/]+') },
    },
    {
      name: 'window-touches-no-system',
      comment: 'Only electron/ speaks to the system, and only db/ opens the database.',
      severity: 'error',
      from: { path: '^renderer/' },
      to: { path: system },
    },
    {
      name: 'window-knows-no-node',
      comment: 'The page runs in a browser.',
      severity: 'error',
      from: { path: '^renderer/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'views-ask-the-contract',
      comment: 'A view reaches the caseload only through `ask` of electron/contract.',
      severity: 'error',
      from: views,
      to: { path: '^(electron/(?!contract/)|db/(?!types/|rules/))' },
    },
    {
      name: 'tasks-meet-through-facts',
      comment: 'A task shows its own views; what two tasks share is a stored fact, logic or a part.',
      severity: 'error',
      from: { path: `^renderer/${tasks}/` },
      to: { path: `^renderer/${tasks}/.+\\.svelte(\\.ts)?$`, pathNot: '^renderer/$1/' },
    },
    {
      name: 'parts-know-no-task',
      comment: 'Shared components stay usable everywhere.',
      severity: 'error',
      from: { path: '^renderer/parts/' },
      to: { path: `^renderer/(${tasks}|frame)/` },
    },
    {
      name: 'contract-is-types-only',
      comment: 'The contract imports db/types and zod; both sides of the wall can then read it.',
      severity: 'error',
      from: { path: '^electron/contract/' },
      to: { pathNot: `^(electron/contract/|db/types/|${npm('zod').slice(1)})` },
    },
    {
      name: 'types-are-shapes-only',
      comment: 'db/types is the one home of shapes and imports nothing but zod.',
      severity: 'error',
      from: { path: '^db/types/' },
      to: { pathNot: `^(db/types/|${npm('zod').slice(1)})` },
    },
    {
      name: 'rules-are-data',
      comment: 'The rule table is read in the window too: data, its schema, the types.',
      severity: 'error',
      from: { path: '^db/rules/' },
      to: { pathNot: `^(db/(rules|types)/|${npm('zod').slice(1)})` },
    },
    {
      name: 'db-lies-at-the-bottom',
      comment: 'db/ imports better-sqlite3, zod, age-encryption (the key file) and Node.',
      severity: 'error',
      from: { path: '^db/' },
      to: {
        pathNot: `^(db/|${npm('better-sqlite3(-multiple-ciphers)?|zod|age-encryption|bindings').slice(1)})`,
        dependencyTypesNot: ['core'],
      },
    },
    {
      name: 'only-db-speaks-sql',
      comment: 'Every statement lies in db/.',
      severity: 'error',
      from: { pathNot: '^db/' },
      to: { path: npm('better-sqlite3(-multiple-ciphers)?') },
    },
    {
      name: 'electron-shows-no-views',
      comment: 'Nothing outside the window imports a view.',
      severity: 'error',
      from: { path: '^electron/' },
      to: { path: '^renderer/.+\\.svelte(\\.ts)?$|^renderer/(frame|parts)/' },
    },
    {
      name: 'only-the-desktop-shell-knows-electron',
      comment: 'Handlers, files and commands run without it.',
      severity: 'error',
      from: { pathNot: '^electron/desktop/' },
      to: { path: npm('electron') },
    },
    {
      name: 'only-the-browser-shell-knows-playwright',
      comment: 'Handlers, files and the Electron shell run without it.',
      severity: 'error',
      from: { pathNot: '^electron/browser/' },
      to: { path: npm('playwright|playwright-core') },
    },
    {
      name: 'shells-do-not-meet',
      comment: 'What both shells need lies beside them, not in one of them.',
      severity: 'error',
      from: { path: '^electron/(desktop|browser)/' },
      to: { path: '^electron/(desktop|browser)/', pathNot: '^electron/$1/' },
    },
    {
      name: 'handlers-know-no-shell',
      comment: 'A handler is the same in every shell: it gets its dialogs through ShellPort.',
      severity: 'error',
      from: { path: '^electron/(handlers|files|contract)/' },
      to: { path: '^electron/(desktop|browser)/' },
    },
    {
      name: 'shipped-code-needs-shipped-packages',
      comment: 'Outside the bundled window, only packages under "dependencies" are in the package.',
      severity: 'error',
      from: { path: '^(electron|db)/|^renderer/.+(?<!\\.svelte)\\.ts$', pathNot: '^renderer/(frame|parts|main\\.ts)' },
      to: {
        dependencyTypes: ['npm-dev'],
        dependencyTypesNot: ['type-only'],
        pathNot: [npm('electron|svelte'), npm('@types')],
      },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.svelte', '.js', '.mjs', '.json', '.css'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'svelte', 'browser', 'default', 'types'],
      mainFields: ['module', 'main', 'types'],
    },
    extraExtensionsToScan: ['.css', '.json', '.sql'],
  },
};
