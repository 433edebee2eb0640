/** Progress report for a payer interval, and discharge summary: numbers from the facts, judgement from the therapist. */
import type { PageWords } from '../../../../db/types/page.ts';
import type { Program } from '../../../../db/types/program.ts';
import type { Visit } from '../../../../db/types/visit.ts';
import { plural } from '../../texts/count-words.ts';
import { careOf, counters, sinceLastReport, startOfCare } from './care.ts';
import { changeLine, goalLines, keyMeasures, legibilityWords, measureLines } from './clinical-lines.ts';
import { dayOf, legibleOf, longDate, type PageInput, programOf, visitsUpTo } from '../sheet/page-facts.ts';
import { inkLinesLatest } from './ink-lines.ts';
import { minutesADay } from '../../program/draft/program-line.ts';
import type { Packet } from '../sheet/packet.ts';
import { preparedWords } from '../../record/co-sign.ts';
import { identity, listed, packet, signatures, worded } from './report-parts.ts';
import { thenAndNowFindings } from './finding-lines.ts';
import type { ItemTable } from '../../../../db/types/items.ts';
import { practiceSentence } from '../../program/ladder/practice-log.ts';
import { texts } from '../../texts/en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';
import { englishTelling } from '../../texts/screens/telling.ts';

export type ReportOptions = PageWords['report'];

/** "6 visits, 270 minutes with the therapist, 18 timed units". */
function timeWords(visits: readonly Visit[]): string {
  const minutes = visits.reduce((sum, v) => sum + (v.minutes ?? 0), 0);
  const units = visits.reduce((sum, v) => sum + (v.units ?? 0), 0);
  const timed = units > 0 ? `, ${plural(units, 'timed unit')}` : '';
  return `${plural(visits.length, 'visit')}, ${minutes} minutes with the therapist${timed}`;
}

function missedLines(input: PageInput, from: string): string[] {
  const missed = careOf(input).missedVisits.filter((one) => one.on >= from && one.on <= dayOf(input));
  const said = missed.map(({ on, reason }) => [longDate(on, input.locale), reason].filter(Boolean).join(': '));
  return missed.length === 0 ? [] : [`Visits missed: ${missed.length} (${said.join('; ')}).`];
}

/** Programs approved in the interval: what came in and what went, and the therapist's note on why. */
function programChanges(input: PageInput, from: string): string[] {
  const day = dayOf(input);
  const days = new Map(input.record.visits.map((visit) => [visit.id, visit.date]));
  const dated = input.record.programs
    .filter((program) => program.status === 'approved')
    .map((program) => ({ program, on: days.get(program.visitId) ?? '' }))
    .filter(({ on }) => on <= day)
    .sort((a, b) => a.on.localeCompare(b.on));
  const titles = (program: Program): string[] =>
    program.lines.filter((line) => ['warm-up', 'exercise', 'writing'].includes(line.kind)).map((line) => line.title);
  return dated.flatMap(({ program, on }, at) => {
    const before = dated[at - 1]?.program;
    if (on < from || !before) return [];
    const [old, now] = [titles(before), titles(program)];
    const came = now.filter((title) => !old.includes(title));
    const went = old.filter((title) => !now.includes(title));
    const parts = [
      before.tier === program.tier ? '' : `tier ${before.tier} to ${program.tier}`,
      came.length > 0 ? `new: ${came.join(', ')}` : '',
      went.length > 0 ? `taken out: ${went.join(', ')}` : '',
      program.note.trim(),
    ].filter(Boolean);
    const what = `${longDate(on, input.locale)}: ${parts.length > 0 ? parts.join('; ') : 'unchanged'}.`;
    return [[what, preparedWords(program, texts.program)].filter(Boolean).join(' ')];
  });
}

const outsideLines = (input: PageInput): string[] =>
  careOf(input)
    .outsideTests.filter((test) => test.on === null || test.on <= dayOf(input))
    .map(
      ({ name, score, on }) => `${[name, on ? longDate(on, input.locale) : ''].filter(Boolean).join(', ')}: ${score}`,
    );

function outcome(input: PageInput): string[] {
  const { first, last } = legibleOf(input);
  const lines: string[] = [];
  if (first) lines.push(`Start (${longDate(first.day, input.locale)}): ${legibilityWords(first)}.`);
  if (last && last !== first) lines.push(`Latest (${longDate(last.day, input.locale)}): ${legibilityWords(last)}.`);
  return [...lines, changeLine(input), ...measureLines(input, keyMeasures, 'start'), ...inkLinesLatest(input)].filter(
    Boolean,
  );
}

export function progressReport(input: PageInput, options: ReportOptions, table: ItemTable): Packet {
  const counter = sinceLastReport(input);
  const from = options.from || counter.from;
  const day = dayOf(input);
  const visits = options.from ? visitsUpTo(input).filter((v) => v.date >= from) : counter.visits;
  const logs = input.record.practiceLogs.filter((log) => log.date >= from && log.date <= day);
  const interval = [
    `${longDate(from, input.locale)} to ${longDate(day, input.locale)}: ${timeWords(visits)}.`,
    ...missedLines(input, from),
    `Home practice: ${practiceSentence(logs, toldEnglish.ladder, englishTelling.decimals)}`,
  ];
  const own = options.skilled.trim()
    ? options.skilled
    : visits
        .map((v) => v.skilled.trim())
        .filter(Boolean)
        .join(' ');
  const warnings = [
    ...counters(input, input.locale, toldEnglish.paper).flatMap((counter) => (counter.due ? counter.text : [])),
    ...(own ? [] : [toldEnglish.printed.skillMissing]),
    ...(options.plan.trim() ? [] : [toldEnglish.printed.planMissing]),
  ];
  return packet(
    input,
    'progress-report',
    'Progress report',
    [
      identity(input),
      ...listed('interval', 'Interval', interval),
      ...listed('outcome', 'Outcome', outcome(input)),
      ...listed('findings', 'Screen, then and now', thenAndNowFindings(input.record, input.visitId, table)),
      ...listed('changes', 'Changes of the home program', programChanges(input, from)),
      ...listed('outside', 'Tests given elsewhere', outsideLines(input)),
      ...listed('goals', 'Goals', goalLines(input)),
      ...worded('skilled', 'Why skilled therapy', own),
      ...worded('potential', 'Rehabilitation potential', careOf(input).potential),
      ...worded('plan', 'Plan', options.plan),
      signatures(options),
    ],
    warnings,
  );
}

export function dischargeSummary(
  input: PageInput,
  options: ReportOptions,
  comeBack: readonly string[],
  table: ItemTable,
): Packet {
  const visits = visitsUpTo(input);
  const program = programOf(input);
  const maintain = (program?.lines ?? [])
    .filter((line) => ['warm-up', 'exercise', 'writing'].includes(line.kind))
    .map((line) => `${line.title}. ${line.text}`.trim());
  const minutes = program ? ` About ${minutesADay(program.lines)} minutes on a practice day.` : '';
  const span =
    visits.length > 0
      ? `${longDate(startOfCare(input) ?? visits[0]!.date, input.locale)} to ${longDate(dayOf(input), input.locale)}: ${timeWords(visits)}.`
      : '';
  return packet(
    input,
    'discharge',
    'Discharge summary',
    [
      identity(input),
      ...listed('span', 'Care given', [span, ...missedLines(input, '')].filter(Boolean)),
      ...listed('outcome', 'Outcome', outcome(input)),
      ...listed('findings', 'Screen, then and now', thenAndNowFindings(input.record, input.visitId, table)),
      ...listed('outside', 'Tests given elsewhere', outsideLines(input)),
      ...listed('goals', 'Goals', goalLines(input)),
      ...worded('skilled', 'Judgement at the end', options.skilled || (visits.at(-1)?.skilled ?? '')),
      ...listed('maintain', `To keep it up.${minutes}`, maintain),
      ...listed('back', 'Come back when', [...comeBack]),
      ...worded('plan', 'Plan', options.plan),
      signatures(options),
    ],
    options.plan.trim() ? [] : [toldEnglish.printed.afterMissing],
  );
}

/** When to ask for therapy again; common practice, no source. */
export const comeBackWhen: readonly string[] = [
  'A person who does not know the text reads clearly less of your writing for two weeks.',
  'Writing hurts, or your hand gets numb or tired much sooner.',
  'Your letters have become smaller or shakier.',
  'You want or need to write something new.',
];
