/**
 * Letter to a neurologist or other referrer: the question, the medicine clock, what the writing does, before and after
 * at true size. Numbers from the facts; the question and the opinion are the therapist's own.
 */
import { daysBetween } from '../../texts/days.ts';
import type { PageWords } from '../../../../db/types/page.ts';
import { changeLine, conditionsWords, goalLines, legibilityWords, measureLines } from './clinical-lines.ts';
import { dayOf, legibleOf, longDate, type PageInput, programOf, type ReadOccasion } from '../sheet/page-facts.ts';
import { paginate } from '../sheet/break-sheets.ts';
import type { Block, Doc, Packet, Section, WritingPicture } from '../sheet/packet.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export type LetterOptions = PageWords['letter'] & { pictures: WritingPicture[]; trueSize: boolean };

const sizeCodes = ['x-height', 'line-decrement', 'page-decrement', 'baseline-angle'];

/** Days between two ISO dates. */

const conditions = ({ sample }: ReadOccasion): string => {
  const words = conditionsWords(sample.conditions);
  return words && ` Conditions: ${words}`;
};

function tremorWords(input: PageInput): string {
  const answers = input.record.intakeAnswers.filter((a) => a.item === 'tremor' && a.state === 'graded');
  const last = answers.sort((a, b) => a.at.localeCompare(b.at)).at(-1);
  return last?.detail ? `${last.detail.replaceAll('-', ' ')}, grade ${last.grade} of 3 (3 = none)` : '';
}

export function letterPage(input: PageInput, options: LetterOptions): Packet {
  const { client } = input.record;
  const { first, last } = legibleOf(input);
  const day = dayOf(input);
  const clock = client.medicines.map((m) => [m.name, m.times.join(', ')].filter(Boolean).join(' at ')).join('; ');
  const rows = [
    { label: 'Client', value: `${client.name}${client.birthYear ? `, born ${client.birthYear}` : ''}` },
    {
      label: 'Diagnoses as given to us',
      value: client.diagnoses
        .map((d) => [d.text, d.onset ? `since ${longDate(d.onset, input.locale)}` : ''].filter(Boolean).join(', '))
        .join('; '),
    },
    {
      label: 'Writing hand',
      value: [
        client.handNow,
        client.handBefore && client.handBefore !== client.handNow ? `(${client.handBefore} before)` : '',
      ]
        .filter(Boolean)
        .join(' '),
    },
    { label: 'Medicines and times', value: clock },
    {
      label: 'Last injection',
      value: options.lastInjection
        ? `${longDate(options.lastInjection, input.locale)}, ${daysBetween(options.lastInjection, day)} days before this visit`
        : '',
    },
    { label: 'Tremor', value: tremorWords(input) },
    { label: 'Falls', value: options.falls },
  ].filter((row) => row.value);
  const found: string[] = [];
  if (first)
    found.push(`At the start (${longDate(first.day, input.locale)}): ${legibilityWords(first)}.${conditions(first)}`);
  if (last && last !== first)
    found.push(`Now (${longDate(last.day, input.locale)}): ${legibilityWords(last)}.${conditions(last)}`);
  found.push(changeLine(input), ...measureLines(input, sizeCodes, 'start'));
  const sections: Section[] = [
    {
      key: 'question',
      title: 'What we ask',
      blocks: [{ kind: 'text', text: options.question.trim() || '____________________________________' }],
    },
    { key: 'facts', title: 'About the client', blocks: [{ kind: 'facts', rows }] },
    { key: 'found', title: 'What the writing shows', blocks: [{ kind: 'list', items: found.filter(Boolean) }] },
  ];
  if (options.pictures.length > 0)
    sections.push({
      key: 'pictures',
      title: options.trueSize ? 'Writing at true size' : 'Writing then and now',
      blocks: [{ kind: 'pictures', pictures: options.pictures }],
    });
  const goals = goalLines(input);
  if (goals.length > 0) sections.push({ key: 'goals', title: 'Goals', blocks: [{ kind: 'list', items: goals }] });
  const closing: Block[] = [];
  if (options.opinion.trim()) closing.push({ kind: 'text', text: options.opinion.trim() });
  closing.push(
    { kind: 'text', text: 'Thank you for looking at this with us.' },
    { kind: 'sign', labels: ['Signature, date'] },
  );
  sections.push({ key: 'closing', title: options.opinion.trim() ? 'What we make of it' : '', blocks: closing });
  const doc: Doc = {
    sheet: input.sheet,
    pt: 11,
    title: 'Letter about handwriting',
    lead: [
      { label: 'To', value: options.to || client.referrer || '____________' },
      { label: 'Date', value: longDate(day, input.locale) },
      {
        label: 'From',
        value: [input.clinic.therapist, input.clinic.credentials].filter(Boolean).join(', ') || '____________',
      },
    ],
    sections,
    foot: input.clinic.name,
  };
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind: 'letter',
    ruleVersion: programOf(input)?.ruleVersion ?? '',
    sheets: paginate(doc),
    basis: [input.visitId, first?.sample.id, last?.sample.id].filter((id) => id !== undefined),
    warnings: options.question.trim() ? [] : [toldEnglish.printed.letterEmpty],
  };
}
