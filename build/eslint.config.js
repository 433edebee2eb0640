import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';

/**
 * Lint rules, with the house's import rules per folder (DEVELOPERS.md, "Who may import whom").
 * build/import-walls.cjs checks the same walls on the import graph; here they show in the editor.
 */

/** Rooms that run without a window: plain TypeScript, no clock, disk, DOM or chance. */
const logicFiles = ['logic', 'measure', 'ink', 'change', 'statistics'].map((room) => `renderer/${room}/**/*.ts`);
const viewFiles = ['renderer/window/**/*.svelte', 'renderer/window/**/*.ts', 'renderer/main.ts'];

/** Files that own the operating system; the names are exact so that a new import is a decision. */
const system = {
  regex: '^(node:|electron$|electron/(main|renderer|common)$|playwright|better-sqlite3|sharp$)',
  message: 'Only electron/ speaks to the system, and only db/ opens the database. Pass the value in instead.',
};

/** A relative import that leads into these places. */
const outside = (places) => `^\\.\\.?/(.*/)?(${places})`;

const notShipped = { regex: outside('tests/|build/'), message: 'Nothing imports tests or build.' };

const restrict = (...patterns) => ({ 'no-restricted-imports': ['error', { patterns }] });

const clockAndChance = [
  'error',
  { object: 'Math', property: 'random', message: 'Logic takes chance as an argument, so that it can be repeated.' },
  { object: 'Date', property: 'now', message: 'Logic takes the time as an argument, so that it can be repeated.' },
];

const impureGlobals = [
  'window',
  'document',
  'navigator',
  'location',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'fetch',
  'performance',
  'crypto',
  'process',
  'console',
  'setTimeout',
  'setInterval',
  'requestAnimationFrame',
  'alert',
  'confirm',
].map((name) => ({ name, message: 'Pure logic touches no window, clock, disk or network. Pass the value in.' }));

export default ts.config(
  { ignores: ['node_modules/**', 'dist/**', 'out/**', 'release/**', '.cache/**'] },
  js.configs.recommended,
  ts.configs.recommended,
  svelte.configs.recommended,
  {
    languageOptions: { globals: { ...globals.node } },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      'no-console': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // The compiler checks names better than the linter does.
      'no-undef': 'off',
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { globals: { ...globals.browser }, parserOptions: { parser: ts.parser } },
    rules: {
      // A client's name or an imported text must never become markup.
      'svelte/no-at-html-tags': 'error',
      // Maps and dates in a .svelte.ts are mostly plain values; what is shown is $state.
      'svelte/prefer-svelte-reactivity': 'off',
      // svelte-check reports the warnings that these comments answer; the linter does not see them.
      'svelte/no-unused-svelte-ignore': 'off',
      // The app has no router of its own kind: addresses are fragments inside one page.
      'svelte/no-navigation-without-resolve': 'off',
      // `let { a = $bindable(), b } = $props()` needs one `let` for both.
      'prefer-const': 'off',
    },
  },
  {
    files: viewFiles,
    rules: restrict(
      system,
      {
        regex: outside('db/(?!types|rules)|electron/(?!contract)'),
        message: 'A view reaches the caseload only through `ask` of electron/contract.',
      },
      notShipped,
    ),
  },
  {
    files: logicFiles,
    rules: {
      ...restrict(
        system,
        {
          regex: '^svelte($|/)|\\.svelte(\\.ts)?$',
          message: 'Logic knows no views: it is tested and reused without them.',
        },
        // Types of the contract may be named; that they are only types is seen on the graph (import-walls.cjs).
        {
          regex: outside('db/(?!types|rules)|electron/(?!contract)'),
          message: 'Logic imports logic, types and rules.',
        },
        notShipped,
      ),
      'no-restricted-globals': ['error', ...impureGlobals],
      'no-restricted-properties': clockAndChance,
      'no-restricted-syntax': [
        'error',
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Logic takes the time as an argument, so that it can be repeated.',
        },
      ],
    },
  },
  {
    files: ['electron/contract/**/*.ts'],
    rules: restrict(
      system,
      {
        regex: outside('(renderer|handlers|desktop|browser|files|tests|build)/'),
        message: 'The contract imports db/types and zod.',
      },
      { regex: outside('db/(?!types)'), message: 'The contract imports db/types and zod.' },
    ),
  },
  {
    files: ['db/**/*.ts'],
    rules: restrict(
      {
        regex: outside('(electron|renderer|tests|build)/'),
        message: 'db/ lies at the bottom: it imports nothing above it.',
      },
      { regex: '^(electron|playwright|svelte|sharp)', message: 'db/ imports better-sqlite3, zod and Node only.' },
    ),
  },
  {
    files: ['electron/**/*.ts'],
    ignores: ['electron/contract/**', 'electron/desktop/**', 'electron/browser/**'],
    rules: restrict(
      { regex: '^(electron$|electron/(main|renderer|common)$|playwright)', message: 'Only a shell imports its shell.' },
      { regex: '\\.svelte(\\.ts)?$', message: 'Nothing outside the window imports a view.' },
      notShipped,
      { regex: '^better-sqlite3', message: 'Only db/ speaks SQL.' },
    ),
  },
  {
    files: ['electron/desktop/**/*.ts', 'electron/browser/**/*.ts'],
    rules: restrict(
      { regex: '\\.svelte(\\.ts)?$', message: 'Nothing outside the window imports a view.' },
      notShipped,
      { regex: '^better-sqlite3', message: 'Only db/ speaks SQL.' },
    ),
  },
  {
    files: ['tests/**/*.ts'],
    // Playwright's fixtures are written `({}, use)`.
    rules: { 'no-empty-pattern': ['error', { allowObjectPatternsAsParameters: true }] },
  },
  {
    files: ['tests/**/*.ts', 'build/**/*.ts', 'build/**/*.js', 'build/**/*.cjs', 'electron/command-line.ts'],
    rules: { 'no-console': 'off', '@typescript-eslint/no-require-imports': 'off' },
  },
);
