/**
 * Compiles the pixel stages (AssemblyScript, no download) into renderer/measure/image/wasm/bytes.ts, so that the
 * window and the worker have them without reading a file. `npx node build/wasm.ts` after a change of its sources; a test
 * compares what is committed with what the source compiles to.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import asc from 'assemblyscript/asc';

const folder = fileURLToPath(new URL('../renderer/measure/image/wasm/', import.meta.url));
const ENTRY = 'page.ts';
/** Sources by the name that the compiler asks for; their own ending keeps other tools away: they are no TypeScript. */
const SOURCES = new Map([
  [ENTRY, 'page.as'],
  ['curves.ts', 'curves.as'],
  ['outlines.ts', 'outlines.as'],
]);
/** -O3 without assertions; no runtime: the caller lays the memory out, and two threads share it. */
const OPTIONS = [
  ...['-O3', '--noAssert', '--converge', '--runtime', 'stub'],
  ...['--enable', 'simd', '--enable', 'threads'],
  ...['--importMemory', '--sharedMemory', '--initialMemory', '1', '--maximumMemory', '65536'],
];

/** Bytes of the compiled stages. @throws Error with the compiler's message when the source is wrong */
export async function compiled(): Promise<Uint8Array> {
  let bytes: Uint8Array | null = null;
  const { error, stderr } = await asc.main([ENTRY, '--outFile', 'page.wasm', ...OPTIONS], {
    readFile(name) {
      const source = SOURCES.get(name);
      return source === undefined ? null : readFileSync(`${folder}${source}`, 'utf8');
    },
    writeFile: (name, contents) => {
      if (name === 'page.wasm') bytes = contents as Uint8Array;
    },
    listFiles: () => [],
  });
  if (error || bytes === null)
    throw new Error(`The stages do not compile: ${error?.message ?? ''}\n${stderr.toString()}`);
  return bytes;
}

/** The text of bytes.ts. */
export function asModule(bytes: Uint8Array): string {
  const base64 = Buffer.from(bytes).toString('base64');
  const lines = base64.match(/.{1,110}/g) ?? [];
  return [
    '/** Compiled from page.as, curves.as and outlines.as by build/wasm.ts; base64. Do not edit. */',
    'export const WASM_BASE64 = [',
    ...lines.map((line) => `  '${line}',`),
    "].join('');",
    '',
  ].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const bytes = await compiled();
  writeFileSync(`${folder}bytes.ts`, asModule(bytes));
  console.log(`${bytes.length} bytes of WebAssembly.`);
}
