/**
 * The clinic's own exercises and rules: made in plain words, tried on the caseload before they count, kept as a file
 * that a colleague can import. Shipped rows are only covered, so they can always be restored.
 */
import { rolesToAsk, upgradedClinicRules } from '../../../../db/types/rule-table/clinic-rules-format.ts';
import { checkRuleTable } from '../../../../db/types/rule-table/rule-checks.ts';
import { mergeClinicRules } from '../../../../db/types/rule-table/clinic-merge.ts';
import { ClinicRules, type LibraryItem, type Rule, type RuleTable } from '../../../../db/types/rules.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';
import { plainIssue } from './file-issues.ts';
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
export function readClinicRules(text: string, shipped: RuleTable, words = toldEnglish.ruleFile): ReadRules {
  if (isTooDeep(text)) return refused(1, words.tooDeep);
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return refused(lineOfSyntaxError(text, (error as Error).message), words.unreadable);
  }
  const asks = rolesToAsk(data, shipped.items);
  data = upgradedClinicRules(data);
  const head = (data ?? {}) as Record<string, unknown>;
  if (head['format'] !== 'fairhand-clinic-rules') return refused(1, words.noRuleFile);
  if (head['formatVersion'] !== 2) {
    const line = lineOfPath(text, ['formatVersion']);
    return refused(line, words.version(JSON.stringify(head['formatVersion']) ?? words.none));
  }
  const parsed = ClinicRules.safeParse(data);
  if (!parsed.success) {
    const problems = parsed.error.issues.slice(0, MOST_PROBLEMS).map((issue) => {
      const { path, reason } = plainIssue(issue, data, words);
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
    problems.push({ line: lineOfPath(text, ['thresholds', unknown]), reason: words.noThreshold(unknown) });
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
