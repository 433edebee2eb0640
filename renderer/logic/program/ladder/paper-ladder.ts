/**
 * The five things that a step may change: cue, pen, paper, content, length. A step changes exactly one of them.
 */
import type { ProgramLine, Tier } from '../../../../db/types/program.ts';
import type { Content, LibraryItem, Paper, RuleTable } from '../../../../db/types/rules.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import { itemFor, refOf } from '../../rules/item-ref.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';

export type Dimension = 'cue' | 'pen' | 'paper' | 'content' | 'length';

interface Step {
  dimension: Dimension;
  /** Plain words: what it is now, what it would be. */
  from: string;
  to: string;
}

/** Items that cue the writer, the first to fade first. */
const cues = ['fill-the-space', 'word-spacer', 'start-end-dots', 'dots-and-targets', 'line-window', 'bold-base-line'];
const grips = ['thick-sleeve', 'smooth-sleeve', 'ribbed-barrel'];
/** The day's main writing, lower tier first. */
const mains = ['own-name-address', 'copy-lines', 'own-lines'];
/** Main writing that has a length and no ladder of content. */
const otherMains = ['other-hand-writing', 'picture-words'];

const lineWith = (lines: readonly ProgramLine[], codes: readonly string[]): ProgramLine | undefined =>
  codes.map((code) => lines.find((line) => line.item === code)).find((line) => line !== undefined);

const paperOf = (lines: readonly ProgramLine[]): ProgramLine | undefined =>
  lines.find((line) => line.kind === 'paper' && line.item !== null);

const mainOf = (lines: readonly ProgramLine[]): ProgramLine | undefined => lineWith(lines, [...mains, ...otherMains]);

/** Where a program stands on each ladder; two programs differ by one step when one entry differs. */
export function standingOf(lines: readonly ProgramLine[]): Record<Dimension, string> {
  const main = mainOf(lines);
  return {
    cue: cues.filter((code) => lines.some((line) => line.item === code)).join('+'),
    pen: [...grips, 'grip-fade'].filter((code) => lines.some((line) => line.item === code)).join('+'),
    paper: paperOf(lines)?.item ?? '',
    content: main?.item ?? '',
    length: main ? `${main.dose.lines ?? ''}/${main.dose.minutes ?? ''}` : '',
  };
}

export interface Move {
  step: Step;
  lines: ProgramLine[];
  /** Tier of the program after it. */
  tier: Tier;
}

const item = (code: string, rules: RuleTable): LibraryItem | undefined =>
  rules.items.find((each) => each.code === code);

/** A line that takes the words of another item and keeps its place and dose. */
const turned = (line: ProgramLine, into: LibraryItem): ProgramLine => ({
  ...line,
  item: into.code,
  kind: into.kind,
  tier: into.tier,
  title: into.title,
  text: into.text,
});

/** Neighbour on the ladder of papers; smaller rows than the client's letters are skipped. */
function nextPaper(code: string, by: 1 | -1, xHeightMm: number | null, rules: RuleTable): Paper | null {
  for (let at = rules.papers.findIndex((each) => each.code === code) + by; ; at += by) {
    const paper = rules.papers[at];
    if (!paper) return null;
    if (by < 0 || paper.xHeightToMm === null || xHeightMm === null || paper.xHeightToMm >= xHeightMm) return paper;
  }
}

function movePaper(
  lines: readonly ProgramLine[],
  by: 1 | -1,
  xHeightMm: number | null,
  tier: Tier,
  rules: RuleTable,
): Move | null {
  const line = paperOf(lines);
  const ref = refOf(line?.item ?? null, rules);
  const to = ref?.kind === 'paper' ? nextPaper(ref.code, by, xHeightMm, rules) : null;
  const into = to ? itemFor({ kind: 'paper', code: to.code }, rules) : undefined;
  if (!line || !into) return null;
  return {
    step: { dimension: 'paper', from: line.title, to: into.title },
    lines: lines.map((each) => (each === line ? turned(each, into) : each)),
    tier,
  };
}

/** A text of another kind in the language of the present one, on its topic where there is one. */
function textLike(lines: readonly ProgramLine[], kind: Content['kind'], rules: RuleTable): Content | undefined {
  const code = lines.map((each) => refOf(each.item, rules)).find((each) => each?.kind === 'content')?.code;
  const now = rules.contents.find((each) => each.code === code);
  const ofKind = rules.contents.filter((each) => each.kind === kind && each.language === (now?.language ?? 'en'));
  return ofKind.find((each) => each.interests.some((topic) => now?.interests.includes(topic))) ?? ofKind[0];
}

/** Content moves with its text: what is copied cannot be one's own. */
function moveContent(lines: readonly ProgramLine[], by: 1 | -1, rules: RuleTable): Move | null {
  const line = mainOf(lines);
  const at = mains.indexOf(line?.item ?? '');
  const to = at < 0 ? undefined : item(mains[at + by] ?? '', rules);
  if (!line || !to) return null;
  const kind = to.tier <= 2 ? 'words' : to.tier === 3 ? 'copy' : 'prompt';
  const like = textLike(lines, kind, rules);
  const text = like && itemFor({ kind: 'content', code: like.code }, rules);
  const swap = (each: ProgramLine): ProgramLine =>
    each === line ? turned(each, to) : text && refOf(each.item, rules)?.kind === 'content' ? turned(each, text) : each;
  return { step: { dimension: 'content', from: line.title, to: to.title }, lines: lines.map(swap), tier: to.tier };
}

/** @param share of the present length: 1.2 = a fifth more, 0.75 = a quarter less */
function moveLength(lines: readonly ProgramLine[], share: number, tier: Tier, said: Told['ladder']): Move | null {
  const line = mainOf(lines);
  if (!line) return null;
  const { dose } = line;
  const scaled = (value: number): number =>
    share > 1 ? Math.max(value, Math.floor(value * share + 1e-9)) : Math.max(1, Math.floor(value * share));
  const minutes = dose.minutes === null ? null : scaled(dose.minutes);
  const count = dose.lines === null ? null : scaled(dose.lines);
  if (minutes === dose.minutes && count === dose.lines) return null;
  const words = (lineCount: number | null, mins: number | null): string =>
    [lineCount === null ? '' : said.lines(lineCount), mins === null ? '' : said.minutes(mins)]
      .filter(Boolean)
      .join(', ');
  const changed = { ...dose, minutes, lines: count, text: '' };
  return {
    step: { dimension: 'length', from: words(dose.lines, dose.minutes), to: words(count, minutes) },
    lines: lines.map((each) => (each === line ? { ...each, dose: changed } : each)),
    tier,
  };
}

function fadeCue(lines: readonly ProgramLine[], tier: Tier, said: Told['ladder']): Move | null {
  const line = lineWith(lines, cues);
  if (!line) return null;
  return {
    step: { dimension: 'cue', from: line.title, to: said.withoutIt },
    lines: lines.filter((each) => each !== line),
    tier,
  };
}

function fadeGrip(lines: readonly ProgramLine[], tier: Tier, rules: RuleTable): Move | null {
  const line = lineWith(lines, grips);
  const fade = item('grip-fade', rules);
  if (!line || !fade || lines.some((each) => each.item === 'grip-fade')) return null;
  return {
    step: { dimension: 'pen', from: line.title, to: fade.title },
    lines: lines.map((each) => (each === line ? turned(each, fade) : each)),
    tier,
  };
}

/** The next step up: cue, then paper, then pen, then content, then length; the first that there is. */
export function stepUp(
  lines: readonly ProgramLine[],
  tier: Tier,
  xHeightMm: number | null,
  rules: RuleTable,
  said: Told['ladder'],
): Move | null {
  const raise = 1 + threshold(rules.thresholds, 'raise-most') / 100;
  return (
    fadeCue(lines, tier, said) ??
    movePaper(lines, 1, xHeightMm, tier, rules) ??
    fadeGrip(lines, tier, rules) ??
    moveContent(lines, 1, rules) ??
    moveLength(lines, raise, tier, said)
  );
}

/** One step back in what changed last; else a shorter length, then the paper before. */
export function stepDown(
  lines: readonly ProgramLine[],
  tier: Tier,
  last: Dimension | null,
  rules: RuleTable,
  said: Told['ladder'],
): Move | null {
  const cut = 1 - threshold(rules.thresholds, 'cut-share') / 100;
  const shorter = (): Move | null => moveLength(lines, cut, tier, said);
  const before = (): Move | null => movePaper(lines, -1, null, tier, rules);
  if (last === 'paper') return before() ?? shorter();
  if (last === 'content') return moveContent(lines, -1, rules) ?? shorter();
  return shorter() ?? before();
}

/** What changed between two programs, or null when it is not exactly one thing. */
export function changedDimension(before: readonly ProgramLine[], after: readonly ProgramLine[]): Dimension | null {
  const [from, to] = [standingOf(before), standingOf(after)];
  const changed = (Object.keys(from) as Dimension[]).filter((each) => from[each] !== to[each]);
  return changed.length === 1 ? (changed[0] ?? null) : null;
}
