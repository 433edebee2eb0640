/**
 * The visit summary for the family: one sheet, plain words, at most 250 words (clear and large print guidance: 14 pt, 16
 * and more on request, left-aligned, dark on white). Only this client's cautions; no diagnosis, no score without meaning.
 */
import type { Program } from '../../../../db/types/program.ts';
import { readsInches } from '../../texts/dose-words.ts';
import {
  goalOf,
  legibleOf,
  headDate,
  type PageInput,
  programOf,
  setupOf,
  visitOf,
  whoOf,
} from '../sheet/page-facts.ts';
import {
  type FamilyOptions,
  goalBlocks,
  inColumns,
  practiceSection,
  sawBlocks,
  stopItems,
  stopSection,
} from './family-sections.ts';
import { setupTasks } from './setup-section.ts';
import { shortenings } from '../sheet/family-shortenings.ts';
import { fitSheet } from '../sheet/fit-sheets.ts';
import type { Doc, Packet, Section } from '../sheet/packet.ts';
import type { Texts } from '../../texts/en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export type { FamilyOptions };

const wordLimit = 250;

/** Room left of the pictures for their dates. */
export const familyCaptionMm = 34;

function familyDoc(input: PageInput, options: FamilyOptions, program: Program | null, t: Texts): Doc {
  const f = t.family;
  const visit = visitOf(input);
  const saw = sawBlocks(input, program, options.ownWords, true, f);
  const sawSection: Section = { key: 'saw', title: f.sawTitle, blocks: saw };
  const pictures: Section[] =
    options.pictures.length > 0
      ? [
          {
            key: 'pictures',
            title: '',
            blocks: [{ kind: 'pictures', pictures: options.pictures, captionMm: familyCaptionMm }],
          },
        ]
      : [];
  const goal = goalOf(input);
  const goalSection: Section[] = goal ? [{ key: 'goal', title: f.goalTitle, blocks: goalBlocks(goal, true, f) }] : [];
  const stop = stopSection(input, stopItems(program, t, input.pageSays), t);
  const figure = setupOf(input);
  const help: Section = {
    key: 'help',
    title: f.helpTitle,
    blocks: figure
      ? [
          {
            kind: 'setup',
            figure,
            inches: readsInches(input.locale),
            lines: [...setupTasks(figure, input.locale, t), ...f.help],
          },
        ]
      : [{ kind: 'list', items: [f.setUp, ...f.help] }],
  };
  const practice = practiceSection(input, program, options, false, t);
  const bring: Section = { key: 'bring', title: '', blocks: [{ kind: 'text', text: options.bring.trim() || f.bring }] };
  const beside = (section: Section): Section => ({ ...section, beside: true });
  const sections = inColumns(input, options.pt)
    ? [sawSection, ...goalSection.map(beside), ...pictures, practice, beside(help), stop, bring]
    : [sawSection, ...pictures, ...goalSection, practice, stop, help, bring];

  return {
    sheet: input.sheet,
    pt: options.pt,
    title: f.title,
    lead: [
      { label: t.common.name, value: whoOf(input) },
      { label: t.common.date, value: headDate(input, options.pt) },
      { label: t.common.next, value: visit?.nextVisit || '____________' },
    ],
    sections,
    foot: t.common.deferShort,
  };
}

/** The family summary of one visit, fitted to one sheet; in the largest print it may take both sides of it. */
export function familyPage(input: PageInput, options: FamilyOptions, t: Texts): Packet {
  const program = programOf(input);
  const fitted = fitSheet(familyDoc(input, options, program, t), shortenings(input, program, options, t), wordLimit);
  const { client } = input.record;
  const warnings = [...fitted.shortened];
  if (!fitted.fits) warnings.push(toldEnglish.printed.tooLong);
  else if (fitted.sheets.length > 1) warnings.push(toldEnglish.printed.bothSides);
  if (!client.familyConsent) warnings.push(toldEnglish.printed.noConsent);
  if (program?.status === 'draft') warnings.push(toldEnglish.printed.stillDraft);
  if (!client.callNumber && !client.callName) warnings.push(toldEnglish.printed.nobodyToCall);
  const legible = legibleOf(input);
  if (legible.now && legible.now.legibility.reader !== 'unfamiliar') warnings.push(toldEnglish.printed.readByFamily);
  const now = legible.now;
  return {
    format: 'fairhand-page',
    formatVersion: 1,
    kind: 'family-summary',
    ruleVersion: program?.ruleVersion ?? '',
    sheets: fitted.sheets,
    basis: [input.visitId, now?.sample.id, legible.before?.sample.id, program?.id].filter((id) => id !== undefined),
    warnings,
  };
}
