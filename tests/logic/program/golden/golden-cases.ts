/**
 * Drafts and printed pages of invented clients, as text: what a change of structure must leave as it is. Ids and the
 * shape of the data are left out, so that types may change under the same words.
 */
import { doseWords } from '../../../../renderer/logic/texts/dose-words.ts';
import { texts } from '../../../../renderer/logic/texts/en.ts';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { rulesInUse } from '../../../../db/rules/in-use.ts';
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { ProgramLine } from '../../../../db/types/program.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import { buildPacket } from '../../../../renderer/logic/pages/sheet/build-packet.ts';
import type { PageInput } from '../../../../renderer/logic/pages/sheet/page-facts.ts';
import { textsOf } from '../../../../renderer/logic/pages/sheet/fit-sheets.ts';
import { languageOf } from '../../../../renderer/logic/texts/known-languages.ts';
import { languages } from '../../../../renderer/logic/texts/languages.ts';
import type { Packet, SheetModel } from '../../../../renderer/logic/pages/sheet/packet.ts';
import { emptyWords, pageKinds } from '../../../../renderer/logic/pages/sheet/page-choices.ts';
import { practiceRequestOf } from '../../../../renderer/logic/pages/practice/practice-request.ts';
import { compose } from '../../../../renderer/logic/program/draft/compose.ts';
import { type Composition } from '../../../../renderer/logic/program/draft/stopped-draft.ts';
import { programInput } from '../../../../renderer/logic/program/facts/from-record.ts';
import { clientId, id, input as pageInput, record, visitIds } from '../../pages/record.ts';
import { anyCase } from '../inputs.ts';

const CASES = 200;
/** Every so many cases one is kept whole, for differences that can be read. */
export const WHOLE_EVERY = 17;

const rules = rulesInUse(null);
const stamp = { at: '2026-04-15T09:00:00.000Z', by: 'JM' };

/** A case as text, part by part: the draft, the draft from the record, each kind of page. */
export type CaseText = Record<string, string[]>;

function lineTexts(line: ProgramLine): string[] {
  const { dose } = line;
  const counts = [
    dose.minutes,
    dose.sets,
    dose.reps,
    dose.lines,
    dose.restMinutes?.least,
    dose.timesPerDay,
    dose.daysPerWeek,
  ];
  return [
    `${line.kind} ${line.item ?? '-'} ${line.rule ?? '-'} tier ${line.tier}: ${line.title}`,
    `  ${line.text}`,
    `  ${counts.map((count) => count || '-').join(' ')} ${doseWords(dose, texts.dose)}`,
    `  because (${line.findings.join(' ')}) ${line.because}; until ${line.until}`,
    `  ${line.source} ${line.sourceNote}`,
    ...line.cautions.map((caution) => `  ! ${caution}`),
  ];
}

function draftTexts(draft: Composition): string[] {
  return [
    `tier ${draft.tier}${draft.stop ? `, stopped: ${draft.stop.level} ${draft.stop.flags.map((flag) => flag.code).join(' ')}` : ''}`,
    ...draft.lines.flatMap(lineTexts),
    ...draft.vetoed.map((each) => `vetoed ${each.item} ${each.rule}: ${each.because}`),
    ...draft.leftOut.map((each) => `left out ${each.item} ${each.rule}: ${each.because}`),
  ];
}

/** A text page by what is read on it; a practice sheet by its drawing. */
function sheetTexts(sheet: SheetModel): string[] {
  if (sheet.type === 'doc')
    return [`[${sheet.sheet} ${sheet.pt} pt ${sheet.page} of ${sheet.pages}]`, ...textsOf(sheet)];
  return [JSON.stringify(sheet, (key, value: unknown) => (/^lineIds?$/.test(key) ? undefined : value))];
}

const pageTexts = ({ sheets, warnings }: Packet): string[] => [
  ...sheets.flatMap(sheetTexts),
  ...warnings.map((warning) => `warns: ${warning}`),
];

/** The invented client of the page tests, with the answers and the draft of a case. */
function recordOf(input: ProgramInput, draft: Composition): ClientRecord {
  return record((r) => {
    r.client.handNow = input.hand;
    r.client.language = input.language ?? 'en';
    r.intakeAnswers = input.findings
      .filter((each) => rules.vocabulary.findings.some(({ code, from }) => code === each.code && from === 'item'))
      .map(({ code, side, grade, detail }) => ({
        ...stamp,
        id: id(),
        clientId,
        visitId: visitIds[2],
        item: code,
        side,
        ...(grade === null ? { state: 'not-tested', grade: null } : { state: 'graded', grade }),
        reason: '',
        detail,
        before: null,
        after: null,
        note: '',
      })) as ClientRecord['intakeAnswers'];
    const program = r.programs[0]!;
    r.programs = [{ ...program, tier: draft.tier, lines: draft.lines.slice(0, 60), ruleVersion: '' }];
  });
}

function caseText(input: ProgramInput, at: number): CaseText {
  const draft = compose(input, rules);
  const made = recordOf(input, draft);
  const from: PageInput = pageInput({ record: made, sheet: at % 2 === 0 ? 'A4' : 'Letter' });
  const language = languageOf(input.language ?? 'en');
  const choices = {
    pt: ([14, 16, 20] as const)[at % 3]!,
    withPictures: false,
    withLog: true,
    withCard: at % 2 === 0,
    withPractice: false,
    withDrawings: true,
    language,
    withEnglish: false,
    words: emptyWords(),
    practice: practiceRequestOf(from, rules, languages[language].texts),
    withFurther: true,
    withDaily: false,
  };
  const pages = pageKinds.map(({ kind }) => [kind, pageTexts(buildPacket(kind, from, choices, rules))]);
  return {
    draft: draftTexts(draft),
    'draft from the record': draftTexts(compose(programInput(made, rules), rules)),
    ...(Object.fromEntries(pages) as CaseText),
  };
}

/** All cases: the same clients each time. */
export const allCases = (): CaseText[] =>
  fc.sample(anyCase(rules), { numRuns: CASES, seed: 20261127 }).map(({ input }, at) => caseText(input, at));

const hash = (lines: readonly string[]): string =>
  createHash('sha256').update(lines.join('\n')).digest('base64url').slice(0, 22);

/** A hash (132 bits of SHA-256) for each part of a case. */
export const hashesOf = (one: CaseText): Record<string, string> =>
  Object.fromEntries(Object.entries(one).map(([part, lines]) => [part, hash(lines)]));

export const goldenFile = (name: 'hashes' | 'whole'): string => fileURLToPath(new URL(`${name}.json`, import.meta.url));

export const golden = <Kept>(name: 'hashes' | 'whole'): Kept =>
  JSON.parse(readFileSync(goldenFile(name), 'utf8')) as Kept;
