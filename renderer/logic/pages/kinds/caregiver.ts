/**
 * One page for the person who helps at home: chair and table, one cue before the line and never during it, how help
 * becomes less, and what not to do. Plain words, grade 6 at most.
 */
import { lengthWords, readsInches } from '../../texts/dose-words.ts';
import type { Texts } from '../../texts/en.ts';
import { inColumns, stopItems, stopSection } from './family-sections.ts';
import { setupInWords, setupTasks } from './setup-section.ts';
import { headDate, type PageInput, programOf, setupOf, whoOf } from '../sheet/page-facts.ts';
import { itemOfOccasion } from '../../record/writing-occasions.ts';
import { paginate } from '../sheet/break-sheets.ts';
import type { Block, Doc, Packet } from '../sheet/packet.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export function caregiverPage(input: PageInput, pt: 14 | 16 | 20, t: Texts): Packet {
  const c = t.caregiver;
  const figure = setupOf(input);
  const program = programOf(input);
  // The drawing holds the heights; in the largest print they stand in words.
  const setUp: Block = !figure
    ? { kind: 'list', items: [t.family.setUp] }
    : pt === 20
      ? { kind: 'list', items: setupInWords(figure, input.locale, t) }
      : {
          kind: 'setup',
          figure,
          inches: readsInches(input.locale),
          lines: [c.seat(lengthWords(figure.seatMm, input.locale)), ...setupTasks(figure, input.locale, t)],
        };
  // What the client wants to write comes before letters and drills.
  const writing = (program?.lines ?? []).filter((line) => line.kind === 'writing');
  const wanted: readonly (string | null)[] = Object.values(itemOfOccasion);
  const cue = (writing.find((line) => wanted.includes(line.item)) ?? writing[0])?.title ?? '';
  const beside = inColumns(input, pt);
  const doc: Doc = {
    sheet: input.sheet,
    pt,
    title: c.title,
    lead: [
      { label: t.common.name, value: whoOf(input) },
      { label: t.common.date, value: headDate(input, pt) },
    ],
    sections: [
      { key: 'setup', title: c.setupTitle, blocks: [setUp] },
      {
        key: 'cue',
        title: c.cueTitle,
        blocks: [{ kind: 'list', items: [...(cue ? [c.task(cue)] : []), ...c.cue] }],
        beside,
      },
      { key: 'fading', title: c.fadingTitle, blocks: [{ kind: 'list', items: c.fading }] },
      { key: 'not', title: c.notTitle, blocks: [{ kind: 'list', items: c.not }], beside },
      stopSection(input, stopItems(program, t, input.pageSays), t),
    ],
    foot: t.common.deferShort,
  };
  const warnings = input.record.client.familyConsent ? [] : [toldEnglish.printed.noConsent];
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind: 'caregiver',
    ruleVersion: program?.ruleVersion ?? '',
    sheets: paginate(doc),
    basis: [input.visitId, program?.id].filter((id) => id !== undefined),
    warnings,
  };
}
