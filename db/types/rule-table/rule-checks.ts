/**
 * What a schema alone cannot see in a rule table: names that do not exist, a risk without its caution, a chain that
 * bites its tail. Used when the table is loaded, when a file is imported and when a rule is made on the screen.
 */
import type { Condition } from '../conditions.ts';
import type { Hazard, RuleTable } from '../rules.ts';

export interface RuleProblem {
  /** Path into the table or file, as zod writes it. */
  path: (string | number)[];
  reason: string;
}

/** Hazards that never go without a printed caution. */
export const risky: ReadonlySet<Hazard> = new Set<Hazard>([
  'brisk',
  'putty',
  'pinch',
  'resistance',
  'weight-bearing',
  'stretch',
  'neck-stretch',
  'angled',
  'opposition',
  'finger-work',
  'weights',
  'speed',
  'standing',
  'eyes-closed',
  'textures',
  'small-objects',
  'sleeve',
  'slant',
  'seat-raise',
]);

interface Names {
  findings: ReadonlySet<string>;
  details: ReadonlyMap<string, ReadonlySet<string>>;
  cautions: ReadonlySet<string>;
  flags: ReadonlySet<string>;
  diagnoses: ReadonlySet<string>;
  measures: ReadonlySet<string>;
  thresholds: ReadonlySet<string>;
  occasions: ReadonlySet<string>;
}

const namesOf = (table: RuleTable): Names => ({
  findings: new Set(table.vocabulary.findings.map((each) => each.code)),
  details: new Map(table.vocabulary.findings.map((each) => [each.code, new Set(each.details.map((one) => one.code))])),
  cautions: new Set(table.vocabulary.cautions.map((each) => each.code)),
  flags: new Set(table.redFlags.map((each) => each.code)),
  diagnoses: new Set([
    ...table.vocabulary.diagnoses.map((each) => each.code),
    ...Object.keys(table.vocabulary.diagnosisGroups),
  ]),
  measures: new Set(table.vocabulary.measures.map((each) => each.code)),
  thresholds: new Set(table.thresholds.map((each) => each.code)),
  occasions: new Set(table.vocabulary.occasions.map((each) => each.code)),
});

function checkCondition(condition: Condition, names: Names, path: (string | number)[]): RuleProblem[] {
  const known = (set: ReadonlySet<string>, code: string, what: string): RuleProblem[] =>
    set.has(code) ? [] : [{ path, reason: `There is no ${what} "${code}" in the vocabulary.` }];
  if ('all' in condition) return condition.all.flatMap((each, i) => checkCondition(each, names, [...path, 'all', i]));
  if ('any' in condition) return condition.any.flatMap((each, i) => checkCondition(each, names, [...path, 'any', i]));
  if ('not' in condition) return checkCondition(condition.not, names, [...path, 'not']);
  if ('unless' in condition) return checkCondition(condition.unless, names, [...path, 'unless']);
  if ('flag' in condition) return known(names.flags, condition.flag, 'red flag');
  if ('otherHand' in condition) return known(names.cautions, condition.otherHand, 'caution');
  if ('otherFinding' in condition) return known(names.findings, condition.otherFinding, 'finding');
  if ('occasion' in condition) return known(names.occasions, condition.occasion, 'occasion');
  if ('finding' in condition) return known(names.findings, condition.finding, 'finding');
  if ('untested' in condition) return known(names.findings, condition.untested, 'finding');
  if ('caution' in condition) return known(names.cautions, condition.caution, 'caution');
  if ('diagnosis' in condition) return known(names.diagnoses, condition.diagnosis, 'diagnosis');
  if ('detail' in condition) {
    const details = names.details.get(condition.detail);
    if (!details) return known(names.findings, condition.detail, 'finding');
    return condition.is.flatMap((each) => known(details, each, `detail of "${condition.detail}" called`));
  }
  const limits = (each: { below: string } | { above: string } | { from: string }): RuleProblem[] =>
    known(names.thresholds, 'below' in each ? each.below : 'above' in each ? each.above : each.from, 'threshold');
  if ('measure' in condition) return [...known(names.measures, condition.measure, 'measure'), ...limits(condition)];
  if ('ratio' in condition) {
    return [...condition.ratio.flatMap((each) => known(names.measures, each, 'measure')), ...limits(condition)];
  }
  return [];
}

function duplicates(codes: readonly string[], list: string): RuleProblem[] {
  const seen = new Set<string>();
  return codes.flatMap((code, i) => {
    if (!seen.has(code)) {
      seen.add(code);
      return [];
    }
    return [{ path: [list, i], reason: `"${code}" stands twice in ${list}.` }];
  });
}

/** Chains of harder items (`next`) must end. */
function cycles(items: RuleTable['items']): RuleProblem[] {
  const next = new Map(items.map((item) => [item.code, item.next]));
  return items.flatMap((item, i) => {
    const seen = new Set<string>([item.code]);
    for (let code = item.next; code; code = next.get(code) ?? null) {
      if (code === item.code)
        return [
          { path: ['items', i, 'next'], reason: `The chain of next steps from "${item.code}" comes back to itself.` },
        ];
      if (seen.has(code)) return [];
      seen.add(code);
    }
    return [];
  });
}

/** Units of scores and counts. */
const wholeUnits: ReadonlySet<string> = new Set(['of 3', 'retests']);

/** "At least" must not pass "at most", and a better score never allows more than a worse one. */
function thresholdOrder(thresholds: RuleTable['thresholds']): RuleProblem[] {
  const values = new Map(thresholds.map((each) => [each.code, each]));
  return thresholds.flatMap((each, i) => {
    const upper = /-min$/.test(each.code)
      ? values.get(each.code.replace(/-min$/, '-max'))
      : /^rating-.*-[32]$/.test(each.code)
        ? values.get(each.code.replace(/[32]$/, (grade) => `${Number(grade) - 1}`))
        : undefined;
    const least = each.code.startsWith('rating-') ? each.value + 1 : each.value;
    return upper && upper.value < least
      ? [{ path: ['thresholds', i, 'value'], reason: `"${each.name}" must stay below "${upper.name}".` }]
      : [];
  });
}

function checkItems(table: RuleTable, names: Names): RuleProblem[] {
  const items = new Set(table.items.map((each) => each.code));
  const doses = new Set(table.doses.map((each) => each.code));
  const texts = new Set(table.cautionTexts.map((each) => each.code));
  return table.items.flatMap((item, i) => {
    const say = (field: string, reason: string): RuleProblem => ({ path: ['items', i, field], reason });
    const out: RuleProblem[] = [];
    item.versions.forEach((each, k) => out.push(...checkCondition(each.when, names, ['items', i, 'versions', k])));
    item.additions.forEach((each, k) => out.push(...checkCondition(each.when, names, ['items', i, 'additions', k])));
    for (const code of item.versions.flatMap((each) => each.cautions)) {
      if (!texts.has(code)) out.push(say('versions', `There is no caution text "${code}".`));
    }
    if (!doses.has(item.dose)) out.push(say('dose', `There is no dose "${item.dose}".`));
    if (item.next && !items.has(item.next)) out.push(say('next', `There is no item "${item.next}".`));
    for (const code of item.cautions) {
      if (!texts.has(code)) out.push(say('cautions', `There is no caution text "${code}".`));
    }
    for (const code of item.dependsOn) {
      if (!names.findings.has(code)) out.push(say('dependsOn', `There is no finding "${code}" in the vocabulary.`));
    }
    const risk = item.hazards.find((each) => risky.has(each));
    if (risk && item.cautions.length === 0) {
      out.push(say('cautions', `"${item.code}" can hurt (${risk}), so it needs a caution.`));
    }
    if ((item.kind === 'exercise' || item.kind === 'warm-up') && item.dependsOn.length === 0) {
      out.push(say('dependsOn', `"${item.code}" must name what has to be tested first.`));
    }
    return out;
  });
}

/** Everything wrong with a merged table; an empty list = it may be used. */
export function checkRuleTable(table: RuleTable): RuleProblem[] {
  const names = namesOf(table);
  const items = new Set(table.items.map((each) => each.code));
  const doses = new Set(table.doses.map((each) => each.code));
  const flags = new Set(table.redFlags.map((each) => each.code));
  const codes = <T extends { code: string }>(list: readonly T[]): string[] => list.map((each) => each.code);
  return [
    ...duplicates(codes(table.items), 'items'),
    ...duplicates(
      table.rules.map((each) => each.id),
      'rules',
    ),
    ...duplicates(
      table.vetoes.map((each) => each.id),
      'vetoes',
    ),
    ...duplicates(codes(table.doses), 'doses'),
    ...duplicates(codes(table.thresholds), 'thresholds'),
    ...duplicates(codes(table.cautionTexts), 'cautionTexts'),
    ...duplicates(codes(table.contents), 'contents'),
    ...duplicates(codes(table.papers), 'papers'),
    ...duplicates(codes(table.vocabulary.findings), 'vocabulary'),
    ...duplicates(codes(table.vocabulary.cautions), 'vocabulary'),
    ...cycles(table.items),
    ...checkItems(table, names),
    ...table.rules.flatMap((rule, i) => [
      ...checkCondition(rule.when, names, ['rules', i, 'when']),
      ...rule.gives
        .filter((code) => !items.has(code))
        .map((code) => ({ path: ['rules', i, 'gives'], reason: `There is no item "${code}".` })),
      ...(rule.dose && !doses.has(rule.dose)
        ? [{ path: ['rules', i, 'dose'], reason: `There is no dose "${rule.dose}".` }]
        : []),
    ]),
    ...table.vetoes.flatMap((veto, i) => [
      ...checkCondition(veto.when, names, ['vetoes', i, 'when']),
      ...veto.items
        .filter((code) => !items.has(code))
        .map((code) => ({ path: ['vetoes', i, 'items'], reason: `There is no item "${code}".` })),
      ...(veto.items.length + veto.hazards.length + veto.kinds.length === 0
        ? [{ path: ['vetoes', i], reason: `Veto ${veto.id} forbids nothing.` }]
        : []),
    ]),
    ...table.cautionTexts.flatMap((text, i) =>
      text.when ? checkCondition(text.when, names, ['cautionTexts', i, 'when']) : [],
    ),
    ...table.measureFindings.flatMap((row, i) => [
      ...(names.findings.has(row.finding)
        ? []
        : [{ path: ['measureFindings', i], reason: `There is no finding "${row.finding}".` }]),
      ...row.grades.flatMap((each, k) => checkCondition(each.when, names, ['measureFindings', i, 'grades', k])),
    ]),
    ...table.derivedCautions.flatMap((row, i) => [
      ...(names.cautions.has(row.caution)
        ? []
        : [{ path: ['derivedCautions', i], reason: `There is no caution "${row.caution}".` }]),
      ...checkCondition(row.when, names, ['derivedCautions', i, 'when']),
    ]),
    ...table.clashes.flatMap((row, i) =>
      row.alternatives
        .flat()
        .filter((code) => !items.has(code))
        .map((code) => ({ path: ['clashes', i], reason: `There is no item "${code}".` })),
    ),
    ...table.flagRules.flatMap((row, i) => [
      ...(flags.has(row.flag) ? [] : [{ path: ['flagRules', i], reason: `There is no red flag "${row.flag}".` }]),
      ...checkCondition(row.when, names, ['flagRules', i, 'when']),
    ]),
    ...thresholdOrder(table.thresholds),
    ...table.thresholds.flatMap((each, i) =>
      wholeUnits.has(each.unit) && !Number.isInteger(each.value)
        ? [{ path: ['thresholds', i, 'value'], reason: `"${each.name}" must be a whole number.` }]
        : [],
    ),
    ...table.thresholds
      .map((each, i) => ({ each, i }))
      .filter(({ each }) => each.value < each.min || each.value > each.max)
      .map(({ each, i }) => ({
        path: ['thresholds', i, 'value'],
        reason: `"${each.name}" must lie between ${each.min} and ${each.max} ${each.unit}.`,
      })),
  ];
}
