/**
 * Who may import whom, on the import graph (dependency-cruiser): the same walls as build/eslint.config.js, seen
 * through Svelte files too, and cycles. tests/build/import-walls.test.ts plants one bad import per rule.
 */
const tasks = '(caseload|intake|sample|readback|program|progress|goals|pages|ink)';
/** Rooms of renderer/logic in the order of what may be known: a room imports the ones named before it. */
const rooms = [
  ...['texts', 'rules', 'setup', 'sample', 'readback', 'record', 'intake', 'goals', 'progress', 'program', 'pages'],
  ...['exchange', 'caseload'],
];
/** Engines turn raw material into stored, versioned results; each is entered through its index.ts alone. */
const engines = '(measure|ink|change)';
/** Everything that runs without a window: logic, engines, statistics. */
const pure = '^renderer/(logic|measure|ink|change|statistics)/';
const npm = (names) => `^node_modules/(${names})(/|$)`;
const system = npm('electron|playwright|playwright-core|better-sqlite3|sharp|age-encryption');

/** Still looking up; each ends when dose words are made from numbers. */
const knownClimbs = '^renderer/logic/texts/dose-words\\.ts$';

const logicLooksUp = rooms.slice(0, -1).map((room, at) => ({
  name: `logic-${room}-looks-up`,
  comment: `Rooms of logic stand in the order ${rooms.join(', ')}: ${room} knows only what stands before it.`,
  severity: 'error',
  from: { path: `^renderer/logic/${room}/`, pathNot: knownClimbs },
  to: { path: `^renderer/logic/(${rooms.slice(at + 1).join('|')})/` },
}));

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'no-cycles',
      comment: 'Two files that import each other, types included, cannot be read or tested one at a time.',
      severity: 'error',
      from: {},
      to: { circular: true },
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
        'Logic and engines import each other, the types and textbook functions; the rule table is an argument. ' +
        'Views, shells and the database come to them.',
      severity: 'error',
      from: { path: pure },
      to: { path: '^(electron/(?!contract/)|db/(?!types/|rules/)|renderer/window/|.+\\.svelte(\\.ts)?$)' },
    },
    {
      name: 'logic-names-requests-only',
      comment: 'Types of the contract may be named in logic: they vanish before anything runs.',
      severity: 'error',
      from: { path: pure },
      to: { path: '^electron/contract/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'logic-touches-no-system',
      comment: 'Logic reads no clock, disk or network: pass the value in.',
      severity: 'error',
      from: { path: pure },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'logic-knows-no-window-library',
      comment: 'Logic runs in a worker and in a test, where there is no window.',
      severity: 'error',
      from: { path: pure },
      to: { path: npm('svelte|chart\\.js|chartjs-[^/]+|svgcanvas') },
    },
    ...logicLooksUp,
    {
      name: 'engines-are-entered-by-their-door',
      comment: 'What an engine gives out is what its index.ts exports.',
      severity: 'error',
      from: { path: '^(renderer|electron|db)/', pathNot: `^renderer/${engines}/` },
      to: { path: `^renderer/${engines}/(?!index\\.ts$)` },
    },
    {
      name: 'engines-stand-alone',
      comment: 'An engine imports itself, statistics and the types of stored facts.',
      severity: 'error',
      from: { path: `^renderer/${engines}/` },
      to: { path: '^(renderer|electron|db)/', pathNot: '^renderer/($1|statistics)/|^db/types/' },
    },
    {
      name: 'statistics-are-textbook-functions',
      comment: 'They know no client and no page.',
      severity: 'error',
      from: { path: '^renderer/statistics/' },
      to: { pathNot: `^renderer/statistics/|${npm('simple-statistics')}` },
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
      from: { path: '^renderer/(window/|main\\.ts)' },
      to: { path: '^(electron/(?!contract/)|db/(?!types/|rules/))' },
    },
    {
      name: 'tasks-meet-through-facts',
      comment:
        'A task shows its own views; what two tasks share is a stored fact, logic or a part. frame shows them all.',
      severity: 'error',
      from: { path: `^renderer/window/${tasks}/` },
      to: { path: `^renderer/window/${tasks}/`, pathNot: '^renderer/window/$1/' },
    },
    {
      name: 'parts-know-no-task',
      comment: 'Shared components stay usable everywhere.',
      severity: 'error',
      from: { path: '^renderer/window/parts/' },
      to: { path: `^renderer/window/(${tasks}|frame)/` },
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
      to: { path: '^renderer/(window/|main\\.ts)' },
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
      from: { path: '^(electron|db)/|^renderer/.+\\.ts$', pathNot: '^renderer/(window/|main\\.ts)' },
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
