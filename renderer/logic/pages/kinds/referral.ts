/** A referral page after a red flag: what was seen, what was done, what is asked. It names no diagnosis of its own. */
import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import type { PageWords } from '../../../../db/types/page.ts';
import type { FlagNotice, FlagState } from '../../intake/flags.ts';
import { dayOf, longDate, type PageInput, visitOf } from '../sheet/page-facts.ts';
import { precautionsOf } from './report-parts.ts';
import { paginate } from '../sheet/break-sheets.ts';
import type { Block, Doc, Packet, Section } from '../sheet/packet.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** Only what the page needs of the decision about flags. */
export interface ReferralFlags {
  level: FlagState['level'];
  open: readonly Pick<FlagNotice, 'title' | 'grade' | 'path' | 'because' | 'doNow' | 'call'>[];
}

export type ReferralOptions = PageWords['referral'];

const callWords: Record<FlagNotice['call'], string> = {
  'emergency-number': 'Emergency number, now',
  'crisis-service': 'Crisis service or emergency number, now',
  'doctor-today': 'Doctor, today',
  'referrer-today': 'Referrer, today',
  neurology: 'Neurology, through the doctor',
};

export function referralPage(
  input: PageInput,
  flags: ReferralFlags,
  options: ReferralOptions,
  rules: Pick<RulesInUse, 'vocabulary'>,
): Packet {
  const { client } = input.record;
  const precautions = precautionsOf(client, rules);
  const emergency = flags.level === 'emergency';
  const sections: Section[] = [];
  // What several flags ask for is said once.
  const said = new Set<string>();
  for (const [i, flag] of flags.open.entries()) {
    const doNow = flag.doNow.filter((action) => !said.has(action));
    for (const action of doNow) said.add(action);
    // What was said about self-harm is told in person: this page may lie open on a desk.
    const selfHarm = flag.path === 'self-harm';
    const blocks: Block[] = [
      selfHarm
        ? { kind: 'text', text: 'Please call the therapist: what was said is told in person.' }
        : { kind: 'list', items: flag.because },
      { kind: 'stop', title: callWords[flag.call], items: doNow, call: '' },
    ];
    sections.push({ key: `flag-${i}`, title: selfHarm ? 'Concern for the safety of this person' : flag.title, blocks });
  }
  const known = [
    { label: 'Client', value: `${client.name}${client.birthYear ? `, born ${client.birthYear}` : ''}` },
    ...(client.diagnoses.length > 0
      ? [
          {
            label: 'Known',
            value: client.diagnoses
              .map((d) =>
                [d.text, d.onset ? `since ${longDate(d.onset, input.locale)}` : ''].filter(Boolean).join(', '),
              )
              .join('; '),
          },
        ]
      : []),
    ...(precautions.length > 0 ? [{ label: 'Precautions', value: precautions.map((p) => p.text).join('; ') }] : []),
    ...(client.medicines.length > 0
      ? [
          {
            label: 'Medicines',
            value: client.medicines.map((m) => [m.name, m.times.join(', ')].filter(Boolean).join(' at ')).join('; '),
          },
        ]
      : []),
    { label: 'Last well', value: options.lastWell || '____________' },
    { label: 'To', value: options.to || client.referrer || '____________' },
  ];
  sections.push({ key: 'known', title: 'About the client', blocks: [{ kind: 'facts', rows: known }] });
  if (options.ownWords.trim())
    sections.push({
      key: 'own',
      title: 'The therapist adds',
      blocks: [{ kind: 'text', text: options.ownWords.trim() }],
    });
  sections.push({
    key: 'state',
    title: '',
    blocks: [
      {
        kind: 'text',
        text: emergency
          ? 'Everything was stopped. No exercises until the client is seen and cleared.'
          : flags.open.length > 0
            ? 'No writing exercises until this is reviewed. Please tell us what was found and what the client may do.'
            : 'Please tell us what you find and what the client may do.',
      },
      {
        kind: 'checks',
        items: [
          'Exercises may begin',
          'May begin with these limits: ________________',
          'Not yet. Seen again on: ____________',
        ],
      },
      { kind: 'sign', labels: ['Therapist, date, time', 'Reviewed by, date, outcome'] },
    ],
  });
  const doc: Doc = {
    sheet: input.sheet,
    pt: 12,
    title: emergency ? 'Emergency referral' : flags.open.length > 0 ? 'Referral: please review today' : 'Referral',
    lead: [
      { label: 'Date', value: longDate(dayOf(input), input.locale) },
      { label: 'From', value: input.clinic.therapist || '____________' },
      { label: 'Clinic', value: input.clinic.name || '____________' },
    ],
    sections,
    foot: 'This page reports what was observed. It is not a diagnosis.',
  };
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind: 'referral',
    ruleVersion: '',
    sheets: paginate(doc),
    basis: [input.visitId],
    warnings: [
      ...(flags.open.length === 0 ? [toldEnglish.printed.noFlagOpen] : []),
      ...(visitOf(input) ? [] : [toldEnglish.printed.noVisitToday]),
    ],
  };
}
