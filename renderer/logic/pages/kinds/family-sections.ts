/** Parts of the family page: what was seen, what to practice, cautions, whom to call, chair and table. */
import type { Goal } from '../../../../db/types/goal.ts';
import type { PageWords } from '../../../../db/types/page.ts';
import type { Program, ProgramLine } from '../../../../db/types/program.ts';
import { wordsOfPercent } from '../../goals/goal-ladder.ts';
import { capital } from '../../texts/count-words.ts';
import { doseOfLines, timeWords } from '../../texts/dose-words.ts';
import { lastSample, legibleOf, type PageInput, type ReadOccasion } from '../sheet/page-facts.ts';
import type { Block, PageStep, Section, WritingPicture } from '../sheet/packet.ts';
import { changeUpTo } from './clinical-lines.ts';
import type { Texts } from '../../texts/en.ts';

export type FamilyOptions = PageWords['family'] & {
  pt: 14 | 16 | 20;
  /** Then and now, chosen by the therapist; [] prints none. */
  pictures: WritingPicture[];
};

const share = (o: ReadOccasion): number => o.legibility.wordsRight / Math.max(1, o.legibility.words);

/** What a reader could read today; then last time, at the start, and what to make of it. */
function sawLines(input: PageInput, program: Program | null, withFirst: boolean, t: Texts['family']): string[] {
  const { now, before, first, differences } = legibleOf(input);
  if (!now) {
    const wrote = input.record.samples.some((s) => s.visitId === input.visitId);
    return [wrote ? t.notReadYet : t.noSample];
  }
  const { wordsRight, words, reader, readers } = now.legibility;
  const lines = [t.saw[reader](wordsRight, words, readers)];
  const { verdict, leaning } = changeUpTo(input).answer;
  // Said before any number, and no earlier number stands beside today's.
  if (before && verdict === 'not-comparable') return [t.sawMore[verdict], ...lines];
  if (before) {
    // Where every word or no word is read the count says it all, and what comes next matters more.
    const [shareNow, shareBefore] = [share(now), share(before)];
    if (shareNow === shareBefore && (shareNow === 1 || shareNow === 0))
      return [...lines, shareNow === 1 ? t.allAgain : t.noneAgain];
    lines.push(t.lastTime(before.legibility.wordsRight, before.legibility.words));
    const showFirst =
      withFirst &&
      first &&
      first !== before &&
      first !== now &&
      first.legibility.reader === reader &&
      first.day < before.day;
    if (showFirst) lines.push(t.firstTime(first.legibility.wordsRight, first.legibility.words));
    // No number without what it means.
    const harder = share(now) <= share(before) - input.limits.harderDayPoints / 100;
    if (!harder || verdict === 'up') lines.push(leaning ? t.probably[leaning] : t.sawMore[verdict]);
    if (harder) lines.push(program?.visitId === input.visitId ? t.harderChanged : t.harder);
    // Who took the sample is noted for colleagues; a family need not doubt it.
    if (differences.some(({ name }) => name !== 'therapist')) lines.push(t.otherConditions);
  }
  return lines.filter(Boolean);
}

/** What was seen, today's reading in bold; `withFirst` says how it was at the start too. */
export function sawBlocks(
  input: PageInput,
  program: Program | null,
  ownWords: string,
  withFirst: boolean,
  t: Texts['family'],
): Block[] {
  const [today = '', ...rest] = sawLines(input, program, withFirst, t);
  const told = [rest.join(' '), ownWords.trim()].filter(Boolean);
  return [{ kind: 'text', text: today, strong: true }, ...told.map((text): Block => ({ kind: 'text', text }))];
}

/** The goal in the client's words; `withCount` says how many words others can then read. */
export function goalBlocks(goal: Goal, withCount: boolean, t: Texts['family']): Block[] {
  const { output, percent, wordsOf, because, nextStep } = goal;
  const lines = [
    capital(output.replace(/[.\s]*$/, '.')),
    withCount && percent !== null && wordsOf ? t.goalRead[goal.reader](wordsOfPercent(percent, wordsOf), wordsOf) : '',
    because ? t.inYourWords(because) : '',
    nextStep ? t.nextStep(nextStep) : '',
  ];
  return [{ kind: 'text', text: lines.filter(Boolean).join(' ') }];
}

/** At most so many lines that the family practices: writing first, because writing is what gets better by writing. */
export function practiceLines(program: Program, most = 5): ProgramLine[] {
  const worth: Partial<Record<ProgramLine['kind'], number>> = { writing: 0, exercise: 1, 'warm-up': 2 };
  return program.lines
    .filter((line) => line.kind in worth)
    .map((line, index) => ({ line, index }))
    .sort((a, b) => worth[a.line.kind]! - worth[b.line.kind]! || a.index - b.index)
    .slice(0, most)
    .sort((a, b) => a.index - b.index)
    .map(({ line }) => line);
}

/** `brief` leaves out which hand, glasses and missed days. */
export function practiceSection(
  input: PageInput,
  program: Program | null,
  options: FamilyOptions,
  brief: boolean,
  t: Texts,
): Section {
  const f = t.family;
  const lines = program ? practiceLines(program) : [];
  if (!program || lines.length === 0)
    return { key: 'practice', title: f.practiceTitle, blocks: [{ kind: 'text', text: f.noProgram }] };
  const { common, often: each } = doseOfLines(
    lines.map((line) => line.dose),
    t.dose,
  );
  const shared = common ? t.dose.doThese(common) : '';
  // Title and minutes only: how to do it is on the home program sheet.
  const steps = lines.map((line, i): PageStep => {
    return {
      lineId: line.id,
      title: line.title,
      text: '',
      dose: [timeWords(line.dose, t.dose), each[i]].filter(Boolean).join(', '),
      cautions: [],
      drawing: null,
    };
  });
  const titles = (kind: ProgramLine['kind']) =>
    program.lines
      // What is tried with the therapist only is nothing to use at home.
      .filter((l) => l.kind === kind && l.dose.daysPerWeek !== null)
      .map((l) => f.inSentence(l.title));
  // The paper comes first: without it the lines cannot be practiced.
  const used = [...titles('paper').slice(0, 1), ...titles('tool')];
  const sample = lastSample(input);
  const { client } = input.record;
  const tablet =
    client.medicines.length > 0 && sample?.conditions.doseState === 'on' && sample.conditions.minutesSinceDose
      ? f.afterTablet(sample.conditions.minutesSinceDose)
      : '';
  const often = [shared, options.when, tablet].filter(Boolean).join(' ');
  const also = [
    used.length > 0 ? f.use(used.slice(0, 3).join(', ')) : '',
    !brief && client.handNow ? f.hand(t.common.hand[client.handNow]) : '',
    !brief && sample?.conditions.glasses === 'worn' ? f.glasses : '',
    brief ? '' : f.missed,
  ].filter(Boolean);
  const blocks: Block[] = [];
  if (often) blocks.push({ kind: 'text', text: often });
  blocks.push({ kind: 'steps', items: steps });
  if (also.length > 0) blocks.push({ kind: 'text', text: also.join(' ') });
  return { key: 'practice', title: f.practiceTitle, blocks };
}

/** Cautions that print with this client's own lines, each once. */
export function cautionsOf(program: Program | null): string[] {
  return [...new Set((program?.lines ?? []).flatMap((line) => line.cautions))];
}

/** Caution of those who hurt already: it stands with their lines in place of the usual one. */
const sore = 'stop-pain-more';

const hurtsAlready = (program: Program | null): boolean =>
  program?.lines.some(({ keys }) => keys?.cautions.includes(sore)) ?? false;

/** Codes of cautions that `stop.signs` says already, for everybody. */
const coveredCautions: ReadonlySet<string> = new Set(['stop-pain', sore, 'stop-tingle', 'hand-tingle']);

/**
 * When to stop: the client's own cautions between what holds for everybody, nothing twice.
 * @param pageSays sentences for the whole page that hold for this client
 * @param withLines false where each line has its cautions beside it
 */
export function stopItems(
  program: Program | null,
  t: Texts,
  pageSays: readonly string[] = [],
  withLines = true,
): string[] {
  const lines = withLines ? (program?.lines ?? []) : [];
  const own = lines.flatMap(({ cautions, keys }) =>
    cautions.filter((_, i) => !coveredCautions.has(keys?.cautions[i] ?? '')),
  );
  return [
    t.stop.line,
    ...new Set([...own, ...pageSays]),
    hurtsAlready(program) ? t.stop.signsSore : t.stop.signs,
    t.stop.emergency,
  ];
}

function callLine(input: PageInput, t: Texts['common']): string {
  const { callName, callNumber } = input.record.client;
  return callName || callNumber ? t.call(callName, callNumber) : t.callBlank;
}

/** The box of when to stop and whom to call, as every page that goes home has it. */
export const stopSection = (input: PageInput, items: string[], t: Texts): Section => ({
  key: 'stop',
  title: '',
  blocks: [{ kind: 'stop', title: t.stop.title, items, call: callLine(input, t.common) }],
});

/** Half-width columns save room; the largest print, and whoever may miss one side of a page, get one column. */
export function inColumns(input: PageInput, pt: number): boolean {
  const seen = input.record.intakeAnswers
    .filter((answer) => answer.item === 'field' && answer.state === 'graded')
    .sort((a, b) => a.at.localeCompare(b.at))
    .at(-1);
  // Not asked opens no doubt about the page; a graded miss does.
  return pt <= 16 && (seen === undefined || seen.grade === 3);
}
