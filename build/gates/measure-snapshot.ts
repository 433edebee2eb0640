/**
 * `npx node build/gates/measure-snapshot.ts`: writes what every page of tests/measure/pages/specs.ts gives under the method version in
 * force to tests/measure/snapshots. A version that has its file keeps it: raise METHOD_VERSION first.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { METHOD_VERSION } from '../../renderer/measure/version.ts';
import { measureMadePage, snapshotFile, snapshotOf } from '../../tests/measure/snapshot.ts';
import { makePage } from '../../tests/measure/pages/generate.ts';
import { SPECS } from '../../tests/measure/pages/specs.ts';

const file = snapshotFile(METHOD_VERSION);
if (existsSync(file)) {
  console.error(`${METHOD_VERSION} has its snapshot, and it stays. Raise METHOD_VERSION, then run this again.`);
  process.exit(2);
}
const rows: string[] = [];
for (const spec of SPECS) {
  const page = snapshotOf(measureMadePage(await makePage(spec)));
  const measures = Object.entries(page.measures).map(([code, numbers]) => `   "${code}": ${JSON.stringify(numbers)}`);
  rows.push(
    ` "${spec.name}": {\n  "words": ${JSON.stringify(page.words)},\n  "warnings": ${JSON.stringify(page.warnings)},\n  "measures": {\n${measures.join(',\n')}\n  }\n }`,
  );
}
writeFileSync(file, `{\n${rows.join(',\n')}\n}\n`);
console.log(`${rows.length} pages of ${METHOD_VERSION} are in ${file}.`);
