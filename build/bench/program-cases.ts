/**
 * Safety of drafts over many invented clients: `npm run cases -- [COUNT] [SEED]`, 100,000 by default, shared among the
 * processors. Exit 1 and the smallest failing client when a property does not hold, or when a veto or a rule was met by
 * none of them: then the clients prove less than they seem to.
 */
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { rulesCurrent } from '../../db/rules/index.ts';
import { compose } from '../../renderer/logic/program/draft/compose.ts';
import { anyCase } from '../../tests/logic/program/inputs.ts';
import { wrongWithInput } from '../../tests/logic/program/safety.ts';
import { byHandOnly } from '../../tests/logic/program/vetoes/by-hand-only.ts';

const count = Number(process.argv[2] ?? 100_000);
const seed = Number(process.argv[3] ?? 1);
const isPart = process.argv[4] === '--part';
if (!Number.isInteger(count) || count < 1 || !Number.isInteger(seed)) {
  console.error('COUNT and SEED must be whole numbers, COUNT at least 1.');
  process.exit(2);
}
const rules = rulesCurrent();
/** Every so many clients are drafted twice, and the shape of their lines is checked. */
const deepEvery = 10;

/** Drafts in which a veto took an item out, and in which a rule gave a line or its reason for one. */
type Met = Record<string, number>;

/** What shows in no draft as something taken out. */
const otherwise: Readonly<Record<string, string>> = {
  ...byHandOnly,
  V23: 'it gives the line about posture other words; veto-coverage.test.ts shows the client',
  V62: 'R13 starts at arm support 1, and the board has other words below it',
};

/** Any client; some have decided a trial of pens. */
const anyClient = fc
  .tuple(anyCase(rules), fc.constantFrom(null, null, null, null, 'the gel pen'))
  .map(([{ input, extraCaution }, chosenPen]) => ({
    input: chosenPen === null ? input : { ...input, chosenPen },
    extraCaution,
  }));

/** A line that several rules ask for names the first of them; the others are known by a reason that is theirs alone. */
const withOwnReason = rules.rules.filter(
  (rule) => !rules.rules.some((other) => other !== rule && other.because.includes(rule.because)),
);

function runPart(): Met {
  const met: Met = {};
  let at = 0;
  const result = fc.check(
    fc.property(anyClient, ({ input, extraCaution }) => {
      const draft = compose(input, rules);
      const reasons = draft.lines.map((line) => line.because).join(' ');
      const given = new Set([
        ...draft.vetoed.map((each) => each.rule),
        ...draft.lines.map((line) => line.rule ?? ''),
        ...withOwnReason.flatMap(({ id, because }) => (reasons.includes(because) ? [id] : [])),
      ]);
      for (const id of given) met[id] = (met[id] ?? 0) + 1;
      return wrongWithInput(input, extraCaution, rules, { draft, deep: at++ % deepEvery === 0 }).length === 0;
    }),
    { numRuns: count, seed },
  );
  const found = result.counterexample?.[0];
  if (result.failed && found) {
    console.error(wrongWithInput(found.input, found.extraCaution, rules).join('\n'));
    console.error(JSON.stringify(found));
    process.exit(1);
  }
  return met;
}

/** One process a processor; each with a seed of its own. */
function inParts(parts: number): Promise<Met[]> {
  const file = fileURLToPath(import.meta.url);
  const share = Math.ceil(count / parts);
  return Promise.all(
    Array.from({ length: parts }, (_, i) => {
      const own = Math.min(share, count - i * share);
      const child = spawn(process.execPath, [file, String(own), String(seed + i), '--part'], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      let said = '';
      child.stdout.on('data', (part) => (said += part));
      return new Promise<Met>((resolve) => {
        child.on('close', (code) => {
          if (code !== 0) process.exit(1);
          resolve(JSON.parse(said) as Met);
        });
      });
    }),
  );
}

if (isPart) process.stdout.write(JSON.stringify(runPart()));
else {
  const started = performance.now();
  const parts = Math.max(1, Math.min(availableParallelism(), Math.floor(count / 1000)));
  const mets = await inParts(parts);
  const met = (id: string): number => mets.reduce((sum, each) => sum + (each[id] ?? 0), 0);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  const words = parts === 1 ? `seed ${seed}` : `seeds ${seed} to ${seed + parts - 1}`;
  console.log(`${count} clients, ${words}, rule table ${rules.version}: every property held (${seconds} s).`);
  const ids = [...rules.vetoes.map((each) => each.id), ...rules.rules.map((each) => each.id)];
  const unmet = ids.filter((id) => met(id) === 0);
  const rarest = ids.filter((id) => met(id) > 0).reduce((a, b) => (met(a) <= met(b) ? a : b));
  console.log(
    `${rules.vetoes.length} vetoes and ${rules.rules.length} rules; rarest is ${rarest}, met in ${met(rarest)} drafts.` +
      (unmet.length === 0 ? '' : ' Met in none:'),
  );
  // tests/logic/program/vetoes/veto-coverage.test.ts shows what each of these stops.
  for (const id of unmet) console.log(`  ${id}: ${otherwise[id] ?? 'no reason is listed'}`);
  if (count >= 100_000 && unmet.some((id) => otherwise[id] === undefined)) process.exit(1);
}
