/**
 * What may be printed for home practice now. A flag or a caution may have come after a program was approved: paper is
 * checked again by the same functions that approval asks.
 */
import type { ProgramLine } from '../../../../db/types/program.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import { flagsOf, programInput } from '../../program/facts/from-record.ts';
import { checkProgram } from '../../program/draft/vetoes.ts';
import { type DatedRecord, programOf } from './page-facts.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export interface SafeProgram {
  /** The record with only those program lines that may be printed. */
  record: ClientRecord;
  /** An open red flag stops all practice. */
  stopped: boolean;
  /** Lines of the program that may be printed now. */
  allowed: ReadonlyMap<string, string>;
  hasProgram: boolean;
  warnings: string[];
}

const words = toldEnglish.printed;

/** Set-up advice and alternatives to writing may stay while a flag is open; practice may not. */
const practice: ReadonlySet<ProgramLine['kind']> = new Set([
  'warm-up',
  'exercise',
  'writing',
  'paper',
  'content',
  'tool',
]);

export function safeProgram(input: DatedRecord, rules: RulesInUse): SafeProgram {
  const { record } = input;
  const program = programOf(input);
  const flags = flagsOf(record, rules);
  const check = program ? checkProgram(program.lines, programInput(record, rules), rules) : null;
  const open = flags.open[0]?.title ?? check?.flags[0]?.title;
  const warnings: string[] = [];
  if (open !== undefined) warnings.push(words.redFlagOpen(open));
  const unsafe = new Map(
    (check?.lines ?? [])
      .filter((line) => !line.overridden)
      .map((line) => [line.lineId, words.leftOff(line.title, line.vetoes[0]?.because ?? words.cautionForbids)]),
  );
  if (open === undefined) warnings.push(...unsafe.values());
  const lines = (program?.lines ?? []).filter(
    (line) => !unsafe.has(line.id) && (open === undefined || !practice.has(line.kind)),
  );
  const allowed = new Map(lines.map((line) => [line.id, line.title]));
  if (!program || (open === undefined && unsafe.size === 0))
    return { record, stopped: open !== undefined, allowed, hasProgram: program !== null, warnings };
  const programs = record.programs.map((each) => (each.id === program.id ? { ...program, lines } : each));
  return { record: { ...record, programs }, stopped: open !== undefined, allowed, hasProgram: true, warnings };
}
