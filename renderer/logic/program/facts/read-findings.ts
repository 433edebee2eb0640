/** Reads what a program is composed from, and refuses by name what the rule table does not know. */
import { ProgramInput } from '../../../../db/types/program-input.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { splitDetail } from './program-facts.ts';

export type ReadFindings = { ok: true; input: ProgramInput } | { ok: false; reason: string };

const refuse = (reason: string): ReadFindings => ({ ok: false, reason });

/** First code of a list that a set does not hold. */
const unknown = (codes: readonly string[], known: readonly { code: string }[]): string | undefined => {
  const set = new Set(known.map((each) => each.code));
  return codes.find((code) => !set.has(code));
};

function shapeProblem(path: readonly PropertyKey[], message: string): string {
  if (path.length === 0) return `The findings have the wrong shape: ${message}.`;
  const place = path.map((step) => (typeof step === 'number' ? `entry ${step + 1}` : `"${String(step)}"`)).join(', ');
  return `At ${place} of the findings: ${message}.`;
}

/**
 * @param data parsed JSON of FINDINGS.json
 * @returns the input with its gaps filled, or one sentence that names what is wrong
 */
export function readFindings(data: unknown, rules: RuleTable): ReadFindings {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    return refuse('The findings must be one JSON object with "version" and "findings".');
  }
  const version = (data as Record<string, unknown>)['version'];
  if (version !== 1) {
    return refuse(`The findings carry version ${JSON.stringify(version) ?? 'none'}; this Fairhand reads version 1.`);
  }
  const parsed = ProgramInput.safeParse(data);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return refuse(shapeProblem(issue?.path ?? [], (issue?.message ?? 'wrong').replace(/\.$/, '')));
  }
  const input = parsed.data;
  const { vocabulary } = rules;

  for (const finding of input.findings) {
    const plain = splitDetail(finding, rules);
    const row = vocabulary.findings.find((each) => each.code === plain.code);
    if (!row) return refuse(`There is no finding "${finding.code}". "program --list-codes" prints the codes.`);
    if (plain.detail != null && !row.details.some((each) => each.code === plain.detail)) {
      return refuse(`The finding "${plain.code}" has no detail "${plain.detail}".`);
    }
  }
  const flags = input.redFlags.map((each) => (typeof each === 'string' ? each : each.code));
  // What follows from other facts is found, not said.
  const said = vocabulary.cautions.filter((each) => each.group !== 'derived');
  const lists = [
    ['red flag', flags, rules.redFlags],
    ['caution', input.cautions.map((each) => (typeof each === 'string' ? each : each.code)), said],
    ['occasion', input.occasions.map((each) => each.code), vocabulary.occasions],
    ['diagnosis', input.diagnoses, vocabulary.diagnoses],
    ['measure', input.measures.map((each) => each.code), vocabulary.measures],
  ] as const;
  for (const [what, codes, known] of lists) {
    const code = unknown(codes, known);
    if (code !== undefined) return refuse(`There is no ${what} "${code}". "program --list-codes" prints the codes.`);
  }
  for (const { code, unit, value } of input.measures) {
    const units = vocabulary.measures.find((each) => each.code === code)?.units ?? [];
    if (value !== null && !units.includes(unit)) {
      return refuse(`The measure "${code}" is understood in ${units.join(' or ')}, not in "${unit}".`);
    }
  }
  return { ok: true, input };
}
