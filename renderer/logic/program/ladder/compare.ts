/** What changed between two programs, line by line, and why. */
import type { ProgramLine } from '../../../../db/types/program.ts';
import type { RuleTable } from '../../../../db/types/rules.ts';
import { doseWords } from '../../texts/dose-words.ts';
import type { Texts } from '../../texts/en.ts';
import { refOf } from '../../rules/item-ref.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';

export interface LineChange {
  kind: 'added' | 'removed' | 'changed';
  title: string;
  /** Plain words: what differs, or why it came or may have gone. */
  what: string;
}

const key = (line: ProgramLine): string => line.item ?? line.id;

function differences(before: ProgramLine, after: ProgramLine, words: Told['ladder'], doses: Texts['dose']): string[] {
  const out: string[] = [];
  const [was, now] = [before.dose, after.dose].map((dose) => doseWords(dose, doses));
  if (was !== now) out.push(words.dose(was!, now!));
  if (before.text !== after.text) out.push(words.textChanged);
  if (before.title !== after.title) out.push(words.titleWas(before.title));
  if (before.cautions.join() !== after.cautions.join()) out.push(words.cautionsChanged);
  if ((before.override === null) !== (after.override === null)) {
    out.push(after.override ? words.keptAgainst : words.reasonGone);
  }
  return out;
}

/** Papers and texts replace each other: they are compared as one place. */
const placeIn =
  (rules: Pick<RuleTable, 'items'>) =>
  (line: ProgramLine): string =>
    line.kind === 'paper' ? 'paper' : refOf(line.item, rules)?.kind === 'content' ? 'text' : key(line);

/** Changes in the order of the new program, then what was taken out. */
export function comparePrograms(
  before: readonly ProgramLine[],
  after: readonly ProgramLine[],
  rules: Pick<RuleTable, 'items'>,
  words: Told['ladder'],
  doses: Texts['dose'],
): LineChange[] {
  const place = placeIn(rules);
  const old = new Map(before.map((line) => [place(line), line]));
  const kept = new Set(after.map(place));
  const changes = after.flatMap((line): LineChange[] => {
    const was = old.get(place(line));
    if (!was) return [{ kind: 'added', title: line.title, what: line.because }];
    if (key(was) !== key(line)) return [{ kind: 'changed', title: line.title, what: words.insteadOf(was.title) }];
    const what = differences(was, line, words, doses);
    return what.length === 0 ? [] : [{ kind: 'changed', title: line.title, what: what.join('; ') }];
  });
  const gone = before
    .filter((line) => !kept.has(place(line)))
    .map((line): LineChange => ({
      kind: 'removed',
      title: line.title,
      what: line.until === '' ? line.because : line.until,
    }));
  return [...changes, ...gone];
}
