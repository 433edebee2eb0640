/**
 * The visit note as text for the clinic's record system: numbers come from the facts, sentences of skilled judgement
 * are the therapist's own and never made up here.
 */
import type { ItemTable } from '../../../../db/types/items.ts';
import type { Visit } from '../../../../db/types/visit.ts';
import {
  changeLine,
  enduranceLines,
  goalLines,
  homePracticeLines,
  keyMeasures,
  legibilityLines,
  measureLines,
  setUpLines,
} from './clinical-lines.ts';
import { coSignWords, preparedWords } from '../../record/co-sign.ts';
import { findings } from '../../intake/findings.ts';
import { dayOf, longDate, type PageInput, programOf, visitOf, visitsUpTo, whoOf } from '../sheet/page-facts.ts';
import { inkLinesToday } from './ink-lines.ts';
import { plural } from '../../texts/count-words.ts';
import { paginate } from '../sheet/break-sheets.ts';
import { repeatedSentence } from '../practice/repeated-sentence.ts';
import { minutesADay } from '../../program/draft/program-line.ts';
import type { Doc, Packet, Section } from '../sheet/packet.ts';
import { texts } from '../../texts/en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

const kindWords: Record<Visit['kind'], string> = {
  first: 'First visit',
  treatment: 'Treatment',
  retest: 'Retest',
  discharge: 'Discharge',
};

/** Warns where a sentence of judgement repeats one of an earlier visit, or is missing. */
function noteWarnings(input: PageInput): string[] {
  const visit = visitOf(input);
  if (!visit) return [toldEnglish.printed.noVisitForNote];
  const earlier = visitsUpTo(input).filter((v) => v.id !== visit.id);
  const warnings: string[] = [];
  for (const [field, name] of [
    ['skilled', toldEnglish.printed.skilledJudgement],
    ['response', toldEnglish.printed.theResponse],
    ['plan', toldEnglish.printed.thePlan],
  ] as const) {
    const text = visit[field];
    if (!text.trim()) {
      if (field === 'skilled') warnings.push(toldEnglish.printed.judgementMissing);
      continue;
    }
    const twin = earlier.findLast((v) => repeatedSentence(text, v[field], input.limits.noteAgainPercent) !== null);
    const again = twin ? repeatedSentence(text, twin[field], input.limits.noteAgainPercent) : null;
    if (twin && again !== null)
      warnings.push(toldEnglish.printed.readsTheSame(name, longDate(twin.date, input.locale), again));
  }
  if (!visit.taughtBack.trim()) warnings.push(toldEnglish.printed.notShownBack);
  return warnings;
}

const minutesWords = (visit: Visit | null): string => {
  if (!visit || visit.minutes === null) return 'not noted';
  return visit.units ? `${visit.minutes} (${plural(visit.units, 'timed unit')})` : String(visit.minutes);
};

const measuredToday = (input: PageInput): boolean =>
  input.record.samples.some((sample) => sample.visitId === input.visitId);

function sectionsOf(input: PageInput, visit: Visit, intake: ItemTable): Section[] {
  const program = programOf(input);
  const own = (text: string): string[] => (text.trim() ? [text.trim()] : []);
  const programLine = program
    ? [
        `Home program of ${longDate(dayOfVisit(input, program.visitId), input.locale)} (${program.status}, tier ${program.tier}, about ${minutesADay(program.lines)} minutes a practice day): ${program.lines
          .filter((l) => ['warm-up', 'exercise', 'writing'].includes(l.kind))
          .map((l) => l.title)
          .join('; ')}.`,
        ...own(preparedWords(program, texts.program)),
      ]
    : ['No home program yet.'];
  const parts: [string, string, string[]][] = [
    ['told', 'Told by the client', [...own(visit.told), ...homePracticeLines(input)]],
    ['found', 'Found at the screen', foundLines(input, intake)],
    [
      'measured',
      'Measured',
      [
        ...legibilityLines(input),
        changeLine(input),
        ...enduranceLines(input),
        ...(measuredToday(input) ? measureLines(input, keyMeasures, 'before') : []),
        ...inkLinesToday(input),
      ].filter(Boolean),
    ],
    ['goals', 'Goals', goalLines(input)],
    ['skilled', 'Skilled judgement', own(visit.skilled)],
    ['response', 'Response', own(visit.response)],
    ['program', 'Home program', [...programLine, ...own(visit.taughtBack).map((text) => `Shown back: ${text}`)]],
    ['plan', 'Plan', [...own(visit.plan), ...(visit.nextVisit ? [`Next visit: ${visit.nextVisit}`] : [])]],
    ['co-sign', 'Recorded and co-signed', own(coSignWords(visit, (day) => longDate(day, input.locale)))],
    [
      'addenda',
      'Late addenda',
      (visit.addenda ?? []).map((one) => `${longDate(one.at, input.locale)}, ${one.by}: ${one.text.trim()}`),
    ],
  ];
  return parts
    .filter(([, , lines]) => lines.length > 0)
    .map(([key, title, lines]) => ({ key, title, blocks: [{ kind: 'list', items: lines }] }));
}

/** What the screen of this visit found: flags, what needs work, what was not tested; the rest in one line. */
function foundLines(input: PageInput, intake: ItemTable): string[] {
  const here = (fact: { visitId: string }): boolean => fact.visitId === input.visitId;
  const flags = input.record.redFlags.filter(here);
  const all = findings(input.record.intakeAnswers.filter(here), intake, null, toldEnglish.findings).filter(
    (one) => one.source !== 'not asked',
  );
  const fine = all.filter((one) => one.severity === 'fine');
  const titles = new Map(intake.items.map((item) => [item.code, item.title.toLowerCase()]));
  const yes = flags.filter((flag) => flag.present).length;
  return [
    flags.length === 0
      ? ''
      : `Red flags: ${flags.length} asked, ${yes === 0 ? 'none answered with yes' : `${yes} answered with yes`}.`,
    ...all.filter((one) => one.severity !== 'fine' && one.severity !== 'not-indicated').map((one) => one.sentence),
    fine.length === 0
      ? ''
      : `No difficulty: ${[...new Set(fine.map((one) => titles.get(one.code) ?? one.code))].join(', ')}.`,
    ...(input.record.setups.some(here) ? setUpLines(input) : []),
  ].filter(Boolean);
}

const dayOfVisit = (input: PageInput, visitId: string): string =>
  input.record.visits.find((v) => v.id === visitId)?.date ?? input.today;

/** The note as a packet (to preview, edit and freeze). */
export function visitNote(input: PageInput, intake: ItemTable): Packet {
  const visit = visitOf(input);
  const doc: Doc = {
    sheet: input.sheet,
    pt: 11,
    title: visit ? `${kindWords[visit.kind]} note` : 'Visit note',
    lead: [
      { label: 'Client', value: whoOf(input) },
      { label: 'Date', value: longDate(dayOf(input), input.locale) },
      { label: 'Minutes', value: minutesWords(visit) },
      ...(visit?.groupOf ? [{ label: 'Group session', value: `${visit.groupOf} clients` }] : []),
    ],
    sections: visit ? sectionsOf(input, visit, intake) : [],
    foot: [input.clinic.therapist, input.clinic.credentials, input.clinic.name].filter(Boolean).join(', '),
  };
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind: 'visit-note',
    ruleVersion: programOf(input)?.ruleVersion ?? '',
    sheets: paginate(doc),
    basis: [input.visitId],
    warnings: noteWarnings(input),
  };
}

/** Any packet of text pages as plain text to copy; repeated heads and feet are left out. */
export function packetText(packet: Packet): string {
  const lines: string[] = [];
  for (const sheet of packet.sheets) {
    if (sheet.type !== 'doc') continue;
    if (sheet.title) lines.push(sheet.title.toUpperCase());
    if (sheet.lead.length > 0) lines.push(sheet.lead.map((pair) => `${pair.label}: ${pair.value}`).join('   '));
    for (const section of sheet.sections) {
      if (section.title) lines.push('', section.title.toUpperCase());
      for (const block of section.blocks) {
        if (block.kind === 'text' || block.kind === 'small') lines.push(block.text);
        else if (block.kind === 'list' || block.kind === 'checks')
          lines.push(...block.items.map((item) => `- ${item}`));
        else if (block.kind === 'facts') lines.push(...block.rows.map((row) => `${row.label}: ${row.value}`));
        else if (block.kind === 'stop') lines.push(block.title, ...block.items.map((item) => `- ${item}`), block.call);
        else if (block.kind === 'steps')
          lines.push(
            ...block.items.flatMap((step) => [
              `- ${[step.title, step.dose].filter(Boolean).join(': ')}`,
              ...[step.text, ...step.cautions].filter(Boolean).map((text) => `  ${text}`),
            ]),
          );
        else if (block.kind === 'table') lines.push(...[block.head, ...block.rows].map((row) => row.join('\t')));
        else if (block.kind === 'sign') lines.push(...block.labels.map((label) => `${label}: ______________`));
      }
    }
  }
  const foot = packet.sheets.find((sheet) => sheet.type === 'doc')?.foot;
  if (foot) lines.push('', foot);
  return `${lines.join('\n').trim()}\n`;
}
