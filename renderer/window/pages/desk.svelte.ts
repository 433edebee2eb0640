import { syllable } from 'syllable';
import type { Client } from '../../../db/types/client.ts';
import type { IssuedPage, PageDraft, PageKind, PageWords } from '../../../db/types/page.ts';
import type { OpenRecord } from '../frame/open-record.svelte.ts';
import { limitsOf } from '../../logic/rules/limits.ts';
import { buildPacket } from '../../logic/pages/sheet/build-packet.ts';
import { repaginate, withText } from '../../logic/pages/sheet/edit-words.ts';
import type { PageInput } from '../../logic/pages/sheet/page-facts.ts';
import { textsOf } from '../../logic/pages/sheet/fit-sheets.ts';
import type { Doc, Packet } from '../../logic/pages/sheet/packet.ts';
import { startingWords, usualSheet } from '../../logic/pages/sheet/page-choices.ts';
import type { PracticeRequest } from '../../logic/pages/practice/practice-steps.ts';
import { practiceDays } from '../../logic/pages/practice/daily-pages.ts';
import { furtherPages, practiceRequestOf } from '../../logic/pages/practice/practice-request.ts';
import { readingGrade } from '../../logic/texts/reading/reading-grade.ts';
import { easeFormula, readingEase } from '../../logic/texts/reading/reading-ease.ts';
import { printedPractice } from '../../logic/pages/sheet/printed-practice.ts';
import { safeProgram } from '../../logic/pages/sheet/safe-program.ts';
import { refusedByGate } from '../../logic/program/print-gate.ts';
import type { Texts } from '../../logic/texts/en.ts';
import { languageOf } from '../../logic/texts/known-languages.ts';
import { type Language, languages } from '../../logic/texts/languages.ts';
import { say } from '../parts/say.svelte.ts';

/** A short digest (FNV-1a): tells whether a page is still made from the same. */
function digest(packet: Packet): string {
  let hash = 0x811c9dc5;
  for (const char of JSON.stringify(packet.sheets)) hash = Math.imul(hash ^ char.codePointAt(0)!, 0x01000193);
  return (hash >>> 0).toString(16);
}

/** What lies on the desk: the chosen page, its words, the therapist's changes, and what would print. */
export class Desk {
  readonly open: OpenRecord;
  kind = $state<PageKind>('family-summary');
  sheet = $state(usualSheet(navigator.language));
  pt = $state<14 | 16 | 20>(14);
  withPictures = $state(true);
  withLog = $state(true);
  withCard = $state(true);
  withPractice = $state(true);
  withDaily = $state(true);
  withDrawings = $state(true);
  useCode = $state(false);
  language = $state<Language>('en');
  withEnglish = $state(true);
  withFurther = $state(true);
  practiceChanges = $state<Partial<PracticeRequest>>({});
  /** Words of a client without a visit: there is nothing to keep them with. */
  #loose = $state.raw<Omit<PageDraft, 'at' | 'by'> | null>(null);
  /** A page issued before, shown as it was. */
  reopened = $state.raw<IssuedPage | null>(null);
  /** The page that is being issued, with its fingerprint: what is kept is what is printed. */
  issuing = $state.raw<Packet | null>(null);

  constructor(open: OpenRecord) {
    this.open = open;
    this.kind = open.app.takePageWanted() ?? this.kind;
    this.pt = Number(open.record.client.largePrint) as 14 | 16 | 20;
    this.language = languageOf(open.record.client.language);
  }

  /** Words typed for the pages of this visit, as saved. */
  draft: Omit<PageDraft, 'at' | 'by'> | null = $derived.by(
    () => this.open.record.pageDrafts.find((one) => one.visitId === this.open.visitId) ?? this.#loose,
  );
  words: PageWords = $derived.by(() => this.draft?.words ?? startingWords(this.open.record.pageDrafts));

  input: PageInput = $derived.by(() => ({
    record: this.open.record,
    visitId: this.open.visitId,
    today: this.open.today,
    locale: navigator.language,
    sheet: this.sheet,
    clinic: {
      name: this.open.app.status.clinic,
      therapist: this.open.app.status.initials,
      credentials: this.open.app.status.credentials,
    },
    useCode: this.useCode,
    setupTable: this.open.rules.setup,
    limits: limitsOf(this.open.rules),
  }));

  /** Words of pages in the chosen language. */
  get texts(): Texts {
    return languages[this.language].texts;
  }

  practice: PracticeRequest = $derived.by(() => ({
    ...practiceRequestOf(this.input, this.open.rules, this.texts),
    ...this.practiceChanges,
  }));

  /** Practice days until the next visit. */
  days = $derived.by(() => practiceDays(this.input));

  /** Sheets that single lines of the program need beside the practice page. */
  further = $derived.by(() => furtherPages(this.input, this.open.rules, this.practice, this.texts.practice.figures));

  #build(kind: PageKind): Packet {
    return buildPacket(
      kind,
      this.input,
      {
        pt: this.pt,
        withPictures: this.withPictures,
        withLog: this.withLog,
        withCard: this.withCard,
        withPractice: this.withPractice,
        withDrawings: this.withDrawings,
        language: this.language,
        withEnglish: this.withEnglish,
        words: this.words,
        practice: this.practice,
        withFurther: this.withFurther,
        withDaily: this.withDaily,
      },
      this.open.rules,
    );
  }
  built: Packet = $derived.by(() => this.#build(this.kind));

  /** Pages that go into one print job; the page on screen alone when none is ticked. */
  ticked = $state.raw<ReadonlySet<PageKind>>(new Set());
  tick(kind: PageKind): void {
    const next = new Set(this.ticked);
    if (!next.delete(kind)) next.add(kind);
    this.ticked = next;
  }
  /** What would print of each ticked page: as changed by hand, or as built. */
  #tickedPackets = $derived.by(() =>
    [...this.ticked].map((kind) => {
      if (kind === this.kind) return { kind, packet: this.changed ?? this.built };
      const kept = (this.draft?.changed[kind]?.model ?? null) as Packet | null;
      const refused = kept && refusedByGate(printedPractice(kept), safeProgram(this.input, this.open.rules));
      const changed = refused === null ? kept : null;
      return { kind, packet: changed ?? this.#build(kind) };
    }),
  );
  /** What is printed now. A page that is not ready stays out. */
  job: Packet[] = $derived.by(() => {
    if (this.issuing || this.reopened || this.ticked.size === 0) return [this.packet];
    return this.#tickedPackets.map((one) => one.packet).filter((packet) => packet.sheets.length > 0);
  });
  /** Ticked pages that stay out of the job, and why. */
  leftOut: { kind: PageKind; why: string }[] = $derived.by(() =>
    this.#tickedPackets
      .filter((one) => one.packet.sheets.length === 0)
      .map((one) => ({ kind: one.kind, why: one.packet.warnings[0] ?? say.pages.thereIsNothingToPrint })),
  );

  #changedPage = $derived.by(() => this.draft?.changed[this.kind] ?? null);
  /** The packet as changed by hand; null = as built, also where it holds practice that may not be printed any more. */
  changed: Packet | null = $derived.by(() => {
    const model = (this.#changedPage?.model ?? null) as Packet | null;
    const refused = model && refusedByGate(printedPractice(model), safeProgram(this.input, this.open.rules));
    return refused === null ? model : null;
  });
  /** What to know of a page that was changed by hand; '' = nothing. */
  aboutChanges: string = $derived.by(() => {
    const kept = this.#changedPage;
    if (!kept) return '';
    if (!this.changed) return say.pages.youChangedThisPage;
    return kept.builtFrom === digest(this.built) ? '' : say.pages.whatThisPageIs;
  });

  packet: Packet = $derived(
    this.issuing ?? (this.reopened ? (this.reopened.model as unknown as Packet) : (this.changed ?? this.built)),
  );

  /** How hard it is to read what goes home: school grade in English, else reading ease; null on other pages. */
  ease = $derived.by(() => {
    const { kind, sheets } = this.packet;
    if (kind !== 'family-summary' && kind !== 'home-program' && kind !== 'caregiver') return null;
    const grade = readingGrade(
      sheets.flatMap((sheet) => (sheet.type === 'doc' ? textsOf(sheet as Doc) : [])),
      easeFormula(this.language)?.syllablesOf ?? syllable,
    );
    return grade && readingEase(grade, this.language);
  });

  edit = (path: (string | number)[], text: string): void => {
    const model = repaginate(withText(this.packet, ['sheets', ...path], text));
    // A second change does not make an outdated page current.
    const builtFrom = this.changed && this.#changedPage ? this.#changedPage.builtFrom : digest(this.built);
    const changed = { model: JSON.parse(JSON.stringify(model)), builtFrom };
    this.#keep({ changed: { ...this.draft?.changed, [this.kind]: changed } });
  };

  /** Takes back what was changed by hand on this page. */
  asBuilt(): void {
    const { [this.kind]: _dropped, ...changed } = this.draft?.changed ?? {};
    this.#keep({ changed });
  }

  /** Words for the pages are saved like every other edit; the page is then made anew. */
  type<G extends 'family' | 'letter' | 'report' | 'referral', K extends keyof PageWords[G]>(
    group: G,
    key: K,
    value: PageWords[G][K],
  ): void {
    this.#keepWords({ ...this.words, [group]: { ...this.words[group], [key]: value } });
  }
  typeForProgram(programWords: string): void {
    this.#keepWords({ ...this.words, programWords });
  }

  #keepWords(words: PageWords): void {
    this.reopened = null;
    const { [this.kind]: _dropped, ...changed } = this.draft?.changed ?? {};
    this.#keep({ words, changed });
  }

  #keep(change: Partial<Pick<PageDraft, 'words' | 'changed'>>): void {
    const { clientId, visitId } = this.open;
    const id = this.draft?.id ?? this.open.newId();
    const words = $state.snapshot(this.words) as PageWords;
    const draft = { id, clientId, visitId, words, changed: this.draft?.changed ?? {}, ...change };
    if (this.open.visit) void this.open.save('pageDraft', draft).catch(() => {});
    else this.#loose = draft;
  }

  /** Another kind of page; what was changed by hand on either stays. */
  show(kind: PageKind): void {
    this.kind = kind;
    this.reopened = null;
  }

  /** Print size and language are the client's: the next page, and the next visit, print like this one. */
  printIn(choice: Partial<Pick<Client, 'largePrint' | 'language'>>): void {
    if (choice.largePrint) this.pt = Number(choice.largePrint) as 14 | 16 | 20;
    if (choice.language) this.language = languageOf(choice.language);
    void this.open.save('client', { ...this.open.record.client, ...choice }).catch(() => {});
  }

  /** Another way to print this page drops what was changed by hand on it; undo brings that back. */
  choose(change: () => void): void {
    change();
    if (this.changed) this.asBuilt();
    this.reopened = null;
  }

  /** Sheet size of what is shown. */
  get paper(): Desk['sheet'] {
    return this.packet.sheets[0]?.sheet ?? this.sheet;
  }

  get fileName(): string {
    return `${this.open.record.client.code} ${this.packet.kind} ${this.open.visit?.date ?? this.open.today}`.slice(
      0,
      80,
    );
  }
}
