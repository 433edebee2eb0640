import { rulesCurrent } from '../../../db/rules/index.ts';
import { ProgramInput } from '../../../db/types/program-input.ts';
import type { RuleTable } from '../../../db/types/rules.ts';

export const rules: RuleTable = rulesCurrent();

/** Codes of the intake items. */
/** Told apart only where words are hard: a 3 in them says something of its own. */
const onlyAsked = new Set(['spelling', 'pen-use', 'motor-letters']);

export const itemCodes = rules.vocabulary.findings
  .filter((each) => each.from === 'item' && !onlyAsked.has(each.code))
  .map((each) => each.code);

type Grades = Record<string, 0 | 1 | 2 | 3 | null>;

/** A right-handed client with every item tested and fine, except for `grades`; details as `{ tremor: 'end-point' }`. */
export function client(
  grades: Grades = {},
  more: Record<string, unknown> & { details?: Record<string, string> } = {},
): ProgramInput {
  const { details = {}, ...rest } = more;
  const all: Grades = { ...Object.fromEntries(itemCodes.map((code) => [code, 3])), ...grades };
  return ProgramInput.parse({
    version: 1,
    hand: 'right',
    findings: Object.entries(all).map(([code, grade]) => ({
      code,
      grade,
      side: 'right',
      source: 'screen',
      detail: details[code] ?? null,
    })),
    ...rest,
  });
}

export const itemsOf = (draft: { lines: { item: string | null }[] }): string[] =>
  draft.lines.map((line) => line.item ?? '');
