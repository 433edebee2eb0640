import type { RuleTable } from '../../db/types/rules.ts';
import type { ProgramLine } from '../../db/types/program.ts';
import { dayOf, legibleOf, longDate, type PageInput, programOf } from './facts.ts';
import type { PracticeRequest } from './practice.ts';
import { type RulingCode, rulings } from './rulings.ts';
import type { Texts } from './texts.ts';

type Tables = Pick<RuleTable, 'papers' | 'contents'>;

const isRuling = (code: string): code is RulingCode => Object.hasOwn(rulings, code);

/** The ruling of a paper line; null for the therapist's own lines and papers that are not printed. */
export function rulingOf(line: ProgramLine, tables: Tables): RulingCode | null {
  const code = line.item?.replace(/^paper-/, '') ?? '';
  const paper = tables.papers.find((p) => p.code === code);
  const ruling = paper?.ruling ?? code;
  return ruling && isRuling(ruling) ? ruling : null;
}

/** Small letters that readers took for another one, most often first: each is practiced three times in a row. */
export function lettersToPractice(input: PageInput, atMost: number): string[] {
  const confusions = legibleOf(input).last?.legibility.confusions ?? [];
  const counts = new Map<string, number>();
  for (const { intended, count } of confusions)
    if (/^\p{Ll}$/u.test(intended)) counts.set(intended, (counts.get(intended) ?? 0) + count);
  return [...counts]
    .sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))
    .slice(0, atMost)
    .map(([letter]) => letter);
}

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
  const letters = lettersToPractice(input, 3);
  const contents = lines.flatMap((line) =>
    line.kind === 'content' ? (tables.contents.find((c) => `text-${c.code}` === line.item)?.lines ?? []) : [],
  );
  const models = [...letters.map((letter) => `${letter} ${letter} ${letter}`), ...contents].slice(0, 6);
  const rest = writing?.dose.restMinutes ?? 2;
  return {
    sheet: input.sheet,
    ruling: ruling ?? 'dashed-10',
    letters: 'print',
    models: models.length > 0 ? models : [t.practice.sample],
    linesPerBout: writing?.dose.lines ?? null,
    bouts: Math.max(1, writing?.dose.sets ?? 1),
    restText: t.practice.rest(Math.max(1, Math.round(rest))),
    bold: client.largePrint === '20',
    startLine: 'none',
    xHeightMm: null,
    title: t.practice.title,
    instruction: t.practice.instruction,
    formId: `${(ruling ?? 'dashed-10').toUpperCase()} ${dayOf(input)}`,
    date: longDate(dayOf(input), input.locale),
    clientCode: client.code,
  };
}
