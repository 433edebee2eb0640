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
import { inEnglish } from '../../texts/languages.ts';
import type { Packet } from './packet.ts';

export interface SafeProgram {
  /** The record with only those program lines that may be printed. */
  record: ClientRecord;
  /** An open red flag stops all practice. */
  stopped: boolean;
  /** Titles of lines that a caution forbids. */
  unsafe: string[];
  warnings: string[];
}

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
  if (open !== undefined)
    warnings.push(
      `A red flag is open (${open}). No practice is printed until it was reviewed; the referral page says what to do.`,
    );
  const unsafe = new Map(
    (check?.lines ?? [])
      .filter((line) => !line.overridden)
      .map((line) => [
        line.lineId,
        `“${line.title}” was left off: ${line.vetoes[0]?.because ?? 'a caution forbids it.'}`,
      ]),
  );
  const unsafeTitles = program?.lines.filter((line) => unsafe.has(line.id)).map((line) => line.title) ?? [];
  if (open === undefined) warnings.push(...unsafe.values());
  if (!program || (open === undefined && unsafe.size === 0))
    return { record, stopped: open !== undefined, unsafe: [], warnings };
  const lines = program.lines.filter(
    (line) => !unsafe.has(line.id) && (open === undefined || !practice.has(line.kind)),
  );
  const programs = record.programs.map((each) => (each.id === program.id ? { ...program, lines } : each));
  return { record: { ...record, programs }, stopped: open !== undefined, unsafe: unsafeTitles, warnings };
}

/** Titles of the practice lines that a page shows, in the program's language; a practice sheet counts as one. */
export function practiceShown(packet: Pick<Packet, 'sheets'>): string[] {
  return packet.sheets.flatMap((sheet) =>
    sheet.type === 'practice'
      ? [sheet.title]
      : sheet.sections.flatMap((section) =>
          section.blocks.flatMap((block) =>
            block.kind === 'steps' ? block.items.map((step) => inEnglish(step.title)) : [],
          ),
        ),
  );
}

/** A page made earlier holds nothing that is unsafe now. */
export function mayBePrinted(packet: Pick<Packet, 'sheets'>, { stopped, unsafe }: SafeProgram): boolean {
  const shown = practiceShown(packet);
  return shown.length === 0 || (!stopped && !shown.some((title) => unsafe.includes(title)));
}
