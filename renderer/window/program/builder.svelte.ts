/**
 * The program on the screen: the stored draft of this visit, or one that is derived at once and stored with the first
 * change. An approved program is frozen; a new visit starts from a copy of it.
 */
import { limitsOf } from '../../logic/rules/limits.ts';
import type { Program, ProgramLine } from '../../../db/types/program.ts';
import type { OpenRecord } from '../frame/open-record.svelte.ts';
import { dayDose } from '../../logic/program/draft/day-dose.ts';
import { dayOf } from '../../logic/program/draft/day.ts';
import { added, changed, moved, movedBefore, without } from '../../logic/program/clinic/edit-lines.ts';
import { compose } from '../../logic/program/draft/compose.ts';
import { factsOf } from '../../logic/program/facts/program-facts.ts';
import { draftProgram, programInput } from '../../logic/program/facts/from-record.ts';
import type { Move } from '../../logic/program/ladder/paper-ladder.ts';
import { propose } from '../../logic/program/ladder/proposals.ts';
import {
  approvedPrograms,
  lastChange,
  stepSignsOf,
  sessionsOf,
  practiceBack,
} from '../../logic/program/ladder/sessions.ts';
import { speakerOf } from '../../logic/texts/said-line.ts';
import { inTable, shownPageLanguage, shownTable, telling } from '../parts/say.svelte.ts';
import { checkProgram } from '../../logic/program/draft/vetoes.ts';

type Draft = Omit<Program, 'at' | 'by'>;

export class Builder {
  readonly open: OpenRecord;
  /** Basis of a draft that is not stored yet. */
  basis = $state<'findings' | 'last'>('findings');
  /** Code of the finding or id of the line that stays lit, by a click. */
  lit = $state<string | null>(null);
  /** The same while the pointer or the focus is on it. */
  under = $state<string | null>(null);
  shown = $derived.by(() => this.under ?? this.lit);
  #unsavedId: string;

  constructor(open: OpenRecord) {
    this.open = open;
    this.#unsavedId = open.newId();
    this.basis = this.last ? 'last' : 'findings';
  }

  /** The table as it is shown; drafts are made and kept from the record's own. */
  rules = $derived.by(() => shownTable(this.open.rules));
  /** What no wording of the therapist's own has changed, in the shown language. */
  #speaker = $derived.by(() => speakerOf(this.open.rules, shownPageLanguage()));
  said = (line: ProgramLine): ProgramLine => {
    if (shownPageLanguage() === 'en') return line;
    const said = this.#speaker.line(line);
    return {
      ...said,
      title: inTable(said.title),
      text: inTable(said.text),
      cautions: said.cautions.map(inTable),
      sourceNote: inTable(said.sourceNote),
      because: inTable(said.because),
      until: inTable(said.until),
    };
  };
  /** The lines in the words that are shown. */
  shownLines = $derived.by(() => this.lines.map(this.said));
  input = $derived.by(() => programInput(this.open.record, this.open.rules, this.open.visitId));
  composed = $derived.by(() => compose(this.input, this.open.rules));
  /** The newest program of this visit. */
  stored = $derived.by(() =>
    this.open.record.programs
      .filter((each) => each.visitId === this.open.visitId)
      .sort((a, b) => a.at.localeCompare(b.at))
      .at(-1),
  );
  /** The approved program before the one on the screen. */
  last = $derived.by(() =>
    approvedPrograms(this.open.record)
      .filter((each) => each.id !== this.stored?.id)
      .at(-1),
  );
  program = $derived.by((): Draft => this.stored ?? this.#fresh(this.basis));
  frozen = $derived.by(() => this.program.status === 'approved');
  lines = $derived.by(() => this.program.lines);
  check = $derived.by(() => checkProgram(this.lines, this.input, this.open.rules));
  /** What the day holds, against its limits. */
  day = $derived.by(() => dayOf(this.lines, dayDose(this.input, factsOf(this.input, this.open.rules))));
  #shownLine = $derived.by(() => this.lines.find((line) => line.id === this.shown));
  findingLit = (code: string): boolean => this.shown === code || (this.#shownLine?.findings.includes(code) ?? false);
  lineLit = (line: ProgramLine): boolean =>
    this.shown !== null && (line.id === this.shown || line.findings.includes(this.shown));
  pin = (of: string): void => void (this.lit = this.lit === of ? null : of);
  proposal = $derived.by(() => {
    const basis = this.last;
    if (!basis) return null;
    const xHeight = this.input.measures.find((each) => each.code === 'x-height' && each.unit === 'mm')?.value ?? null;
    const standing = {
      lines: this.lines,
      tier: this.program.tier,
      xHeightMm: xHeight,
      lastChange: lastChange(this.open.record),
      practice: practiceBack(this.open.record),
    };
    const taught = this.open.rules.thresholds.find((each) => each.code === 'letters-taught')?.value;
    return propose(
      sessionsOf(this.open.record, taught),
      stepSignsOf(this.open.record, limitsOf(this.open.rules)),
      standing,
      this.open.rules,
      telling,
    );
  });

  #fresh(basis: 'findings' | 'last'): Draft {
    const fromFindings = {
      ...draftProgram(this.open.record, this.open.visitId, this.open.rules, this.open.newId),
      id: this.#unsavedId,
    };
    if (basis === 'findings' || !this.last || this.composed.stopped) return fromFindings;
    return { ...fromFindings, tier: this.last.tier, lines: this.last.lines, note: this.last.note };
  }

  /** Stores the draft as it is, or with a change. */
  save = async (change: Partial<Draft> = {}): Promise<void> => {
    const { program } = this;
    if (program.status === 'approved') return;
    await this.open.save('program', {
      ...program,
      ruleVersion: this.open.rules.version,
      vetoed: this.composed.vetoed.slice(0, 200),
      ...change,
    });
  };

  #setLines = (lines: ProgramLine[]): void => {
    void this.save({ lines: lines.slice(0, 60) }).catch(() => {});
  };

  add = (code: string): void => this.#setLines(added(this.lines, code, this.input, this.open.rules, this.open.newId()));
  addOwn = (line: ProgramLine): void => this.#setLines([...this.lines, line]);
  remove = (id: string): void => this.#setLines(without(this.lines, id));
  move = (id: string, by: number): void => this.#setLines(moved(this.lines, id, by));
  moveBefore = (id: string, before: string | null): void => this.#setLines(movedBefore(this.lines, id, before));
  change = (id: string, change: Partial<ProgramLine>): void => this.#setLines(changed(this.lines, id, change));
  /** Keeps a forbidden line; the reason goes on the record. */
  override = (id: string, veto: string, reason: string): void => {
    const by = this.open.app.status.initials || '–';
    const override = reason.trim() === '' ? null : { veto: veto.slice(0, 400), reason, by };
    this.#setLines(this.lines.map((line) => (line.id === id ? { ...line, override } : line)));
  };
  accept = (move: Move): void => {
    void this.save({ lines: move.lines, tier: move.tier }).catch(() => {});
  };
  /** Drafts anew and forgets the edits of this draft; Undo brings them back. */
  startOver = (basis: 'findings' | 'last'): void => {
    this.basis = basis;
    const fresh = this.#fresh(basis);
    if (this.stored && !this.frozen) void this.save({ lines: fresh.lines, tier: fresh.tier }).catch(() => {});
  };
  /** Who signs and when is stamped behind the contract. */
  coSign = (): void => {
    const signed = { signedBy: this.open.app.status.initials || '–', signedAt: this.open.now() };
    const { stored } = this;
    if (stored?.coSign)
      void this.open.save('program', { ...stored, coSign: { ...stored.coSign, ...signed } }).catch(() => {});
  };
  approve = async (): Promise<void> => {
    try {
      await this.save();
      await this.open.request('program', 'program.approve', { id: this.program.id });
    } catch (error) {
      this.open.app.complain(error);
    }
  };
  /** A new draft for this visit, copied from the frozen one. */
  reopen = async (): Promise<void> => {
    const { id: _id, at: _at, by: _by, ...frozen } = { at: '', by: '', ...this.program };
    await this.open
      .save('program', { ...frozen, id: this.open.newId(), status: 'draft', approvedAt: null, approvedBy: null })
      .catch(() => {});
  };
}
