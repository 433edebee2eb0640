/** `npx node build/gates/golden.ts`: writes the drafts and pages that tests/logic/program/golden/golden.test.ts compares with. */
import { writeFileSync } from 'node:fs';
import { allCases, goldenFile, hashesOf, WHOLE_EVERY } from '../../tests/logic/program/golden/golden-cases.ts';

const cases = allCases();
const rows = cases.map((one) => JSON.stringify(hashesOf(one)));
writeFileSync(goldenFile('hashes'), `[\n${rows.join(',\n')}\n]\n`);
const whole = cases.flatMap((one, at) => (at % WHOLE_EVERY === 0 ? [[String(at), one] as const] : []));
writeFileSync(goldenFile('whole'), `${JSON.stringify(Object.fromEntries(whole), null, 1)}\n`);
console.log(`${cases.length} cases are written, ${whole.length} of them whole. Look at what changed: git diff --stat.`);
