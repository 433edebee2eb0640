import type { RuleTable } from '../../../../db/types/rules.ts';
import type { ProgramLine } from '../../../../db/types/program.ts';
import { dayOf, legibleOf, longDate, type PageInput, programOf } from '../sheet/page-facts.ts';
import { type PracticeRequest, rowsPerSheet } from './practice-steps.ts';
import { pictureOfWord } from '../drawings/picture-words.ts';
import { type RulingCode, rulings } from './ruling-drawings.ts';
import type { Texts } from '../../texts/en.ts';

type Tables = Pick<RuleTable, 'papers' | 'contents'>;

const isRuling = (code: string): code is RulingCode => Object.hasOwn(rulings, code);

/** The ruling of a paper line; null for the therapist's own lines and papers that are not printed. */
function rulingOf(line: ProgramLine, tables: Tables): RulingCode | null {
  const code = line.item?.replace(/^paper-/, '') ?? '';
  const paper = tables.papers.find((p) => p.code === code);
  const ruling = paper?.ruling ?? code;
  return ruling && isRuling(ruling) ? ruling : null;
}

/**
 * Small letters that readers took for another one, most often first: each is practiced three times in a row. Where the
 * program names letters, the page has those: what was read since then comes with the next program.
 */
function lettersToPractice(input: PageInput, atMost: number): string[] {
  const named = programOf(input)?.lines.find(({ item }) => item === 'failing-letters')?.keys?.letters ?? [];
  if (named.length > 0) return named.slice(0, atMost);
  const confusions = legibleOf(input).last?.legibility.confusions ?? [];
  const counts = new Map<string, number>();
  for (const { intended, count } of confusions)
    if (/^\p{Ll}$/u.test(intended)) counts.set(intended, (counts.get(intended) ?? 0) + count);
  return [...counts]
    .sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))
    .slice(0, atMost)
    .map(([letter]) => letter);
}

/** Texts whose first line asks for the client's name: it is known, and nobody copies the words "My name". */
const nameTexts: ReadonlySet<string> = new Set(['name-and-address', 'nombre-y-calle', 'name-und-strasse']);

function ownNameFirst(text: Tables['contents'][number] | undefined, input: PageInput): string[] {
  if (!text) return [];
  const name = input.record.client.name.trim();
  return nameTexts.has(text.code) && name && !input.useCode ? [name, ...text.lines.slice(1)] : text.lines;
}

/** Lines that a sheet to write on rests on. */
const sheetKinds: ReadonlySet<ProgramLine['kind']> = new Set(['writing', 'paper', 'content']);

/** A practice page as the program in force asks for it; every part can be changed before printing. */
export function practiceRequestOf(input: PageInput, tables: Tables, t: Texts): PracticeRequest {
  const program = programOf(input);
  const lines = program?.lines ?? [];
  const { client } = input.record;
  const ruling = lines.map((line) => (line.kind === 'paper' ? rulingOf(line, tables) : null)).find((r) => r !== null);
  // The longest writing task needs the most lines; shorter ones fit on the same sheet.
  const [writing] = lines
    .filter((line) => line.kind === 'writing' && line.dose.lines)
    .sort((a, b) => (b.dose.lines ?? 0) - (a.dose.lines ?? 0));
  const has = (item: string): boolean => lines.some((line) => line.item === item);
  const letters = lettersToPractice(input, 3);
  const contents = lines.flatMap((line) => {
    const text = line.kind === 'content' ? tables.contents.find((c) => `text-${c.code}` === line.item) : undefined;
    return ownNameFirst(text, input);
  });
  // Room for every turn of the day, whichever line of writing it belongs to.
  const turnsOf = ({ dose }: ProgramLine): number => (dose.sets ?? 1) * (dose.timesPerDay ?? 1);
  const turned = lines.filter((line) => line.kind === 'writing' && line.dose.form === 'bouts');
  const bouts = writing ? Math.max(1, ...[turned.reduce((sum, line) => sum + turnsOf(line), 0), turnsOf(writing)]) : 1;
  const linesPerBout = writing?.dose.lines ?? null;
  const rows = letters.map((letter) => `${letter} ${letter} ${letter}`);
  const code = ruling ?? 'dashed-10';
  // On lines the letters share one model row, so that a bout with its models stays on one sheet.
  const letterRows = rulings[code].kind === 'squares' || rows.length === 0 ? rows : [rows.join('   ')];
  const room = Math.floor(rowsPerSheet(input.sheet, code) / bouts) - (linesPerBout ?? 0);
  const most = linesPerBout === null ? 6 : Math.min(6, Math.max(room, letterRows.length + 1));
  const models = [...letterRows, ...contents].slice(0, most);
  const rest = writing?.dose.restMinutes?.least ?? 2;
  const fresh = writing?.dose.how === 'until-fresh';
  return {
    sheet: input.sheet,
    ruling: code,
    letters: 'print',
    models: models.length > 0 ? models : [t.practice.sample],
    linesPerBout,
    bouts,
    restText: fresh ? t.practice.restFresh : t.practice.rest(Math.max(1, Math.round(rest))),
    nextTimeText: t.practice.nextTime,
    bold: client.largePrint === '20' || has('bold-base-line') || has('bold-lines-lamp'),
    startLine: 'none',
    marks: has('short-lines') ? 'stop' : has('start-end-dots') || has('dots-and-targets') ? 'dots' : 'none',
    pictures: null,
    xHeightMm: null,
    title: t.practice.title,
    instruction: t.practice.instruction,
    checkLabels: t.practice.check,
    date: longDate(dayOf(input), input.locale),
    clientCode: client.code,
    lineIds: lines.filter(({ kind }) => sheetKinds.has(kind)).map(({ id }) => id),
  };
}

/** Sheets that single lines of the program speak of, by their item. */
const sheetOfItem: Readonly<Record<string, RulingCode>> = {
  'dot-to-dot': 'dots-30',
  'same-lean': 'lean-10',
  'form-boxes': 'boxes-8',
  'digits-and-money': 'boxes-8',
  'signature-in-place': 'signature',
};

/**
 * Further pages that the program's lines need beside the main one: dots, boxes, pictures, a sheet to lie under.
 * @param figures to write where the program has figures and sums
 * @param onDaily items that have pages for each day
 */
export function furtherPages(
  input: PageInput,
  tables: Tables,
  main: PracticeRequest,
  figures: readonly string[],
  onDaily: ReadonlySet<string> = new Set(),
): PracticeRequest[] {
  const lines = programOf(input)?.lines ?? [];
  const filled = { ...main, linesPerBout: null, bouts: 1, marks: 'none' as const };
  const codes = new Set(
    lines.filter((line) => !onDaily.has(line.item ?? '')).flatMap((line) => sheetOfItem[line.item ?? ''] ?? []),
  );
  const boxed = lines.some((line) => line.item === 'digits-and-money') ? [...figures] : main.models;
  const words = lines.flatMap((line) => {
    const text = tables.contents.find((each) => `text-${each.code}` === line.item);
    return text?.kind === 'pictures' ? text.lines : [];
  });
  const dashed = rulings[main.ruling].kind === 'dashed';
  return [
    ...[...codes]
      .filter((ruling) => ruling !== main.ruling)
      .map((ruling) => ({ ...filled, ruling, models: ruling.startsWith('boxes') ? boxed : main.models })),
    ...(words.length > 0
      ? [
          {
            ...filled,
            ruling: dashed ? main.ruling : ('dashed-10' as const),
            models: words,
            pictures: pictureOfWord,
          },
        ]
      : []),
  ];
}
