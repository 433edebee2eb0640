/** The intake screen of the open client at the chosen visit: what is derived from the facts, and how answers are saved. */
import { latestOf } from '../../logic/sample/measured/latest-measurements.ts';
import { SvelteMap } from 'svelte/reactivity';
import type { Side } from '../../../db/types/common.ts';
import type { IntakeAnswer, RedFlagAnswer, SetupMeasures } from '../../../db/types/intake.ts';
import type { IntakeItem, RedFlagTable } from '../../../db/types/items.ts';
import type { OpenRecord } from '../frame/open-record.svelte.ts';
import { findings, mayStart } from '../../logic/intake/findings.ts';
import { flagInputOf } from '../../logic/intake/flag-input.ts';
import { limitsOf } from '../../logic/rules/limits.ts';
import { openFlags } from '../../logic/intake/flags.ts';
import { openItems, resumeAt } from '../../logic/intake/opening.ts';
import { latestAnswers } from '../../logic/record/latest-answers.ts';
import { latestSetUp, setUpInput } from '../../logic/record/latest-set-up.ts';
import { recordAsOf } from '../../logic/record/record-as-of.ts';
import { say, shownDecimals, shownTable } from '../parts/say.svelte.ts';
import { setUp } from '../../logic/setup/set-up.ts';
import type { SetupInput } from '../../logic/setup/setup-types.ts';

type Part<T> = Partial<Omit<T, 'id' | 'at' | 'by' | 'clientId' | 'visitId'>>;

/** Writing blocks that run, by visit, since when (epoch ms): they go on while other screens are looked at. */
const runningBlocks = new SvelteMap<string, number>();

export class Screen {
  readonly open: OpenRecord;
  readonly items = $derived.by(() => shownTable(this.open.rules.intake));
  readonly setupTable = $derived.by(() => this.open.rules.setup);
  openedByHand = $state.raw<string[]>([]);

  constructor(open: OpenRecord) {
    this.open = open;
  }

  /** Flags as the clinic's rule table has them. */
  readonly redFlagTable: RedFlagTable = $derived.by(() =>
    shownTable({
      ...this.open.rules.redFlagTable,
      flags: this.open.rules.redFlags,
      fromAnswers: this.open.rules.flagsFromAnswers,
    }),
  );
  readonly flags = $derived.by(() => {
    const { record, rules, visitId } = this.open;
    const words = say.told.flags;
    return openFlags(flagInputOf(record, limitsOf(rules), visitId, words, shownDecimals), this.redFlagTable, words);
  });

  readonly states = $derived.by(() => {
    const { client, intakeAnswers, pageMeasurements, goals } = this.open.record;
    return openItems(
      {
        answers: intakeAnswers,
        diagnoses: client.diagnoses.flatMap(({ kind }) => (kind === null ? [] : [kind])),
        measures: latestOf(pageMeasurements)?.result.measures ?? [],
        homeProgram: this.open.record.programs.length > 0,
        goalTalk: goals.length > 0,
        openedByHand: this.openedByHand,
      },
      this.items,
      say.told.findings,
    );
  });
  readonly asked = $derived.by(() => this.states.filter((state) => state.state === 'asked'));
  readonly resume = $derived.by(() => resumeAt(this.states));

  readonly setup = $derived.by(
    () => this.open.record.setups.find(({ visitId }) => visitId === this.open.visitId) ?? null,
  );
  /** Measures in use: the latest up to this visit. */
  readonly setupShown = $derived.by(() => latestSetUp(recordAsOf(this.open.record, this.open.visitId)));
  readonly setupInput = $derived.by((): SetupInput => {
    const { record } = this.open;
    return setUpInput(record, this.setupShown ?? { ...emptySetup, hand: record.client.handNow });
  });
  readonly setupOutcome = $derived.by(() => setUp(this.setupInput, this.setupTable, say.told.seat, shownDecimals));

  readonly findings = $derived.by(() => {
    const [outcome, shown] = [this.setupOutcome, this.setupShown];
    return findings(
      this.open.record.intakeAnswers,
      this.items,
      outcome.ok && shown ? { result: outcome.result, factId: shown.id } : null,
      say.told.findings,
    );
  });
  readonly mayStart = $derived.by(() => mayStart(this.findings, this.flags, this.items, say.told.findings));

  /** Latest answers of an item, one a side. */
  answersOf(code: string): IntakeAnswer[] {
    return latestAnswers(this.open.record.intakeAnswers).filter((answer) => answer.item === code);
  }

  /** The answer given at this visit for an item and side. */
  answerNow(code: string, side: Side): IntakeAnswer | undefined {
    const { visitId, record } = this.open;
    return record.intakeAnswers.find((each) => each.visitId === visitId && each.item === code && each.side === side);
  }

  /** Saves part of an answer at once; the rest of it stays as it was. */
  async answer(item: IntakeItem, side: Side, part: Part<IntakeAnswer>): Promise<void> {
    const known = this.answerNow(item.code, side);
    const fact = {
      id: known?.id ?? this.open.newId(),
      clientId: this.open.clientId,
      visitId: this.open.visitId,
      item: item.code,
      side,
      state: known?.state ?? 'graded',
      grade: known?.grade ?? null,
      reason: known?.reason ?? '',
      detail: known?.detail ?? null,
      before: known?.before ?? null,
      after: known?.after ?? null,
      note: known?.note ?? '',
      ...part,
    } as const;
    await this.open.save('intakeAnswer', fact);
    if (item.code === 'hand-choice' && (part.detail === 'right' || part.detail === 'left')) {
      const client = this.open.record.client;
      if (client.handNow !== part.detail) await this.open.save('client', { ...client, handNow: part.detail });
    }
  }

  /** Start of the running writing block, epoch ms; null while none runs. */
  get blockFrom(): number | null {
    return runningBlocks.get(this.open.visitId) ?? null;
  }
  startBlock(now: number): void {
    runningBlocks.set(this.open.visitId, now);
  }
  stopBlock(): void {
    runningBlocks.delete(this.open.visitId);
  }

  /** Every rating of the writing block was asked before and after, at this visit. */
  readonly blockRated = $derived.by(() =>
    this.items.items
      .filter((item) => item.writingBlock && item.ratings !== null)
      .every((item) =>
        this.open.record.intakeAnswers.some(
          (each) =>
            each.visitId === this.open.visitId &&
            each.item === item.code &&
            each.before !== null &&
            each.after !== null,
        ),
      ),
  );

  flagNow(code: string): RedFlagAnswer | undefined {
    return this.open.record.redFlags.find((each) => each.visitId === this.open.visitId && each.flag === code);
  }

  async answerFlag(code: string, part: Part<RedFlagAnswer>): Promise<void> {
    const known = this.flagNow(code);
    await this.open.save('redFlag', {
      id: known?.id ?? this.open.newId(),
      clientId: this.open.clientId,
      visitId: this.open.visitId,
      flag: code,
      present: known?.present ?? false,
      review: known?.review ?? null,
      note: known?.note ?? '',
      ...part,
    });
  }

  async saveSetup(part: Part<SetupMeasures>): Promise<void> {
    const none = { ...emptySetup, at: '', by: '', hand: this.open.record.client.handNow };
    const { at: _at, by: _by, ...shown } = this.setupShown ?? none;
    await this.open.save('setup', {
      ...shown,
      ...part,
      id: this.setup?.id ?? this.open.newId(),
      clientId: this.open.clientId,
      visitId: this.open.visitId,
    });
  }
}

const emptySetup = {
  popliteal: null,
  elbow: null,
  shoe: null,
  chair: null,
  chairAdjustable: true,
  table: null,
  tableAdjustable: false,
  tableThickness: null,
  thigh: null,
  slantRise: null,
  slantLength: null,
  hand: null,
  purpose: 'writing',
  units: 'mm',
  note: '',
} as const satisfies Part<SetupMeasures>;
