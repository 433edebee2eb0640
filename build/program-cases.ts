/**
 * Safety of drafts over many invented clients: `npx node build/program-cases.ts [COUNT] [SEED]`, 100,000 by default.
 * Exit 1 and the smallest failing client when a property does not hold.
 */
import fc from 'fast-check';
import { rulesCurrent } from '../db/rules/index.ts';
import { anyCase } from '../tests/program/inputs.ts';
import { wrongWithInput } from '../tests/program/safety.ts';

const count = Number(process.argv[2] ?? 100_000);
const seed = Number(process.argv[3] ?? 1);
if (!Number.isInteger(count) || count < 1 || !Number.isInteger(seed)) {
  console.error('COUNT and SEED must be whole numbers, COUNT at least 1.');
  process.exit(2);
}
const rules = rulesCurrent();
const started = performance.now();
const result = fc.check(
  fc.property(anyCase(rules), ({ input, extraCaution }) => wrongWithInput(input, extraCaution, rules).length === 0),
  { numRuns: count, seed },
);
const seconds = ((performance.now() - started) / 1000).toFixed(1);
const found = result.counterexample?.[0];
if (result.failed && found) {
  console.error(wrongWithInput(found.input, found.extraCaution, rules).join('\n'));
  console.error(JSON.stringify(found));
  process.exit(1);
}
console.log(`${count} clients, seed ${seed}, rule table ${rules.version}: every property held (${seconds} s).`);
