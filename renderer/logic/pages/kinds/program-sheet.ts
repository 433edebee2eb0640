/**
 * The home program as client and family follow it: what to do, how much, with which paper and pen, what to take care
 * of, when to stop and whom to call. Only this client's cautions. Breaks over sheets where it must.
 */
import type { Program, ProgramLine } from '../../../../db/types/program.ts';
import { minutesADay } from '../../program/draft/program-line.ts';
import { doseOfLines, howWords } from '../../texts/dose-words.ts';
import { type PageInput, headDate, longDate, programOf, setupOf, visitOf, whoOf } from '../sheet/page-facts.ts';
import { cautionsOf, stopItems, stopSection } from './family-sections.ts';
import { setupInWords } from './setup-section.ts';
import { changeSection } from '../sheet/fit-sheets.ts';
import { paginate } from '../sheet/break-sheets.ts';
import type { Block, Doc, DocSheet, PageStep, Section } from '../sheet/packet.ts';
import { preparedWords } from '../../record/co-sign.ts';
import type { Texts } from '../../texts/en.ts';

export interface ProgramSheetOptions {
  pt: 14 | 16 | 20;
  when: string;
  /** The therapist's own words at the top, or ''. */
  ownWords: string;
  /** The line drawing that goes with a line, or null. */
  drawing: (line: ProgramLine) => PageStep['drawing'];
  /** Whether a line is done in the clinic only: at home it would be a riddle. */
  inClinic: (line: ProgramLine) => boolean;
  /** Whether a line is said by a page that comes along. */
  saidElsewhere: (line: ProgramLine) => boolean;
}

const doKinds: readonly ProgramLine['kind'][] = ['warm-up', 'exercise', 'writing'];
const goodKinds: readonly ProgramLine['kind'][] = ['advice', 'refer'];

function titled(line: ProgramLine): string {
  const text = line.text.trim();
  return text ? `${line.title.replace(/[.\s]*$/, '')}. ${text}` : line.title;
}

/** Several titles in one row, as sentences; none for none. */
function oneLine(lines: readonly ProgramLine[]): string[] {
  return lines.length > 0 ? [lines.map((line) => `${line.title.replace(/[.\s]*$/, '')}.`).join(' ')] : [];
}

/** Cautions that more than half of the lines carry: said once for all of them, which errs to the safe side. */
function sharedCautions(lines: readonly ProgramLine[]): string[] {
  const all = new Set(lines.flatMap((line) => line.cautions));
  return lines.length < 2
    ? []
    : [...all].filter((one) => lines.filter((line) => line.cautions.includes(one)).length > lines.length / 2);
}

/** Lines with their cautions and drawings beside them. */
const stepsOf = (lines: readonly ProgramLine[], options: ProgramSheetOptions): Block[] =>
  lines.length === 0
    ? []
    : [
        {
          kind: 'steps',
          items: lines.map((line) => ({
            lineId: line.id,
            title: line.title,
            text: line.text,
            dose: '',
            cautions: line.cautions,
            drawing: options.drawing(line),
          })),
        },
      ];

const listOf = (items: string[]): Block[] => (items.length > 0 ? [{ kind: 'list', items }] : []);

const section = (key: string, title: string, blocks: Block[]): Section[] =>
  blocks.length > 0 ? [{ key, title, blocks }] : [];

function doSection(program: Program, options: ProgramSheetOptions, t: Texts): Section[] {
  const lines = program.lines.filter((line) => doKinds.includes(line.kind));
  if (lines.length === 0) return [];
  const { doses, common } = doseOfLines(
    lines.map((line) => line.dose),
    t.dose,
  );
  const shared = sharedCautions(lines);
  const steps: Block = {
    kind: 'steps',
    items: lines.map((line, i) => ({
      lineId: line.id,
      title: line.title,
      text: [line.text, howWords(line.dose, t.dose)].filter(Boolean).join(' '),
      dose: doses[i] ?? '',
      cautions: line.cautions.filter((caution) => !shared.includes(caution)),
      drawing: options.drawing(line),
    })),
  };
  const minutes = minutesADay(program.lines);
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
      blocks: [
        { kind: 'text', text: about.filter(Boolean).join(' ') },
        ...(shared.length > 0
          ? [{ kind: 'text' as const, text: `${t.program.forAll} ${shared.join(' ')}`, strong: true }]
          : []),
        steps,
      ],
    },
  ];
}

/** The pages of the home program; null when the client has none. */
export function programSheets(input: PageInput, options: ProgramSheetOptions, t: Texts): DocSheet[] | null {
  const program = programOf(input);
  if (!program) return null;
  // Drawings of set-up and tools, and advice for helpers (it stands on the family page too), go where that saves a sheet;
  // so does the early place of the stop box, which leaves a gap where it just does not fit.
  const bare = { ...options, drawing: onlyDone(options.drawing) };
  const ways = [options, bare].flatMap((each) => {
    const doc = programDoc(input, program, each, t);
    return [doc, stopLater(doc)];
  });
  const tries = [...ways, ...ways.map((doc) => changeSection(doc, 'help', () => []))].map(paginate);
  const fewest = Math.min(...tries.map((sheets) => sheets.length));
  return tries.find((sheets) => sheets.length === fewest) ?? null;
}

/** The stop box after everything that is done and used, in front of the helpers. */
function stopLater(doc: Doc): Doc {
  const stop = doc.sections.filter((each) => each.key === 'stop');
  const others = doc.sections.filter((each) => each.key !== 'stop');
  const at = others.findIndex((each) => each.key === 'help' || each.key === 'defer');
  return { ...doc, sections: [...others.slice(0, at), ...stop, ...others.slice(at)] };
}

const onlyDone =
  (drawing: ProgramSheetOptions['drawing']): ProgramSheetOptions['drawing'] =>
  (line) =>
    doKinds.includes(line.kind) ? drawing(line) : null;

function programDoc(input: PageInput, program: Program, options: ProgramSheetOptions, t: Texts): Doc {
  const p = t.program;
  const atHome = program.lines.filter((line) => !options.inClinic(line) && !options.saidElsewhere(line));
  const of = (kinds: readonly ProgramLine['kind'][]) => atHome.filter((line) => kinds.includes(line.kind));
  const said = new Set(of([...doKinds, 'setup', 'tool']).flatMap((line) => line.cautions));
  const figure = setupOf(input);
  const heights = figure ? setupInWords(figure, input.locale, t) : [];
  const sections: Section[] = [];
  if (options.ownWords.trim())
    sections.push({ key: 'own', title: '', blocks: [{ kind: 'text', text: options.ownWords.trim() }] });
  sections.push(
    ...section('before', p.setupTitle, [...listOf(heights), ...stepsOf(of(['setup']), options)]),
    ...doSection(program, options, t),
    stopSection(input, stopItems(program, t, input.pageSays, false), t),
    ...section('use', p.useTitle, [...stepsOf(of(['tool']), options), ...listOf(of(['paper', 'content']).map(titled))]),
    ...section('good', p.goodTitle, listOf(of(goodKinds).map(titled))),
    ...section('visit', p.visitTitle, listOf(oneLine(program.lines.filter(options.inClinic)))),
    // What stands with its line is not said twice.
    ...section('care', p.careTitle, listOf(cautionsOf(program).filter((caution) => !said.has(caution)))),
    ...section('help', p.helpTitle, listOf(t.family.help)),
  );
  const state =
    program.status === 'approved' && program.approvedAt
      ? p.approved(longDate(program.approvedAt, input.locale), program.approvedBy ?? '', program.ruleVersion)
      : `${p.draft}.`;
  sections.push({
    key: 'defer',
    title: '',
    blocks: [{ kind: 'small', text: [t.common.deferLong, state, preparedWords(program, p)].filter(Boolean).join(' ') }],
  });
  return {
    sheet: input.sheet,
    pt: options.pt,
    title: p.title,
    lead: [
      { label: t.common.name, value: whoOf(input) },
      { label: t.common.date, value: headDate(input, options.pt) },
      { label: t.common.next, value: visitOf(input)?.nextVisit || '____________' },
    ],
    sections,
    foot: t.common.from(input.clinic.therapist, input.clinic.name),
  };
}
