import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import type { ProgramLine } from '../../../../db/types/program.ts';
import type { PageKind, PageWords } from '../../../../db/types/page.ts';
import { flagsOf, programInput } from '../../program/facts/from-record.ts';
import { ownPageCautions } from '../../program/draft/asked-by-rules.ts';
import { exerciseDrawings, isMirrored } from '../drawings/exercise-drawings.ts';
import { dayOf, longDate, type PageInput, programOf } from './page-facts.ts';
import { caregiverPage } from '../kinds/caregiver.ts';
import { initialEvaluation } from '../kinds/initial-evaluation.ts';
import { familyPage } from '../kinds/family.ts';
import { type Language, languages } from '../../texts/languages.ts';
import { speakerOf } from '../../texts/said-line.ts';
import { letterPage } from '../kinds/letter.ts';
import type { Packet, SheetModel } from './packet.ts';
import { coded } from './coded-sheets.ts';
import { practiceLogSheet } from '../kinds/practice-log-sheet.ts';
import { practiceSheets } from '../practice/practice.ts';
import { type PracticeRequest } from '../practice/practice-steps.ts';
import { dailyPages, wordsToMend } from '../practice/daily-pages.ts';
import { furtherPages } from '../practice/practice-request.ts';
import { programSheets } from '../kinds/program-sheet.ts';
import { comeBackWhen, dischargeSummary, progressReport } from '../kinds/progress-report.ts';
import { referralPage } from '../kinds/referral.ts';
import { itemOfOccasion, occasionsWanted } from '../../record/writing-occasions.ts';
import { waitsForCoSign } from '../../record/co-sign.ts';
import { safeProgram } from './safe-program.ts';
import { spiralSheet } from '../kinds/spiral-sheet.ts';
import { selfCheckCard } from '../kinds/self-check-card.ts';
import type { Texts } from '../../texts/en.ts';
import { visitNote } from '../kinds/visit-note.ts';
import { leftInEnglish } from './left-in-english.ts';
import { noPictures, picturesFor } from './packet-pictures.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** What the therapist chose for this packet. */
export interface PacketChoices {
  pt: 14 | 16 | 20;
  withPictures: boolean;
  withLog: boolean;
  withCard: boolean;
  withPractice: boolean;
  withDrawings: boolean;
  /** Of pages for the family. */
  language: Language;
  /** The English page after it, for checking. */
  withEnglish: boolean;
  words: PageWords;
  practice: PracticeRequest;
  /** A page for each practice day until the next visit, with new lines for what the client wants to write. */
  withDaily: boolean;
  /** The sheets that single lines speak of come along: dots, boxes, pictures. */
  withFurther: boolean;
}

function packetOf(kind: PageKind, input: PageInput, sheets: SheetModel[], warnings: string[]): Packet {
  const program = programOf(input);
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind,
    ruleVersion: program?.ruleVersion ?? '',
    sheets,
    basis: [input.visitId, program?.id].filter((id) => id !== undefined),
    warnings,
  };
}

function practicePages(input: PageInput, choices: PacketChoices, rules: RulesInUse, t: Texts): SheetModel[] {
  const main = { ...choices.practice, sheet: input.sheet, date: longDate(dayOf(input), input.locale) };
  const days = choices.withDaily ? dailyPages(input, rules, main, t, choices.language) : [main];
  const wanted = occasionsWanted(input.record).map(({ code }) => itemOfOccasion[code]);
  // Those that the pages of the days have room for; the others keep a page of their own.
  const onDaily = new Set(days.length > wanted.length ? wanted : []);
  return [
    ...days,
    ...(choices.withFurther ? furtherPages(input, rules, main, t.practice.figures, onDaily) : []),
  ].flatMap(practiceSheets);
}

/** Letters and spaces that fit a line of most papers in model letters. */
const longestLine = 44;

/** Advice that is the check card itself. */
const onCard: ReadonlySet<string> = new Set(['self-check', 'guess-and-compare']);

function homeProgram(input: PageInput, choices: PacketChoices, rules: RulesInUse, t: Texts): Packet {
  const hand = input.record.client.handNow;
  const drawing = ({ item }: ProgramLine) => {
    const name = choices.withDrawings ? (rules.items.find((each) => each.code === item)?.drawing ?? '') : '';
    return Object.hasOwn(exerciseDrawings, name) ? { name, mirrored: isMirrored(name, hand) } : null;
  };
  const clinicDoses = new Set(['in-clinic', 'each-visit']);
  const inClinic = ({ item }: ProgramLine) =>
    clinicDoses.has(rules.items.find((each) => each.code === item)?.dose ?? '');
  // What the check card says is not said on the program too; the therapist's own wording of it stays.
  const saidElsewhere = ({ item, edited }: ProgramLine) => choices.withCard && onCard.has(item ?? '') && !edited;
  const { words, pt } = choices;
  const options = { pt, when: words.family.when, ownWords: words.programWords, drawing, inClinic, saidElsewhere };
  const program = programSheets(input, options, t);
  const warnings: string[] = [];
  if (!program) warnings.push(toldEnglish.printed.noProgram);
  else if (programOf(input)?.status === 'draft') warnings.push(toldEnglish.printed.draft);
  const sheets: SheetModel[] = [...(program ?? [])];
  if (choices.withLog) sheets.push(practiceLogSheet(input, t));
  if (choices.withPractice) sheets.push(...practicePages(input, choices, rules, t));
  if (choices.withCard) sheets.push(...selfCheckCard(input, choices.pt, t));
  return packetOf('home-program', input, sheets, warnings);
}

/** Pages from which somebody practices. */
const forPractice: readonly PageKind[] = ['family-summary', 'home-program', 'practice-pages', 'discharge', 'caregiver'];
const inOtherLanguages: readonly PageKind[] = [
  'family-summary',
  'home-program',
  'practice-pages',
  'caregiver',
  'spiral-sheet',
];
/** Sheets to write on: they need no English beside them. */
const writtenOn: readonly PageKind[] = ['practice-pages', 'spiral-sheet'];

/** Builds any kind of page from the same facts; pages for the family in the chosen language. */
export function buildPacket(kind: PageKind, from: PageInput, choices: PacketChoices, rules: RulesInUse): Packet {
  if (!forPractice.includes(kind)) return inLanguage(kind, from, choices, rules);
  const safe = safeProgram(from, rules);
  const own = ownPageCautions(programInput(from.record, rules), rules);
  const input = { ...from, record: safe.record, pageSays: own.map(({ text }) => text) };
  if (safe.stopped && kind === 'practice-pages') return packetOf(kind, input, [], safe.warnings);
  const stopped = safe.stopped ? { ...choices, withPractice: false, withLog: false, withCard: false } : choices;
  const packet = inLanguage(kind, input, stopped, rules);
  return { ...packet, sheets: coded(packet.sheets, input), warnings: [...safe.warnings, ...packet.warnings] };
}

function inLanguage(kind: PageKind, input: PageInput, choices: PacketChoices, rules: RulesInUse): Packet {
  const englishPacket = () => build(kind, input, choices, rules, languages.en.texts);
  if (choices.language === 'en' || !inOtherLanguages.includes(kind)) return englishPacket();
  const { texts, locale, english: name } = languages[choices.language];
  const speaker = speakerOf(rules, choices.language);
  const programs = input.record.programs.map((each) => ({ ...each, lines: each.lines.map(speaker.line) }));
  const how = speaker.hows(programOf(input)?.lines.map(({ dose }) => dose.how) ?? []);
  const spoken = { ...texts, dose: { ...texts.dose, how: { ...texts.dose.how, ...how } } };
  const record = { ...input.record, programs };
  const pageSays = (input.pageSays ?? []).map(speaker.pageSentence);
  const packet = build(kind, { ...input, record, pageSays, locale: locale ?? input.locale }, choices, rules, spoken);
  const english = [...speaker.english];
  const sheets: SheetModel[] = packet.sheets.map((sheet) =>
    sheet.type === 'doc'
      ? { ...sheet, language: choices.language, ...(english.length > 0 ? { english } : {}) }
      : { ...sheet, language: choices.language },
  );
  if (choices.withEnglish && !writtenOn.includes(kind)) sheets.push(...englishPacket().sheets);
  const check = choices.language === 'es' ? toldEnglish.printed.spanish : toldEnglish.printed.german;
  return { ...packet, sheets, warnings: [...packet.warnings, ...leftInEnglish(kind, input, speaker, name), check] };
}

/** Every sheet that comes from a program which waits for a co-signature says so at its foot. */
function marked(packet: Packet, input: PageInput, t: Texts): Packet {
  const program = programOf(input);
  if (!forPractice.includes(packet.kind) || !program || !waitsForCoSign(program)) return packet;
  const state = t.program.notCoSigned;
  const sheets = packet.sheets.map((sheet) =>
    sheet.type === 'practice'
      ? { ...sheet, state }
      : sheet.type === 'spiral'
        ? sheet
        : { ...sheet, foot: [state, sheet.foot].filter(Boolean).join('  ·  ') },
  );
  return { ...packet, sheets, warnings: [...packet.warnings, toldEnglish.printed.notCoSigned] };
}

function build(kind: PageKind, input: PageInput, choices: PacketChoices, rules: RulesInUse, t: Texts): Packet {
  return marked(buildUnmarked(kind, input, choices, rules, t), input, t);
}

function buildUnmarked(kind: PageKind, input: PageInput, choices: PacketChoices, rules: RulesInUse, t: Texts): Packet {
  const { words } = choices;
  const { pictures, trueSize, warning } = choices.withPictures ? picturesFor(kind, input, t) : noPictures;
  const withNotes = (packet: Packet): Packet => ({
    ...packet,
    warnings: warning ? [...packet.warnings, warning] : packet.warnings,
  });
  switch (kind) {
    case 'family-summary':
      return withNotes(familyPage(input, { ...words.family, pt: choices.pt, pictures }, t));
    case 'home-program':
      return homeProgram(input, choices, rules, t);
    case 'practice-pages':
      return packetOf(
        kind,
        input,
        practicePages(input, choices, rules, t),
        choices.withDaily ? wordsToMend(input, t, longestLine) : [],
      );
    case 'visit-note':
      return visitNote(input, rules.intake);
    case 'referral':
      return referralPage(input, flagsOf(input.record, rules), words.referral, rules);
    case 'letter':
      return withNotes(letterPage(input, { ...words.letter, pictures, trueSize }));
    case 'progress-report':
      return progressReport(input, words.report, rules.intake);
    case 'discharge':
      return dischargeSummary(input, words.report, comeBackWhen, rules.intake);
    case 'initial-evaluation':
      return withNotes(initialEvaluation(input, { ...words.report, pictures, trueSize }, rules, t));
    case 'spiral-sheet':
      return packetOf(kind, input, [spiralSheet(input, t)], []);
    case 'caregiver':
      return caregiverPage(input, choices.pt, t);
  }
}
