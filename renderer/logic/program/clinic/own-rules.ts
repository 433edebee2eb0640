/**
 * The clinic's own exercises and rules: made in plain words, tried on the caseload before they count, kept as a file
 * that a colleague can import. Shipped rows are only covered, so they can always be restored.
 */
import { rolesToAsk, upgradedClinicRules } from '../../../../db/types/rule-table/clinic-rules-format.ts';
import { checkRuleTable, mergeClinicRules } from '../../../../db/types/rule-table/rule-checks.ts';
import { ClinicRules, type Hazard, type LibraryItem, type Rule, type RuleTable } from '../../../../db/types/rules.ts';
import type { Condition } from '../../../../db/types/conditions.ts';
import type { LineKind, Tier } from '../../../../db/types/program.ts';
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import { compose } from '../draft/compose.ts';
import { plainIssue } from './file-issues.ts';
import { hazardsInWords } from './hazard-words.ts';
import { isTooDeep, lineOfPath, lineOfSyntaxError } from './json-lines.ts';

export interface FileProblem {
  /** Counted from 1. */
  line: number;
  reason: string;
}
/** `asks`: rules of an old file that give writing, whose part in the day is asked. */
export type ReadRules = { ok: true; rules: ClinicRules; asks: string[] } | { ok: false; problems: FileProblem[] };

/** More are not told at once: each is looked up in the whole text. */
const MOST_PROBLEMS = 25;

const refused = (line: number, reason: string): ReadRules => ({ ok: false, problems: [{ line, reason }] });

/**
 * Reads a clinic's rule file against the shipped table. Refused whole, with line and reason, when anything in it does
 * not fit; the table in use is not touched.
 */
export function readClinicRules(text: string, shipped: RuleTable): ReadRules {
  if (isTooDeep(text)) return refused(1, 'The file is nested too deep for a rule file.');
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused(
      lineOfSyntaxError(text, (error as Error).message),
      'The file cannot be read from here on: a quote, comma or bracket is missing or too many.',
    );
  }
  const asks = rolesToAsk(data, shipped.items);
  data = upgradedClinicRules(data);
  const head = (data ?? {}) as Record<string, unknown>;
  if (head['format'] !== 'fairhand-clinic-rules') return refused(1, 'This is not a rule file of a clinic.');
  if (head['formatVersion'] !== 2) {
    const line = lineOfPath(text, ['formatVersion']);
    return refused(
      line,
      `The file has version ${JSON.stringify(head['formatVersion']) ?? 'none'}; versions 1 and 2 can be read.`,
    );
  }
  const parsed = ClinicRules.safeParse(data);
  if (!parsed.success) {
    const problems = parsed.error.issues.slice(0, MOST_PROBLEMS).map((issue) => {
      const { path, reason } = plainIssue(issue, data);
      return { line: lineOfPath(text, path), reason };
    });
    return { ok: false, problems };
  }
  const merged = mergeClinicRules(shipped, parsed.data);
  const problems = checkRuleTable(merged)
    .slice(0, MOST_PROBLEMS)
    .map(({ path, reason }) => ({
      line: lineOfPath(text, inFile(path, merged, parsed.data)),
      reason,
    }));
  const unknown = Object.keys(parsed.data.thresholds).find(
    (code) => !shipped.thresholds.some((each) => each.code === code),
  );
  if (unknown !== undefined)
    problems.push({ line: lineOfPath(text, ['thresholds', unknown]), reason: `There is no threshold "${unknown}".` });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, rules: parsed.data, asks };
}

/** A place in the merged table as a place in the clinic's file. */
function inFile(path: (string | number)[], merged: RuleTable, clinic: ClinicRules): (string | number)[] {
  const [list, index, ...rest] = path;
  if (typeof index !== 'number') return path;
  if (list === 'items')
    return ['items', clinic.items.findIndex((each) => each.code === merged.items[index]?.code), ...rest];
  if (list === 'rules')
    return ['rules', clinic.rules.findIndex((each) => each.id === merged.rules[index]?.id), ...rest];
  if (list === 'thresholds') return ['thresholds', merged.thresholds[index]?.code ?? ''];
  return [];
}

export const writeClinicRules = (rules: ClinicRules): string => `${JSON.stringify(rules, null, 2)}\n`;

export const noClinicRules = (shipped: RuleTable): ClinicRules => ({
  format: 'fairhand-clinic-rules',
  formatVersion: 2,
  revision: 0,
  basedOn: shipped.version.replace(/\+.*$/, ''),
  items: [],
  rules: [],
  thresholds: {},
  off: [],
});

/** What the form asks: when all of these hold, then this item. */
export interface RuleForm {
  findings: { code: string; atMost: 0 | 1 | 2 }[];
  cautions: string[];
  diagnoses: string[];
  item: string;
  because: string;
  /** Asked where the item is writing: whether it is the day's main writing, which takes the dose first. */
  role: Rule['role'];
}

/** Next free id of the clinic's own rules: C01, C02, … */
export function nextRuleId(clinic: ClinicRules): string {
  const used = clinic.rules.flatMap((each) => Number(/^C(\d+)$/.exec(each.id)?.[1] ?? 0));
  return `C${String(Math.max(0, ...used) + 1).padStart(2, '0')}`;
}

/** A rule from the form; the sentence says what is still missing. */
export function ruleFromForm(form: RuleForm, id: string): { ok: true; rule: Rule } | { ok: false; reason: string } {
  const conditions: Condition[] = [
    ...form.findings.map(({ code, atMost }) => ({ finding: code, atMost })),
    ...form.diagnoses.map((diagnosis) => ({ diagnosis })),
    ...form.cautions.map((caution) => ({ caution })),
  ];
  if (conditions.length === 0) return { ok: false, reason: 'Name at least one finding, diagnosis or circumstance.' };
  if (form.item === '') return { ok: false, reason: 'Choose what the rule gives.' };
  if (form.because.trim() === '') return { ok: false, reason: 'Say why, in one sentence.' };
  return {
    ok: true,
    rule: {
      id,
      when: { all: conditions },
      role: form.role,
      gives: [form.item],
      dose: null,
      because: form.because.trim(),
      advance: 'As the therapist decides.',
      stepBack: '',
      source: 'clinic',
      sourceNote: '',
    },
  };
}

/** What the form for an exercise of one's own asks. The hazards decide what can forbid it. */
export interface ItemForm {
  title: string;
  text: string;
  kind: LineKind;
  tier: Tier;
  dose: string;
  hazards: Hazard[];
  cautions: string[];
}

const base: Readonly<Record<string, string[]>> = {
  writing: ['grasp', 'pain', 'skin'],
  exercise: ['pain', 'skin', 'tone'],
  'warm-up': ['pain', 'skin', 'tone'],
};

/** An own exercise depends on what every exercise of its kind depends on, and prints at least one caution. */
export function itemFromForm(form: ItemForm, code: string): LibraryItem {
  const hazards = [...new Set([...form.hazards, ...hazardsInWords(`${form.title}. ${form.text}`)])];
  const moves = form.kind === 'exercise' || form.kind === 'warm-up';
  return {
    code,
    kind: form.kind,
    tier: form.tier,
    title: form.title.trim(),
    text: form.text.trim(),
    dose: form.dose,
    dependsOn: base[form.kind] ?? [],
    hazards,
    cautions: [...new Set([...form.cautions, ...(moves || hazards.length > 0 ? ['stop-pain', 'helper-needed'] : [])])],
    drawing: null,
    next: null,
    versions: [],
    additions: [],
    onTier: 'own',
    occasion: null,
    opening: false,
    ownPlace: false,
    source: 'clinic',
    sourceNote: '',
  };
}

/** The same rules, one of them with its part in the day said. */
export const withRole = (clinic: ClinicRules, id: string, role: Rule['role']): ClinicRules => ({
  ...clinic,
  rules: clinic.rules.map((each) => (each.id === id ? { ...each, role } : each)),
});

/** Adds or replaces rows and counts the revision up. */
export function withOwn(clinic: ClinicRules, own: { rule?: Rule; item?: LibraryItem; off?: string[] }): ClinicRules {
  return {
    ...clinic,
    revision: clinic.revision + 1,
    rules: own.rule ? [...clinic.rules.filter((each) => each.id !== own.rule?.id), own.rule] : clinic.rules,
    items: own.item ? [...clinic.items.filter((each) => each.code !== own.item?.code), own.item] : clinic.items,
    off: own.off ?? clinic.off,
  };
}

export interface Trial {
  /** Drafts that would come out differently, of all drafts. */
  changed: number;
  of: number;
  /** Positions of those clients in the list given. */
  clients: number[];
  sentence: string;
}

/**
 * "Would change 3 of 41 drafts": the same clients drafted with both tables.
 * @param inputsAfter the clients as the new table sees them, where it changes what counts as a finding
 */
export function tryOnCaseload(
  inputs: readonly ProgramInput[],
  before: RuleTable,
  after: RuleTable,
  inputsAfter: readonly ProgramInput[] = inputs,
): Trial {
  const draft = (input: ProgramInput, rules: RuleTable): string =>
    JSON.stringify(compose(input, rules).lines.map((line) => [line.item, line.dose, line.text]));
  const clients = inputs.flatMap((input, i) =>
    draft(input, before) === draft(inputsAfter[i] ?? input, after) ? [] : [i],
  );
  return {
    changed: clients.length,
    of: inputs.length,
    clients,
    sentence: `Would change ${clients.length} of ${inputs.length} draft${inputs.length === 1 ? '' : 's'}.`,
  };
}

/** More than this many clients are counted only. */
const NAMED = 12;

/** What a trial says, with the clients whose drafts it would change. */
export function trialWords(sentence: string, codes: readonly string[]): string {
  if (codes.length === 0) return sentence;
  const named = codes.slice(0, NAMED).join(', ');
  const more = codes.length > NAMED ? ` and ${codes.length - NAMED} more` : '';
  return `${sentence} Of: ${named}${more}.`;
}
