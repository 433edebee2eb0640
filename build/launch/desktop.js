/**
 * Turns everything outside the window into plain JavaScript for Electron: dist/app mirrors electron/, db/ and the
 * logic of renderer/, file by file, so that a worker or a migration is found beside the file that names it.
 */
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** Left out: the other shell and the commands, which run from the sources; views, which are bundled in dist/renderer. */
const left = [/^electron\/(browser|commands)\//, /^electron\/command-line/, /^renderer\/(window|main\.ts)/, /\.svelte/];

/** Data that code reads from beside itself. */
const data = /\.(json|sql|wasm)$/;

const rooms = ['electron', 'db', 'renderer'];

function* filesUnder(root, place) {
  for (const entry of readdirSync(path.join(root, place), { withFileTypes: true })) {
    const file = `${place}/${entry.name}`;
    if (entry.isDirectory()) yield* filesUnder(root, file);
    else yield file;
  }
}

/** Strips the types of one file; imports and worker addresses that end in .ts then end in .js. */
export function plainJavaScript(ts, text) {
  const { outputText } = ts.transpileModule(text, {
    compilerOptions: {
      module: ts.ModuleKind.ESNext,
      target: ts.ScriptTarget.ES2024,
      verbatimModuleSyntax: true,
      rewriteRelativeImportExtensions: true,
    },
  });
  return outputText.replace(/(new URL\(\s*['"]\.{1,2}\/[^'"]+)\.ts(['"])/g, '$1.js$2');
}

/** The preload runs sandboxed and may load nothing but Electron: it becomes one file. */
async function bundlePreload(root, out) {
  const { build } = await import('vite');
  await build({
    configFile: false,
    root,
    logLevel: 'warn',
    publicDir: false,
    build: {
      outDir: path.join(out, 'electron/desktop'),
      emptyOutDir: false,
      minify: false,
      target: 'es2024',
      lib: { entry: path.join(root, 'electron/desktop/preload.ts'), formats: ['cjs'], fileName: () => 'preload.cjs' },
      rolldownOptions: { external: ['electron'] },
    },
  });
}

/** Writes dist/app. */
export async function compileDesktop(root) {
  const { default: ts } = await import('typescript');
  const out = path.join(root, 'dist', `app-${process.pid}`);
  for (const file of rooms.flatMap((room) => [...filesUnder(root, room)])) {
    if (left.some((pattern) => pattern.test(file)) || file.endsWith('.d.ts')) continue;
    const target = path.join(out, file);
    if (file.endsWith('.ts')) {
      mkdirSync(path.dirname(target), { recursive: true });
      writeFileSync(target.replace(/\.ts$/, '.js'), plainJavaScript(ts, readFileSync(path.join(root, file), 'utf8')));
    } else if (data.test(file) || /\.m?js$/.test(file)) {
      cpSync(path.join(root, file), target);
    }
  }
  await bundlePreload(root, out);
  const place = path.join(root, 'dist/app');
  if (existsSync(place)) rmSync(place, { recursive: true });
  renameSync(out, place);
}
