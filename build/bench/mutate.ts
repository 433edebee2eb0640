/**
 * `npm run mutate`: whether the worked cases hold the rule table. Each grade limit of rules, vetoes and flags moves by
 * one, each threshold by one step, each hazard leaves its veto; a case must fail each time. Survivors are listed with
 * their reason; exit 1 when one has none, or when more than ten are left.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { rulesCurrent } from '../../db/rules/index.ts';
import type { Condition } from '../../db/types/conditions.ts';
import type { RuleTable } from '../../db/types/rules.ts';
import { wrongWithCase } from '../../tests/logic/program/worked/judge-case.ts';
import { RuleCase } from '../../tests/logic/program/worked/rule-case.ts';
import { VetoCase, wrongWithVeto } from '../../tests/logic/program/worked/veto-case.ts';
import { ThresholdCase, wrongWithThreshold } from '../../tests/logic/program/worked/threshold-case.ts';

const rules = rulesCurrent();
const folder = join(import.meta.dirname, '../../tests/logic/program/cases');
const read = (name: string): unknown => JSON.parse(readFileSync(join(folder, name), 'utf8'));
const ruleCases = new Map(
  readdirSync(folder)
    .filter((name) => /^[RW]\d/.test(name))
    .map((name) => [name.replace('.json', ''), RuleCase.parse(read(name))]),
);
const vetoCases = VetoCase.array().parse(read('vetoes.json'));
const thresholdCases = ThresholdCase.array().parse(read('thresholds.json'));

/** Why a mutant may live: no client can tell it apart, or another row says the same. */
const reasons: Readonly<Record<string, string>> = {};

interface Mutant {
  name: string;
  table: RuleTable;
  /** Cases that may notice it; the rest cannot. */
  dies: () => boolean;
}

/** The condition with each of its grade limits moved by one, one at a time. */
function moved(condition: Condition): { name: string; condition: Condition }[] {
  const inside = (
    list: Condition[],
    wrap: (next: Condition[]) => Condition,
  ): { name: string; condition: Condition }[] =>
    list.flatMap((each, i) =>
      moved(each).map(({ name, condition: next }) => ({
        name,
        condition: wrap(list.map((one, k) => (k === i ? next : one))),
      })),
    );
  if ('all' in condition) return inside(condition.all, (all) => ({ all }));
  if ('any' in condition) return inside(condition.any, (any) => ({ any }));
  if ('not' in condition) return moved(condition.not).map((each) => ({ ...each, condition: { not: each.condition } }));
  if ('unless' in condition)
    return moved(condition.unless).map((each) => ({ ...each, condition: { unless: each.condition } }));
  if (!('finding' in condition)) return [];
  const limit = 'atMost' in condition ? condition.atMost : condition.atLeast;
  const word = 'atMost' in condition ? 'atMost' : 'atLeast';
  return [limit - 1, limit + 1]
    .filter((next) => next >= 0 && next <= 3)
    .map((next) => ({
      name: `${condition.finding} ${word} ${limit} -> ${next}`,
      condition: 'atMost' in condition ? { ...condition, atMost: next } : { ...condition, atLeast: next },
    }));
}

const swap = <T>(list: readonly T[], at: number, next: T): T[] => list.map((each, i) => (i === at ? next : each));

function* mutants(): Generator<Mutant> {
  for (const [at, rule] of rules.rules.entries()) {
    for (const { name, condition } of moved(rule.when)) {
      const table = { ...rules, rules: swap(rules.rules, at, { ...rule, when: condition }) };
      const own = ruleCases.get(rule.id);
      yield {
        name: `${rule.id}: ${name}`,
        table,
        dies: () => own !== undefined && wrongWithCase(rule.id, own, table).length > 0,
      };
    }
  }
  for (const [at, veto] of rules.vetoes.entries()) {
    const own = vetoCases.filter((each) => each.id === veto.id);
    const dies = (table: RuleTable) => () => own.some((each) => wrongWithVeto(each, table).length > 0);
    for (const { name, condition } of moved(veto.when)) {
      const table = { ...rules, vetoes: swap(rules.vetoes, at, { ...veto, when: condition }) };
      yield { name: `${veto.id}: ${name}`, table, dies: dies(table) };
    }
    for (const hazard of veto.hazards) {
      const table = {
        ...rules,
        vetoes: swap(rules.vetoes, at, { ...veto, hazards: veto.hazards.filter((each) => each !== hazard) }),
      };
      yield { name: `${veto.id}: without ${hazard}`, table, dies: dies(table) };
    }
  }
  for (const [at, row] of rules.thresholds.entries()) {
    // Numbers of the screen and of the model of change have gates of their own.
    const size = row.step;
    if (size === undefined) continue;
    const own = thresholdCases.filter((each) => each.code === row.code);
    for (const step of [-1, 1]) {
      const table = { ...rules, thresholds: swap(rules.thresholds, at, { ...row, value: row.value + step * size }) };
      yield {
        name: `${row.code}: ${row.value} ${step > 0 ? '+' : '-'} ${size}`,
        table,
        dies: () => own.some((each) => wrongWithThreshold(each, table).length > 0),
      };
    }
  }
}

const survivors: string[] = [];
let count = 0;
for (const mutant of mutants()) {
  count += 1;
  if (!mutant.dies()) survivors.push(mutant.name);
}
const open = survivors.filter((name) => reasons[name] === undefined);
console.log(`${count} mutants of rule table ${rules.version}, ${survivors.length} survive.`);
for (const name of survivors) console.log(`  ${name}: ${reasons[name] ?? 'NO REASON'}`);
if (open.length > 0 || survivors.length > 10) process.exit(1);
