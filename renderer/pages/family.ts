/**
 * The visit summary for the family: one page, plain words, at most 250 words (clear and large print guidance: 14 pt, 16
 * and more on request, left-aligned, dark on white). Only this client's cautions; no diagnosis, no score without meaning.
 */
import type { Program, ProgramLine } from '../../db/types/program.ts';
import { plainGoal } from '../goals/sentence.ts';
import { amountWords, doseOfLines, lengthWords, oftenWords } from './dose-words.ts';
import {
  dayOf,
  goalsOf,
  lastSample,
  legibleOf,
  longDate,
  type PageInput,
  programOf,
  type ReadOccasion,
  setupOf,
  visitOf,
  whoOf,
} from './facts.ts';
import { changeSection, fitOneSheet, type Shortening } from './fit.ts';
import type { Block, Doc, Packet, PageStep, Section, SetupFigure, WritingPicture } from './model.ts';
import type { Texts } from './texts.ts';

export interface FamilyOptions {
  pt: 14 | 16 | 20;
  /** Then and now, chosen by the therapist; [] prints none. */
  pictures: WritingPicture[];
  /** Hours of the day, or '' . */
  when: string;
  /** Printed instead of the standard line when not ''. */
  bring: string;
  /** A sentence of the therapist's own about this visit, or ''. */
  ownWords: string;
}

const wordLimit = 250;

/** Share of words right must fall by this much before a page speaks of a harder day (common practice, no source). */
const harderBy = 0.1;

const share = (o: ReadOccasion): number => o.legibility.wordsRight / Math.max(1, o.legibility.words);

function sawLines(input: PageInput, program: Program | null, withFirst: boolean, t: Texts['family']): string[] {
  const { now, before, first, differences } = legibleOf(input);
  if (!now) {
    const wrote = input.record.samples.some((s) => s.visitId === input.visitId);
    return [wrote ? t.notReadYet : t.noSample];
  }
  const { wordsRight, words, reader } = now.legibility;
  const lines = [t.saw[reader](wordsRight, words)];
  if (before) {
    lines[0] += ` ${t.lastTime(before.legibility.wordsRight, before.legibility.words)}`;
    const showFirst =
      withFirst &&
      first &&
      first !== before &&
      first !== now &&
      first.legibility.reader === reader &&
      first.day < before.day;
    if (showFirst) lines[0] += ` ${t.firstTime(first.legibility.wordsRight, first.legibility.words)}`;
    if (share(now) <= share(before) - harderBy)
      lines.push(program?.visitId === input.visitId ? t.harderChanged : t.harder);
    if (differences) lines.push(t.otherConditions);
  }
  return lines;
}

/** Lines that the family practices: writing first, because writing is what gets better by writing. */
export function practiceLines(program: Program): ProgramLine[] {
  const worth: Partial<Record<ProgramLine['kind'], number>> = { writing: 0, exercise: 1, 'warm-up': 2 };
  return program.lines
    .filter((line) => line.kind in worth)
    .map((line, index) => ({ line, index }))
    .sort((a, b) => worth[a.line.kind]! - worth[b.line.kind]! || a.index - b.index)
    .slice(0, 5)
    .sort((a, b) => a.index - b.index)
    .map(({ line }) => line);
}

/** `brief` leaves out which hand, glasses and missed days. */
function practiceSection(
  input: PageInput,
  program: Program | null,
  options: FamilyOptions,
  brief: boolean,
  t: Texts,
): Section {
  const f = t.family;
  if (!program) return { key: 'practice', title: f.practiceTitle, blocks: [{ kind: 'text', text: f.noProgram }] };
  const lines = practiceLines(program);
  const { common } = doseOfLines(
    lines.map((line) => line.dose),
    t.dose,
  );
  const shared = common ? t.dose.doThese(common) : '';
  // Title and minutes only: how to do it is on the home program sheet.
  const steps = lines.map((line): PageStep => {
    const minutes = line.dose.minutes > 0 ? t.dose.minutes(line.dose.minutes) : amountWords(line.dose, t.dose);
    return {
      title: line.title,
      text: '',
      dose: [minutes, common ? '' : oftenWords(line.dose, t.dose)].filter(Boolean).join(', '),
      cautions: [],
    };
  });
  const used = program.lines.filter((l) => l.kind === 'paper' || l.kind === 'tool').map((l) => l.title);
  const sample = lastSample(input);
  const { client } = input.record;
  const tablet =
    client.medicines.length > 0 && sample?.conditions.doseState === 'on' && sample.conditions.minutesSinceDose
      ? f.afterTablet(sample.conditions.minutesSinceDose)
      : '';
  const often = [shared, options.when, tablet, used.length > 0 ? f.use(used.slice(0, 3).join(', ')) : ''];
  const also = [
    client.handNow ? f.hand(t.common.hand[client.handNow]) : '',
    sample?.conditions.glasses === 'worn' ? f.glasses : '',
    f.missed,
  ];
  const blocks: Block[] = [];
  if (steps.length > 0) blocks.push({ kind: 'steps', items: steps });
  const how = [often, brief ? [] : also].flat().filter(Boolean).join(' ');
  if (how) blocks.push({ kind: 'text', text: how });
  return { key: 'practice', title: f.practiceTitle, blocks };
}

/** Cautions that print with this client's own lines, each once. */
export function cautionsOf(program: Program | null): string[] {
  return [...new Set((program?.lines ?? []).flatMap((line) => line.cautions))];
}

export function callLine(input: PageInput, t: Texts['common']): string {
  const { callName, callNumber } = input.record.client;
  return callName || callNumber ? t.call(callName, callNumber) : t.callBlank;
}

/** What has to be done about chair and table, beside the drawing that shows the heights. */
function setupTasks(figure: SetupFigure, locale: string, t: Texts): string[] {
  const { setup } = t.family;
  const tasks: string[] = [];
  if (figure.footrestMm >= 5) tasks.push(setup.footrest(lengthWords(figure.footrestMm, locale)));
  if (figure.raiseTableMm >= 5) tasks.push(setup.raise(lengthWords(figure.raiseTableMm, locale)));
  return tasks;
}

/** The same with the heights in words. */
export function setupInWords(figure: SetupFigure, locale: string, t: Texts): string[] {
  const { setup } = t.family;
  const heights = [setup.seat(lengthWords(figure.seatMm, locale)), setup.table(lengthWords(figure.tableMm, locale))];
  return [heights.join(' '), ...setupTasks(figure, locale, t)];
}

export function familyDoc(input: PageInput, options: FamilyOptions, program: Program | null, t: Texts): Doc {
  const f = t.family;
  const visit = visitOf(input);
  const sections: Section[] = [];
  const saw: Block[] = sawLines(input, program, true, f).map((text) => ({ kind: 'text', text }));
  if (options.ownWords.trim()) saw.push({ kind: 'text', text: options.ownWords.trim() });
  sections.push({ key: 'saw', title: f.sawTitle, blocks: saw });
  if (options.pictures.length > 0)
    sections.push({ key: 'pictures', title: '', blocks: [{ kind: 'pictures', pictures: options.pictures }] });

  const goal = goalsOf(input).find((g) => g.status === 'active');
  if (goal) {
    const lines = [goal.because ? f.inYourWords(goal.because) : '', goal.nextStep ? f.nextStep(goal.nextStep) : ''];
    sections.push({
      key: 'goal',
      title: f.goalTitle,
      blocks: [{ kind: 'text', text: [plainGoal(goal), ...lines].filter(Boolean).join(' ') }],
    });
  }
  sections.push(practiceSection(input, program, options, false, t));
  sections.push({
    key: 'stop',
    title: '',
    blocks: [
      {
        kind: 'stop',
        title: t.stop.title,
        items: [t.stop.line, ...cautionsOf(program), t.stop.signs, t.stop.emergency],
        call: callLine(input, t.common),
      },
    ],
  });
  const figure = setupOf(input);
  sections.push({
    key: 'help',
    title: f.helpTitle,
    blocks: figure
      ? [{ kind: 'setup', figure, lines: [f.setup.like, ...setupTasks(figure, input.locale, t), ...f.help] }]
      : [{ kind: 'list', items: [f.setUp, ...f.help] }],
  });
  sections.push({ key: 'bring', title: '', blocks: [{ kind: 'text', text: options.bring.trim() || f.bring }] });

  return {
    sheet: input.sheet,
    pt: options.pt,
    title: f.title,
    lead: [
      { label: t.common.name, value: whoOf(input) },
      { label: t.common.date, value: longDate(dayOf(input), input.locale) },
      { label: t.common.next, value: visit?.nextVisit || '____________' },
    ],
    sections,
    foot: t.common.deferShort,
  };
}

const dropSection = (key: string) => (doc: Doc) => changeSection(doc, key, () => []);
/** Keeps `n` steps, and says that there are more. */
const fewerSteps = (n: number, t: Texts) => (doc: Doc) =>
  changeSection(doc, 'practice', (blocks) =>
    blocks
      .flatMap((block): Block[] => {
        if (block.kind !== 'steps' || block.items.length <= n) return [block];
        return [{ ...block, items: block.items.slice(0, n) }];
      })
      .map((block): Block =>
        block.kind === 'text' && !block.text.startsWith(t.family.more)
          ? { ...block, text: `${t.family.more} ${block.text}` }
          : block,
      ),
  );

/** From least to most missed. Never left out: what was read, when to stop, whom to call, the next visit. */
function shortenings(input: PageInput, program: Program | null, options: FamilyOptions, t: Texts): Shortening[] {
  const figure = setupOf(input);
  const f = t.family;
  const inWords = figure ? setupInWords(figure, input.locale, t) : [f.setUp];
  return [
    { says: 'What to bring was left out.', apply: dropSection('bring') },
    {
      says: 'The drawing of chair and table was left out; its heights are in the text.',
      against: 'height',
      apply: (doc) => changeSection(doc, 'help', () => [{ kind: 'list', items: [...inWords, ...f.help] }]),
    },
    { says: 'Four practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(4, t) },
    { says: 'The pictures were left out.', against: 'height', apply: dropSection('pictures') },
    {
      says: 'What it was at the start was left out.',
      apply: (doc) =>
        changeSection(doc, 'saw', (blocks) => {
          const short = sawLines(input, program, false, f)[0] ?? '';
          return [{ kind: 'text', text: short }, ...blocks.slice(1)];
        }),
    },
    { says: 'Three practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(3, t) },
    {
      says: 'Advice for helpers was left out; chair and table are still there.',
      apply: (doc) => changeSection(doc, 'help', () => [{ kind: 'text', text: inWords.join(' ') }]),
    },
    {
      says: 'Which hand, glasses and what to do after a missed day were left out.',
      apply: (doc) => changeSection(doc, 'practice', () => practiceSection(input, program, options, true, t).blocks),
    },
    { says: 'Three practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(3, t) },
    { says: 'Two practice lines are shown; the home program sheet has the rest.', apply: fewerSteps(2, t) },
    { says: 'Chair and table were left out.', apply: dropSection('help') },
    { says: 'The goal was left out.', apply: dropSection('goal') },
    {
      says: 'Paper, pen and how often were left out; they are on the home program sheet.',
      apply: (doc) =>
        changeSection(doc, 'practice', (blocks) =>
          blocks.map((block): Block => (block.kind === 'text' ? { ...block, text: f.more } : block)),
        ),
    },
  ];
}

/** The family summary of one visit, fitted to one sheet. */
export function familyPage(input: PageInput, options: FamilyOptions, t: Texts): Packet {
  const program = programOf(input);
  const fitted = fitOneSheet(familyDoc(input, options, program, t), shortenings(input, program, options, t), wordLimit);
  const { client } = input.record;
  const warnings = [...fitted.shortened];
  if (!fitted.fits)
    warnings.push(
      'The page is longer than one sheet or than 250 words. Shorten the longest lines below, or choose smaller print.',
    );
  if (!client.familyConsent)
    warnings.push('No consent to share with the family is noted for this client. Ask before you hand this out.');
  if (program?.status === 'draft')
    warnings.push('The home program is still a draft. Approve it before you hand this out.');
  if (!client.callNumber && !client.callName)
    warnings.push('Nobody to call is noted for this client; the sheet has a blank line.');
  const legible = legibleOf(input);
  if (legible.now && legible.now.legibility.reader !== 'unfamiliar')
    warnings.push('The words were not read by somebody who did not know the text; the sheet says who read them.');
  const now = legible.now;
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind: 'family-summary',
    ruleVersion: program?.ruleVersion ?? '',
    sheets: fitted.sheets,
    basis: [input.visitId, now?.sample.id, legible.before?.sample.id, program?.id].filter((id) => id !== undefined),
    warnings,
  };
}
