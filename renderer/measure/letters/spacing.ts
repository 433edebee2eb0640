import type { InkMap } from '../pieces/run-map.ts';
import type { Frame } from '../lines/frame.ts';
import { gapChances } from './gap-model.ts';
import type { GapLine } from './gap-model.ts';
import { pageSlant, placeOf } from './gap-places.ts';
import type { Place } from './gap-places.ts';
import type { LineWork } from '../lines/line-work.ts';
import { groupsOf } from './word-groups.ts';
import type { Group, WordWork } from './word-groups.ts';

/** A mark this far from any letter, x-heights, belongs to no word. */
const STRAY = 2.2;
/** Log odds that a point or comma ends a word: it does, but for figures and short forms (common practice, no source). */
const ENDS = 2;
/** Chances of parting words between these are a doubt: of gaps said to be so, one in three turned out the other way. */
const DOUBT = { low: 0.1, high: 0.9 } as const;

/** The spacing of one line: its letters, the gaps between them, and the marks that hang on to them. */
export interface Spacing {
  groups: Group[];
  places: Place[];
  /** Groups that are letters or hold them, from left to right along the slant. */
  letters: number[];
  line: GapLine;
  /** Which of `letters` each mark belongs to (group, place in `letters`); stray ones are in none. */
  owner: Map<number, number>;
}

export interface FoundWords {
  words: WordWork[][];
  spacings: Spacing[];
  /** Log odds by line of each gap between letters for parting words. */
  odds: number[][];
  /** How many gaps are expected to be taken for the wrong kind. */
  expectedWrong: number;
  /** Tangent of the writing's slant. */
  shear: number;
}

/** Words of all lines, by the kinds of gap on the whole page. */
export function wordsOf(lines: readonly LineWork[], map: InkMap, frame: Frame, strokePx: number): FoundWords {
  const shear = Math.tan(pageSlant(lines, map, strokePx));
  const spacings = lines.map((line) => spacingOf(line, map, frame, shear));
  const { chances, odds } = gapChances(spacings.map(({ line }) => line));
  return {
    words: spacings.map((spacing, i) => wordsOfLine(spacing, chances[i]!)),
    spacings,
    odds,
    expectedWrong: chances.flat().reduce((sum, chance) => sum + Math.min(chance, 1 - chance), 0),
    shear,
  };
}

function spacingOf(line: LineWork, map: InkMap, frame: Frame, shear: number): Spacing {
  const groups = groupsOf(line);
  const places = groups.map((group) => placeOf(group, line, map, frame, shear));
  const order = places.map((_, k) => k).sort((a, b) => places[a]!.from - places[b]!.from);
  const letters = order.filter((k) => places[k]!.mark === null);
  const gaps: number[] = [];
  let [right, bodyRight] = [-Infinity, -Infinity];
  letters.forEach((k, i) => {
    const place = places[k]!;
    // Half by all ink, half by the bodies of the letters: a bar or flag reaches over the next letter, a T over its word.
    if (i > 0) gaps.push((place.from - right + place.bodyFrom - bodyRight) / 2);
    right = Math.max(right, place.to);
    bodyRight = Math.max(bodyRight, place.bodyTo);
  });
  const prior = gaps.map(() => 0);
  const owner = new Map<number, number>();
  for (const m of order) {
    const mark = places[m]!;
    if (mark.mark === null) continue;
    const middle = (mark.from + mark.to) / 2;
    let before = -1;
    letters.forEach((k, i) => {
      if ((places[k]!.from + places[k]!.to) / 2 <= middle) before = i;
    });
    const after = before + 1 < letters.length ? before + 1 : -1;
    const toLeft = before < 0 ? Infinity : mark.from - places[letters[before]!]!.to;
    const toRight = after < 0 ? Infinity : places[letters[after]!]!.from - mark.to;
    if (Math.min(toLeft, toRight) > STRAY) continue;
    const isLeft = mark.mark === 'low' ? toLeft <= STRAY : toLeft <= toRight;
    owner.set(m, isLeft ? before : after);
    if (before < 0 || after < 0 || mark.mark === 'high') continue;
    // What stands on or below the line takes up room: the wider part of the gap counts.
    gaps[before] = Math.min(gaps[before]!, Math.max(toLeft, toRight));
    if (mark.mark === 'low' && toLeft < toRight) prior[before] = ENDS;
  }
  return {
    groups,
    places,
    letters,
    owner,
    line: { from: letters.map((k) => places[k]!.from), to: letters.map((k) => places[k]!.to), gaps, prior },
  };
}

/** Words of a line from the chance of each gap to part words. */
function wordsOfLine(spacing: Spacing, chances: readonly number[]): WordWork[] {
  const parts = [0, ...chances.flatMap((chance, k) => (chance >= 0.5 ? [k + 1] : []))];
  const isDoubt = (k: number): boolean => chances[k] !== undefined && chances[k] > DOUBT.low && chances[k] < DOUBT.high;
  return wordsFrom(spacing, parts).map((word, i) => {
    const last = parts[i + 1] ?? spacing.letters.length;
    for (let k = parts[i]! - 1; k < last; k += 1) if (isDoubt(k)) return { ...word, doubt: true };
    return word;
  });
}

/** Words of a line that begin at these places in its letters (ascending, the first is 0), with their marks. */
export function wordsFrom({ groups, letters, owner }: Spacing, starts: readonly number[]): WordWork[] {
  if (letters.length === 0) return [];
  const own = starts.map((start, i) => letters.slice(start, starts[i + 1] ?? letters.length));
  for (const [mark, letter] of owner) {
    let i = starts.length - 1;
    while (starts[i]! > letter) i -= 1;
    own[i]!.push(mark);
  }
  let right: number | null = null;
  return own.map((list) => {
    const inOrder = list.map((k) => groups[k]!).sort((a, b) => a.from - b.from);
    const from = Math.min(...inOrder.map((group) => group.from));
    const to = Math.max(...inOrder.map((group) => group.to));
    const gapBefore = right === null ? null : from - right;
    right = to;
    return { groups: inOrder, from, to, gapBefore };
  });
}
