/**
 * The initial evaluation: what was asked, found, measured and agreed at the first visit. Numbers come from the facts;
 * the limiting factor, the judgement and the plan are the therapist's own words.
 */
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { PageWords } from '../../../../db/types/page.ts';
import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import { flagsOf } from '../../program/facts/from-record.ts';
import { measuredPage } from '../../program/facts/record-measures.ts';
import { bothRanges, measureName, showMeasure } from '../../sample/measured/show-measure.ts';
import { preparedWords } from '../../record/co-sign.ts';
import { recordAsOf } from '../../record/record-as-of.ts';
import { occasionsWanted } from '../../record/writing-occasions.ts';
import { findings } from '../../intake/findings.ts';
import { doseWords } from '../../texts/dose-words.ts';
import { type Texts, texts as en } from '../../texts/en.ts';
import { conditionsWords, enduranceLines, goalLines, legibilityWords, setUpLines } from './clinical-lines.ts';
import { minutesADay } from '../../program/draft/program-line.ts';
import { findingLines } from './finding-lines.ts';
import { identity, listed, packet, precautionsOf, signatures, worded } from './report-parts.ts';
import { legibleOf, longDate, type PageInput, programOf, visitOf } from '../sheet/page-facts.ts';
import type { Packet, WritingPicture } from '../sheet/packet.ts';
import { englishTelling } from '../../texts/screens/telling.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

type Options = PageWords['report'] & { pictures: WritingPicture[]; trueSize: boolean };

function wantedLines(input: PageInput, t: Texts): string[] {
  const { client } = input.record;
  const named = occasionsWanted(input.record).map((each) => {
    const words = each.words.map((word) => word.text).join(', ');
    return [`Wants to write: ${t.occasions[each.code]}`, each.often ?? '', words, each.example]
      .filter(Boolean)
      .join('; ');
  });
  return [client.wants.trim(), ...named, client.readers ? `To be read by: ${client.readers}` : '']
    .filter(Boolean)
    .map((line) => line.replace(/[.\s]*$/, '.'));
}

function precautionLines(input: PageInput, rules: RulesInUse): string[] {
  const names = new Map(rules.vocabulary.cautions.map((each) => [each.code, each.name]));
  const { medicines } = input.record.client;
  return [
    ...precautionsOf(input.record.client, rules).map(({ code, text }) => {
      const name = (code && names.get(code)) ?? '';
      // Words that start as the plain name are the name itself, or say it with more.
      return text.toLowerCase().startsWith(name.toLowerCase()) ? text : [name, text].filter(Boolean).join(': ');
    }),
    ...medicines.map((each) => [each.name, each.times.join(', '), each.note].filter(Boolean).join('; ')),
  ].filter(Boolean);
}

/** How many red flags were asked at this visit, which are open and which are known and reviewed by whom. */
function flagLines(input: PageInput, rules: RulesInUse): string[] {
  const own = input.record.redFlags.filter((answer) => answer.visitId === input.visitId);
  const state = flagsOf(recordAsOf(input.record, input.visitId), rules);
  const titles = new Map(rules.redFlags.map((flag) => [flag.code, flag.title]));
  const reviewed = own.filter((answer) => answer.present && answer.review !== null);
  return [
    own.length === 0 ? 'Red flags: not asked at this visit.' : `Red flags: ${own.length} asked, each by itself.`,
    state.open.length === 0
      ? 'None is open.'
      : `Open: ${state.open.map((flag) => titles.get(flag.code) ?? flag.code).join('; ')}.`,
    ...reviewed.map(
      ({ flag, review }) =>
        `${titles.get(flag) ?? flag}: known, reviewed by ${review!.reviewer} on ${longDate(review!.on, input.locale)}.`,
    ),
  ];
}

/** Values of the page with the interval of the page, as measured. */
function measured(input: PageInput): string[] {
  const sample = input.record.samples.filter((each) => each.visitId === input.visitId).at(-1);
  const page = sample ? measuredPage(input.record, sample.id) : null;
  return (page?.measures ?? []).flatMap((measure) => {
    if (measure.value === null) return [];
    const range = bothRanges(measure, englishTelling).page;
    return [
      `${measureName(measure.code, englishTelling.told.measures)}: ${showMeasure(measure, englishTelling)}${range ? ` (${range})` : ''}, ${measure.n} counted.`,
    ];
  });
}

function sampleLines(input: PageInput): string[] {
  const { now } = legibleOf(input);
  const sample = now?.sample ?? input.record.samples.filter((each) => each.visitId === input.visitId).at(-1);
  if (!sample) return ['No writing sample at this visit.'];
  return [
    now ? `${legibilityWords(now)}.` : 'Not read yet.',
    conditionsWords(sample.conditions).replace(/^./, 'Conditions: $&'),
    ...enduranceLines(input),
  ].filter(Boolean);
}

function programLines(input: PageInput): string[] {
  const program = programOf(input);
  if (!program) return ['No home program yet.'];
  const lines = program.lines.filter((line) => ['warm-up', 'exercise', 'writing'].includes(line.kind));
  return [
    `About ${minutesADay(program.lines)} minutes on a practice day, tier ${program.tier}, ${program.status}.`,
    ...lines.map((line) =>
      [line.title, doseWords(line.dose, en.dose)]
        .filter(Boolean)
        .join(': ')
        .replace(/[.\s]*$/, '.'),
    ),
    preparedWords(program, en.program),
  ].filter(Boolean);
}

/** Items with a score of 0 or 1: what the judgement of the limiting factor starts from. */
function markedLines(record: ClientRecord, rules: RulesInUse): string[] {
  const marked = findings(record.intakeAnswers, rules.intake, null, toldEnglish.findings).filter(
    (one) => one.severity === 'before',
  );
  const titles = new Map(rules.intake.items.map((item) => [item.code, item.title.toLowerCase()]));
  const names = [...new Set(marked.map((one) => titles.get(one.code) ?? one.code))];
  return names.length === 0 ? [] : [`Scored 0 or 1 at the screen: ${names.join(', ')}.`];
}

export function initialEvaluation(input: PageInput, options: Options, rules: RulesInUse, t: Texts): Packet {
  const { client } = input.record;
  const hands = [
    client.handNow ? `Writes with the ${client.handNow} hand` : '',
    client.handBefore && client.handBefore !== client.handNow ? `the ${client.handBefore} before` : '',
  ].filter(Boolean);
  const record = recordAsOf(input.record, input.visitId);
  const warnings = [
    ...(options.skilled.trim() || visitOf(input)?.skilled.trim() ? [] : [toldEnglish.printed.factorMissing]),
    ...(options.plan.trim() || visitOf(input)?.plan.trim() ? [] : [toldEnglish.printed.careMissing]),
    ...(record.goals.length > 0 ? [] : [toldEnglish.printed.goalMissing]),
  ];
  const pictures =
    options.pictures.length > 0
      ? [
          {
            key: 'pictures',
            title: options.trueSize ? 'Sample, true size' : 'Sample',
            blocks: [{ kind: 'pictures' as const, pictures: options.pictures }],
          },
        ]
      : [];
  return packet(
    input,
    'initial-evaluation',
    'Initial evaluation',
    [
      identity(input),
      ...listed(
        'question',
        'What it is for',
        [...wantedLines(input, t), hands.length ? `${hands.join(', ')}.` : ''].filter(Boolean),
      ),
      ...listed('precautions', 'Precautions and medicines', precautionLines(input, rules)),
      ...listed('flags', 'Red flags', flagLines(input, rules)),
      ...listed('findings', 'Screen', findingLines(record, rules.intake)),
      ...listed('setup', 'Set-up', setUpLines(input)),
      ...listed('sample', 'Writing sample', sampleLines(input)),
      ...pictures,
      ...listed('measures', 'Measures of the page (interval of this page)', measured(input)),
      ...listed('factor', 'Limiting factor and judgement', [
        ...markedLines(record, rules),
        ...[options.skilled.trim() || (visitOf(input)?.skilled.trim() ?? '')].filter(Boolean),
      ]),
      ...listed('goals', 'Goals', goalLines(input)),
      ...listed('program', 'Home program and dose', programLines(input)),
      ...worded('plan', 'Plan of care', options.plan.trim() || (visitOf(input)?.plan ?? '')),
      signatures(options),
    ],
    warnings,
  );
}
