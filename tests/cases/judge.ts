/**
 * Judges a draft against a worked case: what must be on the program, what must not, what has to be said, how long it may
 * take. Selectors: an item code; "kind:writing"; "kind:*"; "timed" (any line with minutes); "drill" (an exercise or
 * warm-up, slow opening excepted); "set:NAME" a set of sets.json.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import type { RuleTable } from '../../db/types/rules.ts';
import { compose } from '../../renderer/logic/program/draft/compose.ts';
import { type Composition } from '../../renderer/logic/program/draft/stopped-draft.ts';
import { dayMinutes } from '../../renderer/logic/program/draft/program-line.ts';
import { readFindings } from '../../renderer/logic/program/facts/read-findings.ts';

const Forbidden = z.union([
  z.string(),
  z.strictObject({ together: z.tuple([z.string(), z.string()]) }),
  z.strictObject({ moreThanOneOf: z.string() }),
]);

export const WorkedCase = z.strictObject({
  name: z.string(),
  /** What a therapist would say about this client. */
  why: z.string(),
  /** FINDINGS.json of the program command. */
  findings: z.unknown(),
  /** A list means any of these. */
  mustInclude: z.array(z.union([z.string(), z.array(z.string())])),
  mustNot: z.array(Forbidden),
  /** With "any" some line or the page says it, with a selector every line of it that is there. */
  mustCaution: z.array(z.strictObject({ on: z.string(), anyOf: z.array(z.string()) })),
  minutesMax: z.number(),
  tierMax: z.number(),
  stop: z.boolean(),
});
export type WorkedCase = z.infer<typeof WorkedCase>;

const json = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));
const { sets, clashes } = z
  .strictObject({ sets: z.record(z.string(), z.array(z.string())), clashes: z.array(Forbidden) })
  .parse(json('sets.json'));

export const workedCases = (name: string): WorkedCase[] => WorkedCase.array().parse(json(name));

type Line = Composition['lines'][number];

function matching(selector: string, lines: readonly Line[]): Line[] {
  if (selector === 'timed') return lines.filter((line) => dayMinutes(line.dose) > 0);
  if (selector === 'kind:*') return [...lines];
  if (selector === 'drill')
    return lines.filter(({ kind, item }) => ['exercise', 'warm-up'].includes(kind) && item !== 'slow-opening');
  if (selector.startsWith('kind:')) return lines.filter((line) => line.kind === selector.slice(5));
  if (!selector.startsWith('set:')) return lines.filter((line) => line.item === selector);
  const codes = sets[selector.slice(4)];
  if (!codes) throw new Error(`There is no set ${selector}`);
  return lines.filter((line) => codes.includes(line.item ?? ''));
}

const names = (lines: readonly Line[]): string => [...new Set(lines.map((line) => line.item))].sort().join(', ');

function breach(rule: z.infer<typeof Forbidden>, lines: readonly Line[]): string | null {
  if (typeof rule === 'string') return matching(rule, lines).length > 0 ? names(matching(rule, lines)) : null;
  if ('together' in rule) {
    const [first, second] = rule.together.map((each) => matching(each, lines)) as [Line[], Line[]];
    return first.length > 0 && second.length > 0 ? `${names(first)} beside ${names(second)}` : null;
  }
  const found = matching(rule.moreThanOneOf, lines);
  return new Set(found.map((line) => line.item)).size > 1 ? names(found) : null;
}

/** Lines that contradict each other on one page: none of them may be drafted, whoever the client is. */
export const clashing = (lines: readonly Line[]): string[] =>
  clashes.map((rule) => breach(rule, lines)).filter((found) => found !== null);

const says = (texts: readonly string[], wanted: readonly string[]): boolean =>
  wanted.some((want) => texts.some((text) => text.toLowerCase().includes(want.replace(/^code:/, '').toLowerCase())));

/** What is wrong with the draft of a case; nothing when it passes. */
export function wrongWith(one: WorkedCase, rules: RuleTable): string[] {
  const read = readFindings(one.findings, rules);
  if (!read.ok) return [read.reason];
  const draft = compose(read.input, rules);
  const { lines } = draft;
  const wrong: string[] = [];
  if (draft.stopped !== one.stop) wrong.push(`stopped is ${draft.stopped}`);
  for (const rule of one.mustNot) {
    const found = breach(rule, lines);
    if (found) wrong.push(`forbidden: ${found}`);
  }
  const timed = matching('timed', lines);
  if (!draft.stopped) {
    wrong.push(...clashing(lines));
    for (const line of timed) if (line.tier > draft.tier + 1) wrong.push(`${line.item} is tier ${line.tier}`);
  }
  const minutes = lines.reduce((sum, line) => sum + dayMinutes(line.dose), 0);
  if (minutes > one.minutesMax) wrong.push(`${minutes} minutes a day`);
  const highest = Math.max(draft.tier, ...timed.map((line) => line.tier));
  if (highest > one.tierMax) wrong.push(`reaches tier ${highest}`);
  for (const want of one.mustInclude)
    if (![want].flat().some((each) => matching(each, lines).length > 0))
      wrong.push(`missing: ${[want].flat().join(' or ')}`);
  for (const { on, anyOf } of one.mustCaution) {
    const texts = [...lines.flatMap((line) => [...line.cautions, line.text]), ...draft.page];
    const silent =
      on === 'any'
        ? !says(texts, anyOf)
        : matching(on, lines).some((line) => !says([...line.cautions, line.text], anyOf));
    if (silent) wrong.push(`${on} does not say ${anyOf.join(' or ')}`);
  }
  return wrong;
}
