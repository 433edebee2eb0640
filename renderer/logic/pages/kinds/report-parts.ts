/** Parts that evaluation, progress report and discharge share: who it is about, lists, signatures, the packet. */
import type { Precaution } from '../../../../db/types/client.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import type { PageWords } from '../../../../db/types/page.ts';
import { careOf, startOfCare } from './care.ts';
import { dayOf, longDate, type PageInput, programOf, visitsUpTo } from '../sheet/page-facts.ts';
import { paginate } from '../sheet/break-sheets.ts';
import type { Doc, Packet, Section } from '../sheet/packet.ts';

type ReportOptions = PageWords['report'];

export function identity(input: PageInput): Section {
  const { client } = input.record;
  const care = careOf(input);
  const start = startOfCare(input);
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
    { label: 'Start of care', value: start ? longDate(start, input.locale) : '' },
    { label: 'Referrer', value: client.referrer },
    { label: 'Payer', value: care.payer },
    { label: 'Codes', value: care.codes },
    { label: 'Authorized visits', value: care.authorizedVisits === null ? '' : String(care.authorizedVisits) },
    { label: 'Certified until', value: care.certifiedUntil ? longDate(care.certifiedUntil, input.locale) : '' },
    { label: 'Level before onset', value: care.priorLevel },
    { label: 'Recorded by an assistant', value: byAssistants(input) },
  ].filter((row) => row.value);
  return { key: 'identity', title: '', blocks: [{ kind: 'facts', rows }] };
}

/** What to take care of; a wish is noted beside it and is none. */
export function precautionsOf(
  { precautions }: ClientRecord['client'],
  { vocabulary }: Pick<RulesInUse, 'vocabulary'>,
): Precaution[] {
  const wishes = new Set(vocabulary.cautions.flatMap(({ code, wish }) => (wish ? [code] : [])));
  return precautions.filter(({ code }) => code === null || !wishes.has(code));
}

/** Visits that an assistant or student recorded, each with who signed it or that nobody has. */
const byAssistants = (input: PageInput): string =>
  visitsUpTo(input)
    .flatMap(({ date, coSign }) =>
      coSign
        ? [
            `${longDate(date, input.locale)} by ${coSign.recordedBy}, ${coSign.signedBy === null ? 'not co-signed' : `co-signed by ${coSign.signedBy}`}`,
          ]
        : [],
    )
    .join('; ');

export const listed = (key: string, title: string, items: string[]): Section[] =>
  items.length > 0 ? [{ key, title, blocks: [{ kind: 'list', items }] }] : [];
export const worded = (key: string, title: string, text: string): Section[] =>
  text.trim() ? [{ key, title, blocks: [{ kind: 'text', text: text.trim() }] }] : [];

export function signatures(options: ReportOptions): Section {
  const labels = [
    'Therapist, credentials, date',
    ...(options.coSign ? ['Co-signature, date'] : []),
    'Certified by, date',
  ];
  return { key: 'sign', title: '', blocks: [{ kind: 'sign', labels }] };
}

export function packet(
  input: PageInput,
  kind: 'progress-report' | 'discharge' | 'initial-evaluation',
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
