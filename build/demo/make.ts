/**
 * Makes the demo caseload with the real parts: an encrypted file, pages drawn and measured, programs composed and
 * approved, each fact on its own day. Run by `npm start` when its sources changed; the result lies in dist/demo.
 */
import { limitsOf } from '../../renderer/logic/rules/limits.ts';
import { createHash, randomUUID } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { createCaseload, type Caseload, type Doing } from '../../db/index.ts';
import { rulesInUse } from '../../db/rules/in-use.ts';
import type { Care } from '../../db/types/client.ts';
import type { Sample } from '../../db/types/sample.ts';
import { measureInWorker } from '../../electron/files/measure/page-file.ts';
import { demoPassphrase } from '../../electron/handlers/app.ts';
import { added } from '../../renderer/logic/program/clinic/edit-lines.ts';
import { draftProgram, programInput } from '../../renderer/logic/program/facts/from-record.ts';
import { propose } from '../../renderer/logic/program/ladder/proposals.ts';
import { approvedPrograms, lastChange, stepSignsOf, sessionsOf } from '../../renderer/logic/program/ladder/sessions.ts';
import { buildLevels } from '../../renderer/logic/goals/levels.ts';
import { withHand } from '../../renderer/logic/record/hand-ranges.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import { noConditions } from '../../renderer/logic/sample/carried-conditions.ts';
import { noCare } from '../../renderer/logic/pages/kinds/care.ts';
import { inventedInk } from './ink/demo-bouts.ts';
import { renderDemoPage } from './pages/index.ts';
import { demoClinic, people } from './people.ts';
import { readLines } from './reader.ts';
import type { DemoCare, DemoClient, DemoSample, DemoVisit } from './types.ts';
import { toldEnglish } from '../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../renderer/logic/texts/screens/telling.ts';

const rules = rulesInUse(null);
const dpi = 300;

const day = (today: Date, ago: number): string =>
  new Date(today.getTime() - ago * 86_400_000).toISOString().slice(0, 10);

/** Lines as the client wrote them: sentences one a line, a pangram broken where the paper ends. */
function writtenLines(sample: DemoSample): string[] {
  const texts = sample.textCodes.map((code) => rules.sampleTexts.texts.find((t) => t.code === code)!.text);
  const perLine = Math.max(12, Math.floor(165 / (sample.hand.xHeightMm * 1.02)));
  return texts.flatMap((text) => {
    const lines: string[] = [''];
    for (const word of text.split(' ')) {
      const last = lines.at(-1)!;
      if (last && last.length + word.length + 1 > perLine) lines.push(word);
      else lines[lines.length - 1] = last ? `${last} ${word}` : word;
    }
    return lines;
  });
}

/** What stands in a note that has no sentence of its own. */
const usualJudgement: Record<DemoVisit['kind'], string> = {
  first: 'Writing looked at together with seat, hand and sight; the next step chosen with the client.',
  treatment: 'Cues faded from every line to every third; dose set by the line where quality fell.',
  retest: 'Same task, paper and hour as before; what changed was weighed against day-to-day spread.',
  discharge: 'What keeps the writing going was agreed with client and helper.',
};

class Maker {
  readonly caseload: Caseload;
  readonly today: Date;
  seed = 11;
  constructor(caseload: Caseload, today: Date) {
    this.caseload = caseload;
    this.today = today;
  }

  async client(person: DemoClient): Promise<void> {
    const id = randomUUID();
    const first = person.visits[0]!;
    const care = person.care && { care: this.care(person.care, first) };
    const client = { ...newClient(id, person.client.name, person.client.code), ...person.client, ...care };
    const doing = this.doing(first);
    this.caseload.put(
      'client',
      { ...client, familyConsentOn: client.familyConsent ? day(this.today, first.daysAgo) : null },
      doing,
    );
    for (const { words, ...occasion } of person.occasions)
      this.caseload.put(
        'writingOccasion',
        {
          id: randomUUID(),
          clientId: id,
          on: true,
          ...occasion,
          words: words.map(([kind, text]) => ({ kind, text })),
        },
        doing,
      );
    const goalId = randomUUID();
    for (const visit of person.visits) await this.visit(person, id, goalId, visit, visit === first);
    this.practice(person, id);
  }

  care(care: DemoCare, first: DemoVisit): Care {
    const { certifiedDaysAhead, outsideTests = [], missed = [], ...told } = care;
    return {
      ...noCare,
      ...told,
      startOn: day(this.today, first.daysAgo),
      certifiedUntil: certifiedDaysAhead === null ? null : day(this.today, -certifiedDaysAhead),
      outsideTests: outsideTests.map(({ name, score, daysAgo }) => ({ name, score, on: day(this.today, daysAgo) })),
      missedVisits: missed.map(({ daysAgo, reason }) => ({ on: day(this.today, daysAgo), reason })),
    };
  }

  doing(visit: DemoVisit): Doing {
    return { at: `${day(this.today, visit.daysAgo)}T${visit.hour}:00.000Z`, by: demoClinic.initials };
  }

  async visit(person: DemoClient, clientId: string, goalId: string, visit: DemoVisit, first: boolean): Promise<void> {
    const doing = this.doing(visit);
    const visitId = randomUUID();
    const note = {
      told: visit.told ?? '',
      skilled: visit.skilled ?? (visit.noteOpen ? '' : usualJudgement[visit.kind]),
      response: visit.response ?? '',
      taughtBack: visit.taughtBack ?? '',
      plan: visit.plan ?? '',
    };
    this.caseload.put(
      'visit',
      {
        id: visitId,
        clientId,
        date: day(this.today, visit.daysAgo),
        kind: visit.kind,
        minutes: visit.minutes,
        nextVisit: visit.nextVisit ?? '',
        ...note,
      },
      doing,
    );
    if (visit.next) {
      const { inDays, hour, retest = null, questions = '' } = visit.next;
      const plan = { nextOn: day(this.today, -inDays), hour, dose: '', retest, trialId: null, questions };
      this.caseload.put('visitPlan', { id: randomUUID(), clientId, visitId, ...plan }, doing);
    }
    for (const flag of rules.redFlagTable.flags.filter((f) => f.asked)) {
      const raised = first ? person.flags.find((f) => f.code === flag.code) : undefined;
      this.caseload.put(
        'redFlag',
        {
          id: randomUUID(),
          clientId,
          visitId,
          flag: flag.code,
          present: raised !== undefined,
          review: null,
          note: raised?.note ?? '',
        },
        doing,
      );
    }
    for (const a of visit.answers ?? []) {
      const untested = a.grade === null;
      this.caseload.put(
        'intakeAnswer',
        {
          id: randomUUID(),
          clientId,
          visitId,
          item: a.item,
          side: a.side ?? 'none',
          state: untested ? 'not-tested' : 'graded',
          grade: a.grade,
          reason: a.notTested ?? '',
          detail: a.detail ?? null,
          before: a.before ?? null,
          after: a.after ?? null,
          note: a.note ?? '',
        },
        doing,
      );
    }
    if (first && person.setup) {
      this.caseload.put(
        'setup',
        {
          id: randomUUID(),
          clientId,
          visitId,
          ...person.setup,
          tableAdjustable: false,
          slantRise: null,
          slantLength: null,
          hand: person.client.handNow ?? null,
          units: 'mm',
          note: '',
        },
        doing,
      );
    }
    if (visit.ink) inventedInk(this.caseload, clientId, visitId, doing, visit.ink);
    for (const sample of visit.samples) await this.sample(person, clientId, visitId, visit, sample);
    if (person.goal && !first && visit.goalLevel !== undefined)
      this.goal(person, clientId, goalId, visitId, visit, doing);
    if (visit.program) this.program(clientId, visitId, visit, doing);
  }

  /** A program as the builder makes it, approved. */
  program(clientId: string, visitId: string, visit: DemoVisit, doing: Doing): void {
    const record = this.caseload.record(clientId);
    const draft = draftProgram(record, visitId, rules, () => randomUUID());
    const last = visit.program === 'next' ? approvedPrograms(record).at(-1) : undefined;
    const input = programInput(record, rules, visitId);
    const xHeightMm = input.measures.find((each) => each.code === 'x-height' && each.unit === 'mm')?.value ?? null;
    let { lines, tier } = last ?? draft;
    if (last) {
      const standing = { lines, tier, xHeightMm, lastChange: lastChange(record) };
      const { move } = propose(
        sessionsOf(record),
        stepSignsOf(record, limitsOf(rules)),
        standing,
        rules,
        englishTelling,
      );
      if (move) ({ lines, tier } = move);
    }
    lines = lines.filter((line) => !visit.drops?.includes(line.item ?? ''));
    for (const code of visit.adds ?? []) lines = added(lines, code, input, rules, randomUUID());
    const approved = { ...draft, lines, tier, status: 'approved' as const, approvedAt: doing.at, approvedBy: doing.by };
    this.caseload.put('program', approved, doing);
  }

  async sample(person: DemoClient, clientId: string, visitId: string, visit: DemoVisit, s: DemoSample): Promise<void> {
    const doing = this.doing(visit);
    const sampleId = randomUUID();
    const lines = writtenLines(s);
    const seed = this.seed++;
    const sample: Omit<Sample, 'at' | 'by'> = {
      id: sampleId,
      clientId,
      visitId,
      takenAt: doing.at,
      task: { kind: s.task, textCodes: s.textCodes, text: lines.join('\n'), spellingNoted: false },
      conditions: {
        ...noConditions,
        hand: person.client.handNow ?? null,
        pen: s.hand.ink === 'pencil' ? 'soft pencil' : 'ballpoint',
        paper: s.hand.paper === 'dashed' ? 'dashed midline 12 mm' : 'plain',
        time: visit.hour,
        doseState: person.client.medicines?.length ? 'on' : 'none',
        cue: 'none',
        ...s.conditions,
      },
      fatigueBefore: s.fatigue[0],
      fatigueAfter: s.fatigue[1],
      painBefore: s.pain?.[0] ?? 0,
      painAfter: s.pain?.[1] ?? 0,
      seconds: s.seconds,
      baseline: s.baseline ?? false,
      typed: s.typed ?? {},
      note: '',
    };
    this.caseload.put('sample', sample, doing);
    const bytes = await renderDemoPage({ lines, dpi, seed, ...s.hand });
    const blob = this.caseload.putBlob(clientId, 'image/jpeg', bytes, doing);
    const scale = { pxPerMm: dpi / 25.4, source: 'file-dpi' as const };
    const measured = await measureInWorker(bytes, { scale, text: sample.task.text });
    const pageId = randomUUID();
    const measures = withHand(measured.result.measures, () => [], rules.thresholds);
    this.caseload.put(
      'samplePage',
      {
        id: pageId,
        clientId,
        visitId,
        sampleId,
        order: 0,
        blob: blob.id,
        view: blob.id,
        pdfPage: 1,
        sha256: createHash('sha256').update(bytes).digest('hex'),
        mime: 'image/jpeg',
        bytes: bytes.byteLength,
        widthPx: measured.width,
        heightPx: measured.height,
        scale,
        fileDpi: dpi,
        quarterTurns: 0,
      },
      doing,
    );
    this.caseload.put(
      'pageMeasurement',
      {
        id: randomUUID(),
        clientId,
        visitId,
        sampleId,
        pageId,
        method: 'page',
        version: measured.result.version,
        result: { ...measured.result, measures } as never,
        uncorrected: null,
        corrections: [],
      },
      doing,
    );
    for (const reader of s.readers ?? []) {
      const [better, initials] = ({ unfamiliar: [0, 'NB'], second: [-0.03, 'PS'], family: [0.08, 'fam'] } as const)[
        reader
      ];
      this.caseload.put(
        'reading',
        {
          id: randomUUID(),
          clientId,
          visitId,
          sampleId,
          readAt: doing.at,
          reader: reader === 'second' ? 'unfamiliar' : reader,
          readerInitials: initials,
          blind: true,
          lines: readLines(lines, Math.min(1, s.legibility + better), seed),
          counted: null,
        },
        doing,
      );
    }
  }

  goal(person: DemoClient, clientId: string, goalId: string, visitId: string, visit: DemoVisit, doing: Doing): void {
    const g = person.goal!;
    if (!this.caseload.get('goal', goalId)) {
      this.caseload.put(
        'goal',
        {
          id: goalId,
          clientId,
          output: g.output,
          paper: g.paper,
          aid: g.aid,
          cue: 'none',
          reader: 'unfamiliar',
          wordsOf: g.words,
          percent: g.percent,
          tries: { of: 3, need: 2 },
          dueOn: day(this.today, -35),
          setOn: day(this.today, visit.daysAgo),
          baseline: g.baseline,
          because: g.because,
          levels: buildLevels(
            { unit: g.levels.unit, min: 0, max: g.levels.max },
            g.levels.baseline,
            g.levels.expected,
            false,
            toldEnglish.goals,
          ).texts,
          weight: 1,
          nextStep: g.nextStep,
          replaces: null,
          status: 'active',
        },
        doing,
      );
    }
    this.caseload.put(
      'goalRating',
      { id: randomUUID(), clientId, goalId, visitId, level: visit.goalLevel!, note: '' },
      doing,
    );
  }

  /** Home days between the first program and yesterday, with the rest days and the odd gap that real logs have. */
  practice(person: DemoClient, clientId: string): void {
    const start = person.visits.find((v) => v.program)?.daysAgo;
    if (!person.practice || start === undefined) return;
    const { daysAWeek, minutes, lines } = person.practice;
    for (let ago = start - 1; ago > 0; ago--) {
      const n = start - ago;
      if ((n * 5) % 7 >= daysAWeek || n % 17 === 0) continue;
      const date = day(this.today, ago);
      const before = 2 + (n % 3 === 0 ? 1 : 0);
      this.caseload.put(
        'practiceLog',
        {
          id: randomUUID(),
          clientId,
          date,
          minutes: minutes + ((n * 7) % 5) - 2,
          lines: lines + ((n * 3) % 3) - 1,
          fatigueBefore: before,
          fatigueAfter: before + (n < 20 ? 2 : 1),
          pain: null,
          breaks: 1 + (n % 2),
          paper: '',
          grip: '',
          note: n === 9 ? 'visitors, only half' : '',
        },
        { at: `${date}T18:00:00.000Z`, by: demoClinic.initials },
      );
    }
  }
}

/** Makes a new demo caseload in an empty folder; `say` hears how far it is. */
export async function makeDemo(folder: string, today: Date, say: (words: string) => void = () => {}): Promise<void> {
  await rm(folder, { recursive: true, force: true });
  const created = await createCaseload({ folder, passphrase: demoPassphrase, now: today.toISOString() });
  if (!created.ok) throw new Error(`The demo caseload could not be made: ${created.code}`);
  const maker = new Maker(created.caseload, today);
  created.caseload.putSetting('therapist', demoClinic, { at: today.toISOString(), by: demoClinic.initials });
  for (const [n, person] of people.entries()) {
    say(`Demo caseload: client ${n + 1} of ${people.length}`);
    await maker.client(person);
  }
  created.caseload.close();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const out = process.argv.indexOf('--out');
  const folder = out > 0 ? process.argv[out + 1]! : fileURLToPath(new URL('../../dist/demo', import.meta.url));
  await makeDemo(folder, new Date(), (words) => process.stderr.write(`${words}\n`));
}
