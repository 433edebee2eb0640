/** The therapist's edits of a draft: each returns new lines and touches nothing else. */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { Dose, LineKind, ProgramLine, Tier } from '../../../../db/types/program.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { factsOf } from '../facts/program-facts.ts';
import { lineOf } from '../draft/program-line.ts';
import { fittingVersion } from '../draft/versions.ts';
import { activeVetoes } from '../draft/vetoes.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** @param by places down (positive) or up; at an end it stays */
export function moved(lines: readonly ProgramLine[], id: string, by: number): ProgramLine[] {
  const from = lines.findIndex((line) => line.id === id);
  const to = Math.min(lines.length - 1, Math.max(0, from + by));
  const line = lines[from];
  if (!line || from === to) return [...lines];
  const rest = lines.filter((each) => each !== line);
  return [...rest.slice(0, to), line, ...rest.slice(to)];
}

/** Puts a line in front of another; at the end when `before` is null. */
export function movedBefore(lines: readonly ProgramLine[], id: string, before: string | null): ProgramLine[] {
  const line = lines.find((each) => each.id === id);
  if (!line || id === before) return [...lines];
  const rest = lines.filter((each) => each !== line);
  const at = before === null ? rest.length : rest.findIndex((each) => each.id === before);
  return [...rest.slice(0, at), line, ...rest.slice(at)];
}

export const without = (lines: readonly ProgramLine[], id: string): ProgramLine[] =>
  lines.filter((line) => line.id !== id);

/** Words or dose changed by hand: the line says so from then on. */
export const changed = (lines: readonly ProgramLine[], id: string, change: Partial<ProgramLine>): ProgramLine[] =>
  lines.map((line) => (line.id === id ? { ...line, ...change, edited: true } : line));

/** A library item added by hand, at the end of its kind. */
export function added(
  lines: readonly ProgramLine[],
  code: string,
  input: ProgramInput,
  rules: RuleTable,
  newId: string,
): ProgramLine[] {
  const item = rules.items.find((each) => each.code === code);
  if (!item || lines.some((line) => line.item === code)) return [...lines];
  const facts = factsOf(input, rules);
  const worded = fittingVersion(item, facts, rules, activeVetoes(facts, rules)).item ?? item;
  const line = { ...lineOf(worded, [], facts, rules), id: newId };
  const last = lines.findLastIndex((each) => each.kind === line.kind);
  const at = last < 0 ? lines.length : last + 1;
  return [...lines.slice(0, at), line, ...lines.slice(at)];
}

/** A line in the therapist's own words. */
export function ownLine(
  newId: string,
  kind: LineKind,
  tier: Tier,
  title: string,
  text: string,
  minutes: number | null,
): ProgramLine {
  const dose: Dose = {
    minutes,
    sets: null,
    reps: null,
    lines: null,
    restMinutes: null,
    timesPerDay: minutes === null ? null : 1,
    daysPerWeek: minutes === null ? 7 : 5,
    form: 'timed',
    how: '',
    text: '',
  };
  return {
    id: newId,
    item: null,
    kind,
    tier,
    title,
    text,
    version: null,
    keys: null,
    dose,
    rule: null,
    findings: [],
    source: 'clinic',
    sourceNote: '',
    cautions: [],
    because: toldEnglish.draft.ownLine,
    until: '',
    edited: true,
    override: null,
  };
}
