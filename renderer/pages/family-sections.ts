/** Parts of the family page: what was seen, what to practice, cautions, whom to call, chair and table. */
import type { Program, ProgramLine } from '../../db/types/program.ts';
import { amountWords, doseOfLines, lengthWords, oftenWords } from './dose-words.ts';
import { lastSample, legibleOf, type PageInput, type ReadOccasion } from './facts.ts';
import type { Block, PageStep, Section, SetupFigure, WritingPicture } from './model.ts';
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

const share = (o: ReadOccasion): number => o.legibility.wordsRight / Math.max(1, o.legibility.words);

export function sawLines(input: PageInput, program: Program | null, withFirst: boolean, t: Texts['family']): string[] {
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
    if (share(now) <= share(before) - input.limits.harderDayPoints / 100)
      lines.push(program?.visitId === input.visitId ? t.harderChanged : t.harder);
    if (differences) lines.push(t.otherConditions);
  }
  return lines;
}

/** A title inside a sentence: "Squares of 7 mm" as "squares of 7 mm"; "TV pen" stays. */
const inSentence = (title: string): string =>
  /^\p{Lu}\p{Ll}/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title;

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
      drawing: null,
    };
  });
  const titles = (kind: ProgramLine['kind']) =>
    program.lines.filter((l) => l.kind === kind).map((l) => inSentence(l.title));
  // The paper comes first: without it the lines cannot be practiced.
  const used = [...titles('paper').slice(0, 1), ...titles('tool')];
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
export function setupTasks(figure: SetupFigure, locale: string, t: Texts): string[] {
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
