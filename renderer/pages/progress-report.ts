/** Progress report for a payer interval, and discharge summary: numbers from the facts, judgement from the therapist. */
import { changeLine, goalLines, legibilityWords, measureLines } from './clinical-lines.ts';
import { dayOf, legibleOf, longDate, type PageInput, programOf, visitsUpTo } from './facts.ts';
import { paginate } from './layout.ts';
import { minutesADay } from './program-sheet.ts';
import type { Doc, Packet, Section } from './model.ts';
import { practiceSentence } from '../program/practice-log.ts';

export interface ReportOptions {
  /** First day of the reported interval, ISO; '' = since the last report, or the first visit. */
  from: string;
  payer: string;
  codes: string;
  authorizedVisits: string;
  priorLevel: string;
  /** Why a therapist's skill is needed, in her own words. */
  skilled: string;
  potential: string;
  plan: string;
  coSign: boolean;
}

/** Visits and days since the last report of this kind, for a counter beside the button. */
export function sinceLastReport(input: PageInput): { from: string; visits: number; days: number } {
  const day = dayOf(input);
  const days = new Map(input.record.visits.map((v) => [v.id, v.date]));
  const last = input.record.issuedPages
    .filter((page) => page.kind === 'progress-report' && (days.get(page.visitId) ?? page.issuedAt.slice(0, 10)) < day)
    .map((page) => days.get(page.visitId) ?? page.issuedAt.slice(0, 10))
    .sort()
    .at(-1);
  const visits = visitsUpTo(input);
  const from = last ?? visits[0]?.date ?? day;
  const since = visits.filter((v) => (last ? v.date > last : true));
  return { from, visits: since.length, days: Math.round((Date.parse(day) - Date.parse(from)) / 86_400_000) };
}

function identity(input: PageInput, options: ReportOptions): Section {
  const { client } = input.record;
  const onset = client.diagnoses
    .map((d) => d.onset)
    .filter((d) => d !== null)
    .sort()[0];
  const rows = [
    {
      label: 'Client',
      value: `${client.name} (${client.code})${client.birthYear ? `, born ${client.birthYear}` : ''}`,
    },
    { label: 'Diagnoses', value: client.diagnoses.map((d) => d.text).join('; ') },
    { label: 'Onset', value: onset ? longDate(onset, input.locale) : '' },
    { label: 'Start of care', value: visitsUpTo(input)[0] ? longDate(visitsUpTo(input)[0]!.date, input.locale) : '' },
    { label: 'Referrer', value: client.referrer },
    { label: 'Payer', value: options.payer },
    { label: 'Codes', value: options.codes },
    { label: 'Authorized visits', value: options.authorizedVisits },
    { label: 'Level before onset', value: options.priorLevel },
  ].filter((row) => row.value);
  return { key: 'identity', title: '', blocks: [{ kind: 'facts', rows }] };
}

function outcome(input: PageInput): string[] {
  const { first, last } = legibleOf(input);
  const lines: string[] = [];
  if (first) lines.push(`Start (${longDate(first.day, input.locale)}): ${legibilityWords(first)}.`);
  if (last && last !== first) lines.push(`Latest (${longDate(last.day, input.locale)}): ${legibilityWords(last)}.`);
  return [
    ...lines,
    changeLine(input),
    ...measureLines(input, ['x-height', 'line-decrement', 'word-gap', 'baseline-rms']),
  ];
}

const listed = (key: string, title: string, items: string[]): Section[] =>
  items.length > 0 ? [{ key, title, blocks: [{ kind: 'list', items }] }] : [];
const worded = (key: string, title: string, text: string): Section[] =>
  text.trim() ? [{ key, title, blocks: [{ kind: 'text', text: text.trim() }] }] : [];

function signatures(options: ReportOptions): Section {
  const labels = [
    'Therapist, credentials, date',
    ...(options.coSign ? ['Co-signature, date'] : []),
    'Certified by, date',
  ];
  return { key: 'sign', title: '', blocks: [{ kind: 'sign', labels }] };
}

function packet(
  input: PageInput,
  kind: 'progress-report' | 'discharge',
  title: string,
  sections: Section[],
  warnings: string[],
): Packet {
  const doc: Doc = {
    sheet: input.sheet,
    pt: 11,
    title,
    lead: [
      { label: 'Date', value: longDate(dayOf(input), input.locale) },
      {
        label: 'Therapist',
        value: [input.clinic.therapist, input.clinic.credentials].filter(Boolean).join(', ') || '____________',
      },
      { label: 'Clinic', value: input.clinic.name || '____________' },
    ],
    sections,
    foot: `${input.record.client.code}  ·  ${title}`,
  };
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind,
    ruleVersion: programOf(input)?.ruleVersion ?? '',
    sheets: paginate(doc),
    basis: [input.visitId],
    warnings,
  };
}

export function progressReport(input: PageInput, options: ReportOptions): Packet {
  const counter = sinceLastReport(input);
  const from = options.from || counter.from;
  const day = dayOf(input);
  const visits = visitsUpTo(input).filter((v) => v.date >= from);
  const minutes = visits.reduce((sum, v) => sum + (v.minutes ?? 0), 0);
  const logs = input.record.practiceLogs.filter((log) => log.date >= from && log.date <= day);
  const interval = [
    `${longDate(from, input.locale)} to ${longDate(day, input.locale)}: ${visits.length} ${visits.length === 1 ? 'visit' : 'visits'}, ${minutes} minutes with the therapist.`,
    `Home practice: ${practiceSentence(logs)}`,
  ];
  const own = options.skilled.trim()
    ? options.skilled
    : visits
        .map((v) => v.skilled.trim())
        .filter(Boolean)
        .join(' ');
  const warnings = [
    ...(own ? [] : ['Why a therapist’s skill is needed is not written yet.']),
    ...(options.plan.trim() ? [] : ['The plan (go on, change or end) is not written yet.']),
  ];
  return packet(
    input,
    'progress-report',
    'Progress report',
    [
      identity(input, options),
      ...listed('interval', 'Interval', interval),
      ...listed('outcome', 'Outcome', outcome(input)),
      ...listed('goals', 'Goals', goalLines(input)),
      ...worded('skilled', 'Why skilled therapy', own),
      ...worded('potential', 'Rehabilitation potential', options.potential),
      ...worded('plan', 'Plan', options.plan),
      signatures(options),
    ],
    warnings,
  );
}

export function dischargeSummary(input: PageInput, options: ReportOptions, comeBack: readonly string[]): Packet {
  const visits = visitsUpTo(input);
  const program = programOf(input);
  const maintain = (program?.lines ?? [])
    .filter((line) => ['warm-up', 'exercise', 'writing'].includes(line.kind))
    .map((line) => `${line.title}. ${line.text}`.trim());
  const minutes = program ? ` About ${minutesADay(program)} minutes on a practice day.` : '';
  const span =
    visits.length > 0
      ? `${longDate(visits[0]!.date, input.locale)} to ${longDate(dayOf(input), input.locale)}, ${visits.length} visits.`
      : '';
  return packet(
    input,
    'discharge',
    'Discharge summary',
    [
      identity(input, options),
      ...listed('span', 'Care given', [span].filter(Boolean)),
      ...listed('outcome', 'Outcome', outcome(input)),
      ...listed('goals', 'Goals', goalLines(input)),
      ...worded('skilled', 'Judgement at the end', options.skilled || (visits.at(-1)?.skilled ?? '')),
      ...listed('maintain', `To keep it up.${minutes}`, maintain),
      ...listed('back', 'Come back when', [...comeBack]),
      ...worded('plan', 'Plan', options.plan),
      signatures(options),
    ],
    options.plan.trim() ? [] : ['The plan after discharge is not written yet.'],
  );
}

/** When to ask for therapy again; common practice, no source. */
export const comeBackWhen: readonly string[] = [
  'Others can read clearly less of your writing for two weeks.',
  'Writing hurts, or your hand gets numb or tired much sooner.',
  'Your letters have become smaller or shakier.',
  'You want or need to write something new.',
];
