/**
 * The rule table that is in force: shipped rows with the clinic's own laid over them, checked as a whole.
 * A new exercise, rule, paper, text or threshold is one row in one of the JSON files beside this.
 */
import { upgradedClinicRules } from '../types/rule-table/clinic-rules-format.ts';
import { checkRuleTable } from '../types/rule-table/rule-checks.ts';
import { mergeClinicRules } from '../types/rule-table/clinic-merge.ts';
import { ClinicRules, RuleTable } from '../types/rules.ts';
import clashes from './table/clashes.json' with { type: 'json' };
import derivedCautions from './table/derived-cautions.json' with { type: 'json' };
import changeThresholds from './table/change-thresholds.json' with { type: 'json' };
import cautionTexts from './table/cautions.json' with { type: 'json' };
import contentsEnglish from './library/content/en.json' with { type: 'json' };
import contentsGerman from './library/content/de.json' with { type: 'json' };
import contentsSpanish from './library/content/es.json' with { type: 'json' };
import doses from './library/doses.json' with { type: 'json' };
import exercises from './library/exercises.json' with { type: 'json' };
import flagRules from './screen/flag-rules.json' with { type: 'json' };
import { screenTables, shippedItems, shippedRedFlags, shippedScreenThresholds } from './screen/items-schema.ts';
import { shippedLadderThresholds } from './table/ladder-thresholds.ts';
import measureFindings from './screen/measure-findings.json' with { type: 'json' };
import papers from './library/papers.json' with { type: 'json' };
import { RuleTableError } from '../types/rule-table/rule-table-error.ts';
import rulesHand from './table/rules-hand.json' with { type: 'json' };
import rulesSenses from './table/rules-senses.json' with { type: 'json' };
import rulesSetup from './table/rules-setup.json' with { type: 'json' };
import rulesWriting from './table/rules-writing.json' with { type: 'json' };
import setupItems from './screen/setup-items.json' with { type: 'json' };
import textThresholds from './library/texts/text-thresholds.json' with { type: 'json' };
import thresholds from './table/thresholds.json' with { type: 'json' };
import tiers from './table/tiers.json' with { type: 'json' };
import tools from './library/tools.json' with { type: 'json' };
import vetoes from './table/vetoes.json' with { type: 'json' };
import vocabulary from './table/vocabulary.json' with { type: 'json' };
import workThresholds from './table/work-thresholds.json' with { type: 'json' };
import writing from './library/writing.json' with { type: 'json' };

/** Of the shipped table; raised with every change to it. */
export const ruleVersion = '2026.39';

/** Findings of the vocabulary: intake items and set-up findings stand in their own table. */
const findings = [
  ...shippedItems.items.map((item) => ({
    code: item.code,
    name: item.title,
    from: 'item',
    sided: item.asksSide && item.sideOf === 'hand',
    pageSide: item.sideOf === 'page',
    details: (item.detail?.choices ?? []).map(({ code, title }) => ({ code, name: title })),
  })),
  ...shippedItems.setupFindings.map(({ code, title }) => ({
    code,
    name: title,
    from: 'setup',
    sided: false,
    pageSide: false,
    details: [],
  })),
  ...vocabulary.findings.map((each) => ({ ...each, pageSide: false })),
];

const paperDrawings: Readonly<Record<string, string>> = {
  graph: 'paper-squares',
  'dashed-midline': 'paper-dashed',
  ruled: 'paper-ruled',
  'plain-guided': 'paper-guide',
  plain: 'paper-plain',
};

/** Each paper and each text is an item of the library too, so that it can be added by hand. */
const paperItems = papers.map((paper) => ({
  code: `paper-${paper.code}`,
  ref: { kind: 'paper', code: paper.code },
  kind: 'paper',
  tier: paper.tier[0],
  title: paper.title,
  text: paper.text,
  dose: 'these-lines',
  dependsOn: [],
  hazards: [],
  cautions: [],
  drawing: paperDrawings[paper.family] ?? null,
  next: null,
  source: paper.source,
  sourceNote: paper.sourceNote,
}));
const contents = [...contentsEnglish, ...contentsSpanish, ...contentsGerman];
const contentItems = contents.map((content) => ({
  code: `text-${content.code}`,
  ref: { kind: 'content', code: content.code },
  kind: 'content',
  tier: content.tier[0],
  title: content.title,
  text: content.text,
  dose: 'these-lines',
  dependsOn: content.kind === 'dictation' ? ['language'] : [],
  hazards: content.kind === 'dictation' ? ['dictation'] : [],
  cautions: [],
  drawing: null,
  next: null,
  source: content.source,
  sourceNote: content.sourceNote,
}));

/** The shipped table as it lies in the files, before any check. */
export const shippedTable = {
  format: 'fairhand-rules',
  version: ruleVersion,
  vocabulary: { ...vocabulary, findings },
  thresholds: [
    ...thresholds,
    ...textThresholds,
    ...changeThresholds,
    ...workThresholds,
    ...shippedLadderThresholds,
    ...shippedScreenThresholds,
  ],
  measureFindings,
  redFlags: shippedRedFlags.flags,
  flagsFromAnswers: shippedRedFlags.fromAnswers,
  flagRules,
  derivedCautions,
  clashes,
  tiers,
  items: [...setupItems, ...exercises, ...writing, ...tools, ...paperItems, ...contentItems],
  rules: [...rulesSetup, ...rulesHand, ...rulesSenses, ...rulesWriting],
  vetoes,
  doses,
  papers,
  contents,
  cautionTexts,
};

/**
 * Reads any table against schema and cross-checks.
 * @throws RuleTableError naming every problem
 */
export function readRuleTable(data: unknown): RuleTable {
  const parsed = RuleTable.safeParse(data);
  if (!parsed.success) {
    throw new RuleTableError(
      parsed.error.issues.map((issue) => ({
        path: issue.path.map((step) => (typeof step === 'symbol' ? '?' : step)),
        reason: issue.message,
      })),
    );
  }
  const problems = checkRuleTable(parsed.data);
  if (problems.length > 0) throw new RuleTableError(problems);
  return parsed.data;
}

let shipped: RuleTable | null = null;

/**
 * The table in force.
 * @param clinic the clinic's own changes from the database; null or nothing = as shipped
 * @throws RuleTableError when the merged table is wrong; the caller keeps the working one
 */
export function rulesCurrent(clinic: ClinicRules | null = null): RuleTable {
  shipped ??= readRuleTable(shippedTable);
  if (!clinic) return shipped;
  const merged = readRuleTable(mergeClinicRules(shipped, ClinicRules.parse(upgradedClinicRules(clinic))));
  const { flags, fromAnswers } = screenTables(merged.thresholds).redFlagTable;
  return { ...merged, redFlags: flags, flagsFromAnswers: fromAnswers };
}

export { ClinicRules, RuleTable, RuleTableError };
