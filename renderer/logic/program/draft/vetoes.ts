/**
 * What must not be given to this client, and why. Safety comes before every rule: what depends on something that was
 * not tested is forbidden too. Used for drafts, for what the therapist adds, and again at approval.
 */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { ProgramLine, Vetoed } from '../../../../db/types/program.ts';
import type { LibraryItem, RuleTable, Veto } from '../../../../db/types/rules.ts';
import { byCode } from '../../../../db/types/rule-table/once-for.ts';
import { answer } from '../facts/condition-holds.ts';
import type { Facts } from '../facts/fact-types.ts';
import { factsOf, isTested } from '../facts/program-facts.ts';
import { hazardsInWords } from '../clinic/hazard-words.ts';
import { ownItem } from '../clinic/own-item.ts';
import { type OpenFlag, openFlagsOf } from './stop.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

const words = toldEnglish.draft;

/** Rule id of the veto on what was not tested. */
export const notTestedRule = 'V00';

/** A veto that holds for the client now, or may hold because something was not tested. */
export interface ActiveVeto {
  veto: Veto;
  /** Facts that it rests on. */
  uses: readonly string[];
  /** Untested findings that leave it open; empty = it holds. */
  open: readonly string[];
}

/** Vetoes that hold or may hold for the client, in the order of the table. */
export function activeVetoes(facts: Facts, rules: RuleTable): ActiveVeto[] {
  return rules.vetoes.flatMap((veto) => {
    const { is, uses, open } = answer(veto.when, facts);
    return is === 'no' ? [] : [{ veto, uses, open: is === 'yes' ? [] : open }];
  });
}

const forbids = (veto: Veto, item: Pick<LibraryItem, 'code' | 'kind' | 'hazards'>): boolean =>
  veto.items.includes(item.code) ||
  veto.kinds.includes(item.kind) ||
  veto.hazards.some((hazard) => item.hazards.includes(hazard));

/** Findings and measures by their plain names, each with why it was not tested where somebody said so. */
function untestedNames(codes: readonly string[], facts: Facts, rules: RuleTable): string {
  return codes
    .map((code) => {
      const name =
        [...rules.vocabulary.findings, ...rules.vocabulary.measures].find((each) => each.code === code)?.name ?? code;
      const found = facts.findings.get(code);
      return found?.state === 'not-tested' && found.reason !== '' ? `"${name}" (${found.reason})` : `"${name}"`;
    })
    .join(', ');
}

/**
 * What stays open for a line that is given: vetoes that would forbid it if something that was not tested were found
 * low. A sentence each, for the therapist.
 */
export function leftOpen(line: ProgramLine, input: ProgramInput, rules: RuleTable): string[] {
  const facts = factsOf(input, rules);
  const item = itemBehind(line, byCode(rules.items));
  return activeVetoes(facts, rules)
    .filter(({ veto, open }) => open.length > 0 && forbids(veto, item))
    .map(({ veto, open }) => words.notKnown(untestedNames(open, facts, rules), veto.because));
}

/** Why an item is forbidden for this client; empty = it may be given. The untested come first. */
export function vetoesOf(
  item: LibraryItem,
  facts: Facts,
  rules: RuleTable,
  active: readonly ActiveVeto[] = activeVetoes(facts, rules),
): Vetoed[] {
  const untested = item.dependsOn.filter((code) => !isTested(facts, code));
  return [
    ...(untested.length === 0
      ? []
      : [
          {
            item: item.code,
            rule: notTestedRule,
            because: words.notTested(untestedNames(untested, facts, rules)),
          },
        ]),
    ...active
      .filter(({ veto }) => forbids(veto, item))
      // What is unknown forbids where the item depends on it.
      .filter(({ open }) => open.length === 0 || open.some((code) => item.dependsOn.includes(code)))
      .map(({ veto }) => ({ item: item.code, rule: veto.id, because: veto.because })),
  ];
}

export interface CheckedLine {
  lineId: string;
  title: string;
  vetoes: Vetoed[];
  /** The therapist gave a reason for keeping it. */
  overridden: boolean;
}

export interface ProgramCheck {
  /** Red flags that are open: nothing may be approved. */
  flags: OpenFlag[];
  /** Lines that a veto forbids, overridden or not. */
  lines: CheckedLine[];
  /** No open flag, and every forbidden line carries a reason. */
  mayApprove: boolean;
  /** One sentence when it may not; '' otherwise. */
  sentence: string;
}

/** The item behind a line; words that the therapist changed count beside what the item is. */
function itemBehind(line: ProgramLine, items: ReadonlyMap<string, LibraryItem>): LibraryItem {
  const known = line.item === null ? undefined : items.get(line.item);
  if (!known) return ownItem({ ...line, code: line.item ?? line.id });
  // The wording that is printed counts; where it is not known, every wording of the item does.
  const versions = known.versions.filter((each) => line.version === null || each.code === line.version);
  const hazards = [...known.hazards, ...versions.flatMap((each) => each.hazards)];
  const said = line.edited ? hazardsInWords(`${line.title}. ${line.text}`) : [];
  return { ...known, hazards: [...new Set([...hazards, ...said])] };
}

/**
 * Flags and vetoes of a program's lines, derived anew from the facts. Approval rests on this, not on what the window
 * showed.
 */
export function checkProgram(lines: readonly ProgramLine[], input: ProgramInput, rules: RuleTable): ProgramCheck {
  const facts = factsOf(input, rules);
  const flags = openFlagsOf(input, facts, rules);
  const active = activeVetoes(facts, rules);
  const items = byCode(rules.items);
  const checked = lines.flatMap((line): CheckedLine[] => {
    const vetoes = vetoesOf(itemBehind(line, items), facts, rules, active);
    return vetoes.length === 0
      ? []
      : [{ lineId: line.id, title: line.title, vetoes, overridden: (line.override?.reason.trim() ?? '') !== '' }];
  });
  const open = checked.filter((each) => !each.overridden);
  const first = open[0];
  const flag = flags[0];
  const sentence = flag
    ? words.flagOpen(flag.title)
    : first
      ? words.forbidden(first.title, first.vetoes[0]?.because ?? '')
      : '';
  return { flags, lines: checked, mayApprove: flags.length === 0 && open.length === 0, sentence };
}
