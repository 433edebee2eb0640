/**
 * The home program as client and family follow it: what to do, how much, with which paper and pen, what to take care
 * of, when to stop and whom to call. Only this client's cautions. Breaks over sheets where it must.
 */
import type { Program, ProgramLine } from '../../db/types/program.ts';
import { doseOfLines } from './dose-words.ts';
import { type PageInput, dayOf, longDate, programOf, setupOf, visitOf, whoOf } from './facts.ts';
import { callLine, cautionsOf, setupInWords } from './family-sections.ts';
import { changeSection, fitOneSheet } from './fit.ts';
import { paginate } from './layout.ts';
import type { Block, Doc, DocSheet, PageStep, Section } from './model.ts';
import type { Texts } from './texts.ts';

export interface ProgramSheetOptions {
  pt: 14 | 16 | 20;
  when: string;
  /** The therapist's own words at the top, or ''. */
  ownWords: string;
  /** The line drawing that goes with a line, or null. */
  drawing: (line: ProgramLine) => PageStep['drawing'];
}

const doKinds: readonly ProgramLine['kind'][] = ['warm-up', 'exercise', 'writing'];
const useKinds: readonly ProgramLine['kind'][] = ['paper', 'tool', 'content'];
const goodKinds: readonly ProgramLine['kind'][] = ['advice', 'refer'];

/** Minutes of one practice day. */
export function minutesADay(program: Program): number {
  return Math.round(
    program.lines.reduce((sum, line) => sum + line.dose.minutes * Math.max(1, line.dose.timesPerDay), 0),
  );
}

function titled(line: ProgramLine): string {
  const text = line.text.trim();
  return text ? `${line.title.replace(/[.\s]*$/, '')}. ${text}` : line.title;
}

function list(key: string, title: string, items: string[]): Section[] {
  return items.length > 0 ? [{ key, title, blocks: [{ kind: 'list', items }] }] : [];
}

function doSection(program: Program, options: ProgramSheetOptions, t: Texts): Section[] {
  const lines = program.lines.filter((line) => doKinds.includes(line.kind));
  if (lines.length === 0) return [];
  const { doses, common } = doseOfLines(
    lines.map((line) => line.dose),
    t.dose,
  );
  const steps: Block = {
    kind: 'steps',
    items: lines.map((line, i) => ({
      title: line.title,
      text: line.text,
      dose: doses[i] ?? '',
      cautions: line.cautions,
      drawing: options.drawing(line),
    })),
  };
  const minutes = minutesADay(program);
  const about = [
    common ? t.dose.doThese(common) : '',
    options.when,
    minutes > 0 ? t.program.dayTotal(minutes) : '',
    t.family.missed,
  ];
  return [
    {
      key: 'do',
      title: t.program.doTitle,
      blocks: [{ kind: 'text', text: about.filter(Boolean).join(' ') }, steps],
    },
  ];
}

/** The pages of the home program; null when the client has none. */
export function programSheets(input: PageInput, options: ProgramSheetOptions, t: Texts): DocSheet[] | null {
  const program = programOf(input);
  if (!program) return null;
  const doc = programDoc(input, program, options, t);
  // Advice for helpers stands on the family page too: it goes where that saves a second sheet.
  const short = fitOneSheet(doc, [{ says: '', apply: (d) => changeSection(d, 'help', () => []) }], null);
  return short.fits ? short.sheets : paginate(doc);
}

export function programDoc(input: PageInput, program: Program, options: ProgramSheetOptions, t: Texts): Doc {
  const p = t.program;
  const of = (kinds: readonly ProgramLine['kind'][]) => program.lines.filter((line) => kinds.includes(line.kind));
  const doCautions = new Set(of(doKinds).flatMap((line) => line.cautions));
  const figure = setupOf(input);
  const before = [...(figure ? setupInWords(figure, input.locale, t) : []), ...of(['setup']).map(titled)];
  const sections: Section[] = [];
  if (options.ownWords.trim())
    sections.push({ key: 'own', title: '', blocks: [{ kind: 'text', text: options.ownWords.trim() }] });
  sections.push(
    ...doSection(program, options, t),
    ...list('before', p.setupTitle, before),
    ...list('use', p.useTitle, of(useKinds).map(titled)),
    ...list('good', p.goodTitle, of(goodKinds).map(titled)),
    // What stands with its practice line is not said twice.
    ...list(
      'care',
      p.careTitle,
      cautionsOf(program).filter((caution) => !doCautions.has(caution)),
    ),
    {
      key: 'stop',
      title: '',
      blocks: [
        {
          kind: 'stop',
          title: t.stop.title,
          items: [t.stop.line, t.stop.signs, t.stop.emergency],
          call: callLine(input, t.common),
        },
      ],
    },
    ...list('help', p.helpTitle, t.family.help),
  );
  const state =
    program.status === 'approved' && program.approvedAt
      ? p.approved(longDate(program.approvedAt, input.locale), program.approvedBy ?? '', program.ruleVersion)
      : p.draft;
  sections.push({ key: 'defer', title: '', blocks: [{ kind: 'small', text: `${t.common.deferLong} ${state}` }] });
  return {
    sheet: input.sheet,
    pt: options.pt,
    title: p.title,
    lead: [
      { label: t.common.name, value: whoOf(input) },
      { label: t.common.date, value: longDate(dayOf(input), input.locale) },
      { label: t.common.next, value: visitOf(input)?.nextVisit || '____________' },
    ],
    sections,
    foot: t.common.from(input.clinic.therapist, input.clinic.name),
  };
}
