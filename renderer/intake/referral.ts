/** The page that goes with a client whose red flag is open: what was seen, what was done, what is asked for. */
import type { ClientRecord } from '../../db/types/record.ts';
import type { Block, Doc, Section } from '../pages/model.ts';
import type { SheetName } from '../pages/paper.ts';
import { callWords } from './call-words.ts';
import type { FlagNotice, FlagState } from './flags.ts';

export interface ReferralInput {
  record: Pick<ClientRecord, 'client' | 'visits' | 'redFlags' | 'intakeAnswers'>;
  flags: FlagState;
  /** Day of the visit as it is to be printed. */
  date: string;
  /** Dates of the record in the reader's manner. */
  showDate: (iso: string) => string;
  clinic: string;
  therapist: string;
  sheet: SheetName;
}

const row = (label: string, value: string): { label: string; value: string }[] =>
  value.trim() === '' ? [] : [{ label, value }];

function flagSection(flag: FlagNotice): Section {
  const selfHarm = flag.path === 'self-harm';
  // What was said about self-harm is told in person: this page may lie open on a desk.
  const seen: Block[] = selfHarm
    ? [{ kind: 'text', text: 'Please call the therapist: what was said is told in person.' }]
    : [{ kind: 'list', items: flag.because }];
  return {
    key: `flag-${flag.code}`,
    title: selfHarm ? 'Concern for the safety of this person' : flag.title,
    blocks: [
      ...seen,
      { kind: 'text', text: `Call: ${callWords[flag.call]}`, strong: true },
      { kind: 'checks', items: flag.doNow },
    ],
  };
}

/** Diagnoses, medicines and precautions as they were given; the reader decides what matters. */
function knownSection({ record, showDate }: ReferralInput): Section {
  const { client } = record;
  const diagnoses = client.diagnoses.map(
    ({ text, kind, onset }) => `${text || kind || 'not named'}${onset ? `, since ${showDate(onset)}` : ''}`,
  );
  const medicines = client.medicines.map(({ name, times }) =>
    times.length > 0 ? `${name} at ${times.join(', ')}` : name,
  );
  const precautions = client.precautions.map(({ text, code }) => text || (code ?? ''));
  return {
    key: 'known',
    title: 'Known so far',
    blocks: [
      {
        kind: 'facts',
        rows: [
          { label: 'Diagnoses', value: diagnoses.join('; ') || 'none given' },
          { label: 'Medicines', value: medicines.join('; ') || 'none given' },
          ...row('Precautions', precautions.filter(Boolean).join('; ')),
          ...row('Writes with', client.handNow ? `the ${client.handNow} hand` : ''),
        ],
      },
    ],
  };
}

/** The referral page as a text page: shown, printed and filed as it stands. It names no diagnosis of its own. */
export function referralDoc(input: ReferralInput): Doc {
  const { record, flags, date, showDate, clinic, therapist, sheet } = input;
  const { client } = record;
  const emergency = flags.level === 'emergency';
  const sections: Section[] = [
    {
      key: 'urgency',
      title: '',
      blocks: [
        {
          kind: 'stop',
          title: emergency
            ? 'Emergency'
            : flags.open.length > 0
              ? 'To be seen today, before any exercise'
              : 'Known and reviewed',
          items: emergency
            ? ['Last well at: ______________', 'Emergency number called at: ______________ by: ______________']
            : ['Called at: ______________', 'Spoke with: ______________'],
          call: '',
        },
      ],
    },
    ...flags.open.map(flagSection),
    ...(flags.reviewed.length > 0
      ? [
          {
            key: 'reviewed',
            title: 'Known and medically reviewed',
            blocks: [
              {
                kind: 'list' as const,
                items: flags.reviewed
                  .filter((flag) => flag.path !== 'self-harm')
                  .map((flag) =>
                    `${flag.title}: reviewed by ${flag.review?.reviewer ?? ''} on ${flag.review ? showDate(flag.review.on) : ''}. ${flag.review?.outcome ?? ''}`.trim(),
                  ),
              },
            ],
          },
        ]
      : []),
    knownSection(input),
    {
      key: 'asked',
      title: 'What we ask',
      blocks: [
        {
          kind: 'text',
          text: 'Please tell us whether hand exercises and writing practice may begin, and with which limits.',
        },
        {
          kind: 'checks',
          items: [
            'May begin',
            'May begin with these limits: ______________________________',
            'Not yet. Seen again on: ______________',
          ],
        },
        { kind: 'sign', labels: ['Therapist, date', 'Doctor, date'] },
        {
          kind: 'small',
          text: 'This page tells what a licensed therapist observed. It is not a diagnosis. Local rules and the law on records come first.',
        },
      ],
    },
  ];
  return {
    sheet,
    pt: 12,
    title: 'Referral',
    lead: [
      {
        label: 'Client',
        value: `${client.name} (${client.code})${client.birthYear ? `, born ${client.birthYear}` : ''}`,
      },
      { label: 'Date', value: date },
      { label: 'To', value: client.referrer || '________________' },
    ],
    sections,
    foot: [therapist, clinic].filter(Boolean).join(', '),
  };
}
