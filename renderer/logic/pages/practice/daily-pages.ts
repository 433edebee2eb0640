/**
 * Practice pages until the next visit: one for each practice day, with new lines each day for what the client wants to
 * write. A line that a client was given within the year does not come again; names and signatures do.
 */
import { daysBetween, daysLater } from '../../texts/days.ts';
import type { OccasionCode, OwnWord } from '../../../../db/types/occasions.ts';
import type { Program } from '../../../../db/types/program.ts';
import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import { itemOfOccasion, occasionsWanted, topicsOf } from '../../record/writing-occasions.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import { seedOf } from '../../sample/seeded-choice.ts';
import { sentenceKey } from '../../sample/fill-frame.ts';
import type { Texts } from '../../texts/en.ts';
import { dayOf, type PageInput, programOf } from '../sheet/page-facts.ts';
import { type PracticeSheet, rowsOfText } from './practice.ts';
import { type PracticeRequest, rowsPerSheet } from './practice-steps.ts';
import { checkModels, practiceLines, type PracticeWish, sameEachTime } from './practice-lines.ts';
import type { RulingCode } from './ruling-drawings.ts';
import { rulings } from './ruling-drawings.ts';
import { writingArea } from './sheet-sizes.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** Most pages that are printed at once, and the days to the next visit where none is planned. */
export const mostPages = 20;
const usualDays = 7;
/** New lines on a page; where the day has fewer to write, as many. */
const linesAPage = 6;

/** Papers of their own, by the tier of the program from 2 to 4: what the line's words speak of. */
const paperOf: Partial<Record<OccasionCode, readonly [RulingCode, RulingCode, RulingCode]>> = {
  signature: ['signature-large', 'signature', 'signature'],
  form: ['boxes-8', 'boxes-6', 'boxes-5'],
  check: ['check-large', 'check-true', 'check-true'],
};

/** The paper that an occasion is practiced on; null = the paper of the program. */
export const paperOfOccasion = (code: OccasionCode, tier: number): RulingCode | null =>
  paperOf[code]?.[Math.min(4, Math.max(2, tier)) - 2] ?? null;

/** Practice days from the visit to the next one, by the days a week of the program's writing. */
export function practiceDays(input: PageInput): number {
  const day = dayOf(input);
  const plan = input.record.visitPlans.find((each) => each.visitId === input.visitId);
  const days = plan?.nextOn && plan.nextOn > day ? daysBetween(day, plan.nextOn) : usualDays;
  const writing = (programOf(input)?.lines ?? []).filter((line) => line.kind === 'writing');
  const aWeek = Math.max(0, ...writing.map((line) => line.dose.daysPerWeek ?? 0));
  return Math.min(mostPages, Math.max(1, Math.ceil((days * (aWeek === 0 ? 7 : aWeek)) / 7)));
}

/** Lines and frames of practice pages that this client was given within the year. */
function givenBefore(input: PageInput, days: number): { used: Set<string>; frames: string[] } {
  const since = daysLater(dayOf(input), -days);
  const sheets = input.record.issuedPages
    .filter((page) => page.issuedAt >= since)
    .sort((a, b) => a.issuedAt.localeCompare(b.issuedAt))
    .flatMap((page) => (page.model as { sheets?: PracticeSheet[] } | null)?.sheets ?? [])
    .filter((sheet) => sheet.type === 'practice');
  return {
    used: new Set(sheets.flatMap((sheet) => (sheet.written ?? []).map(sentenceKey))),
    frames: sheets.flatMap((sheet) => sheet.frames ?? []),
  };
}

interface Wanted {
  code: OccasionCode;
  words: readonly OwnWord[];
  topics: readonly string[];
}

/** Occasions that the program lets the client practice; where none was named, lines on the client's topics. */
function wantedFor(input: PageInput, program: Program): Wanted[] {
  const items = new Set(program.lines.map((line) => line.item));
  const wanted = occasionsWanted(input.record).filter((each) => items.has(itemOfOccasion[each.code]));
  if (wanted.length > 0) return wanted;
  const writes = program.lines.some((line) => line.kind === 'writing' && line.tier >= 3);
  return writes ? [{ code: 'other', words: [], topics: topicsOf(input.record) }] : [];
}

const ownName = (input: PageInput): string[] =>
  input.useCode ? [] : [input.record.client.name.trim()].filter(Boolean);

/** What goes on one page: the client's own name or address the same each time, everything else new. */
function linesOf(
  wanted: Wanted,
  input: PageInput,
  rules: RulesInUse,
  want: Pick<PracticeWish, 'seed' | 'count' | 'mostLetters' | 'onOneRow' | 'language'>,
  known: { used: Set<string>; lastFrames: ReadonlySet<string> },
): { models: string[]; frames: string[] } {
  if (wanted.code === 'signature') return { models: ownName(input), frames: [] };
  const fixed =
    wanted.code === 'name-address'
      ? [...ownName(input), ...wanted.words.filter((word) => word.kind !== 'person').map((word) => word.text)]
      : [];
  if (wanted.code === 'check') return { models: checkModels(rules.texts, wanted.words, want, known.used), frames: [] };
  const share = threshold(rules.thresholds, 'text-phrase-share');
  const lines = practiceLines(rules.texts, {
    language: want.language,
    occasion: wanted.code,
    words: sameEachTime.has(wanted.code) ? wanted.words.filter((word) => word.kind === 'person') : wanted.words,
    topics: wanted.topics,
    seed: want.seed,
    count: Math.max(0, want.count - fixed.length),
    used: known.used,
    lastFrames: known.lastFrames,
    phraseShare: share,
    mostLetters: want.mostLetters,
    ...(want.onOneRow && { onOneRow: want.onOneRow }),
  });
  return {
    models: [...fixed.slice(0, want.count), ...lines.map((line) => line.text)],
    frames: lines.flatMap((line) => (line.frame ? [line.frame] : [])),
  };
}

/** What a row has room for: what is in boxes cannot go over to the next one, what is on a line should not. */
function roomARow(request: PracticeRequest): Pick<PracticeWish, 'mostLetters' | 'onOneRow'> {
  const { kind, sizeMm } = rulings[request.ruling];
  const { width } = writingArea(request.sheet);
  if (kind === 'boxes') return { mostLetters: Math.floor(width / sizeMm) };
  if (kind === 'squares') return { mostLetters: null };
  const rowsOf = rowsOfText(request);
  return { mostLetters: null, onOneRow: (text) => rowsOf(text).length === 1 };
}

/**
 * One request a practice day. The first day has the texts that the program names (`main`); occasions take turns, what
 * is written most often first.
 */
export function dailyPages(
  input: PageInput,
  rules: RulesInUse,
  main: PracticeRequest,
  t: Texts,
  language: string,
): PracticeRequest[] {
  const program = programOf(input);
  const wanted = program ? wantedFor(input, program) : [];
  const days = practiceDays(input);
  if (wanted.length === 0) return [main];
  const apart = threshold(rules.thresholds, 'text-days-apart');
  const before = givenBefore(input, apart);
  const used = new Set([...before.used, ...main.models.map(sentenceKey)]);
  const pages: { frames: string[] }[] = [{ frames: before.frames.slice(-2 * linesAPage) }];
  const known = rules.texts.frames.some((frame) => frame.language === language) ? language : 'en';
  // What the program names by its text comes first, and once.
  const named = program?.lines.some((line) => line.kind === 'content') ?? false;
  const first = named ? 1 : 0;
  const requests = Array.from({ length: days - first }, (_, at): PracticeRequest => {
    const day = at + first;
    const each = wanted[at % wanted.length]!;
    const ruling = paperOfOccasion(each.code, program?.tier ?? 2) ?? main.ruling;
    const boxes = rulings[ruling].kind === 'boxes';
    const lines = main.linesPerBout === null ? linesAPage : main.linesPerBout * main.bouts;
    const { models, frames } = linesOf(
      each,
      input,
      rules,
      {
        seed: seedOf(`${input.record.client.id} ${input.visitId} ${day}`),
        count: each.code === 'check' ? rowsPerSheet(input.sheet, ruling) : Math.max(1, Math.min(linesAPage, lines)),
        ...roomARow({ ...main, ruling }),
        language: known,
      },
      { used, lastFrames: new Set(pages.slice(-2).flatMap((page) => page.frames)) },
    );
    pages.push({ frames });
    if (!sameEachTime.has(each.code)) for (const model of models) used.add(sentenceKey(model));
    return {
      ...main,
      ruling,
      models,
      frames,
      // Another day has a page of its own.
      nextTimeText: '',
      ...(boxes ? { linesPerBout: null, bouts: 1, marks: 'none' as const } : {}),
      title: t.practice.dayTitle(day + 1, days, t.occasions[each.code]),
    };
  });
  return named ? [main, ...requests] : requests;
}

/** What the therapist should know of the client's own words before printing. */
export function wordsToMend(input: PageInput, t: Texts, mostLetters: number): string[] {
  return occasionsWanted(input.record).flatMap((each) => {
    const name = t.occasions[each.code];
    if (each.words.length === 0 && !sameEachTime.has(each.code)) return [toldEnglish.printed.noOwnWords(name)];
    const long = each.words.find((word) => word.text.length > mostLetters);
    return long ? [toldEnglish.printed.longerThanLine(long.text)] : [];
  });
}
