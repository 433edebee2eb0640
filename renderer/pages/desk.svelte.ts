import { syllable } from 'syllable';
import type { IssuedPage, PageKind } from '../../db/types/page.ts';
import { ClinicPairs } from '../frame/clinic-pairs.svelte.ts';
import type { OpenRecord } from '../frame/open-record.svelte.ts';
import { limitsOf } from '../progress/limits.ts';
import { buildPacket } from './build-packet.ts';
import { repaginate, withText } from './edit.ts';
import type { PageInput } from './facts.ts';
import { textsOf } from './fit.ts';
import type { Doc, Packet } from './model.ts';
import { emptyWords, usualSheet, type PageWords } from './page-choices.ts';
import type { PracticeRequest } from './practice.ts';
import { practiceRequestOf } from './practice-request.ts';
import { readingGrade } from './reading-grade.ts';
import { type Language, languageOf, languages } from './languages.ts';

/** Words typed for pages live as long as the window, a set for each client. */
const wordsOfClients = new Map<string, PageWords>();

/** What lies on the desk: the chosen page, its words, the therapist's changes, and what would print. */
export class Desk {
  readonly open: OpenRecord;
  readonly clinic: ClinicPairs;
  kind = $state<PageKind>('family-summary');
  sheet = $state(usualSheet(navigator.language));
  pt = $state<14 | 16 | 20>(14);
  withPictures = $state(true);
  withLog = $state(true);
  withCard = $state(true);
  withPractice = $state(false);
  withDrawings = $state(true);
  useCode = $state(false);
  language = $state<Language>('en');
  withEnglish = $state(true);
  words: PageWords = $state(emptyWords());
  practiceChanges = $state<Partial<PracticeRequest>>({});
  /** The packet as changed by hand; null = as built. */
  changed = $state.raw<Packet | null>(null);
  /** A page issued before, shown as it was. */
  reopened = $state.raw<IssuedPage | null>(null);

  constructor(open: OpenRecord) {
    this.open = open;
    this.clinic = new ClinicPairs(open.app);
    this.kind = open.app.takePageWanted() ?? this.kind;
    this.pt = Number(open.record.client.largePrint) as 14 | 16 | 20;
    this.language = languageOf(open.record.client.language);
    this.words = wordsOfClients.get(open.clientId) ?? emptyWords();
    wordsOfClients.set(open.clientId, this.words);
  }

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
    pairs: this.clinic.pairs,
  }));

  practice: PracticeRequest = $derived.by(() => ({
    ...practiceRequestOf(this.input, this.open.rules, languages[this.language].texts),
    ...this.practiceChanges,
  }));

  built: Packet = $derived.by(() =>
    buildPacket(
      this.kind,
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
      },
      this.open.rules,
    ),
  );

  packet: Packet = $derived(this.reopened ? (this.reopened.model as unknown as Packet) : (this.changed ?? this.built));

  /** School grade of what the family reads; null on other pages. */
  grade = $derived.by(() => {
    // The formulas are made for English.
    if (this.language !== 'en' || (this.packet.kind !== 'family-summary' && this.packet.kind !== 'home-program'))
      return null;
    return readingGrade(
      this.packet.sheets.flatMap((sheet) => (sheet.type === 'doc' ? textsOf(sheet as Doc) : [])),
      syllable,
    );
  });

  edit = (path: (string | number)[], text: string): void => {
    this.changed = repaginate(withText(this.packet, ['sheets', ...path], text));
  };

  /** Choosing anything anew drops changes made by hand on the page before. */
  choose(change: () => void): void {
    change();
    this.changed = null;
    this.reopened = null;
  }

  get fileName(): string {
    return `${this.open.record.client.code} ${this.packet.kind} ${this.open.visit?.date ?? this.open.today}`.slice(
      0,
      80,
    );
  }
}
