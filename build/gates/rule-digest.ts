/**
 * `npx node build/gates/rule-digest.ts`: adds the digest of the shipped rules to db/rules/digest.json. A version that has one
 * keeps it: raise ruleVersion (db/rules/index.ts) first.
 */
import { writeFileSync } from 'node:fs';
import { ruleVersion } from '../../db/rules/index.ts';
import { digestFile, keptDigests, shippedDigest } from '../../tests/db/rules/digest.ts';

const kept = keptDigests();
if (Object.hasOwn(kept, ruleVersion)) {
  console.error(`${ruleVersion} has its digest, and it stays. Raise ruleVersion, then run this again.`);
  process.exit(2);
}
writeFileSync(digestFile, `${JSON.stringify({ ...kept, [ruleVersion]: shippedDigest() }, null, 2)}\n`);
console.log(`The rules of ${ruleVersion} are in db/rules/digest.json.`);
