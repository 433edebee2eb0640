/** Whether drafts say what a worked case says. Shared by the tests and by `npm run mutate`. */
import type { RuleTable } from '../../../../db/types/rules.ts';
import { compose } from '../../../../renderer/logic/program/draft/compose.ts';
import { firedRules } from '../../../../renderer/logic/program/draft/asked-by-rules.ts';
import { dayMinutes } from '../../../../renderer/logic/program/draft/program-line.ts';
import { type CaseFacts, inputOf, type RuleCase } from './rule-case.ts';

/** Sentences on everything wrong; empty = the case holds. */
export function wrongWithCase(id: string, data: RuleCase, rules: RuleTable): string[] {
  const out: string[] = [];
  const say = (holds: boolean, sentence: string): void => {
    if (!holds) out.push(sentence);
  };
  const fires = (facts: CaseFacts): boolean =>
    firedRules(inputOf(facts, rules), rules).some(({ rule }) => rule.id === id);
  const draft = compose(inputOf(data.facts, rules), rules);
  const there = new Set([...draft.lines.map((line) => line.item), ...draft.leftOut.map((each) => each.item)]);
  const chosen = (code: string): boolean => code === 'content' && draft.lines.some((line) => line.kind === 'content');
  say(fires(data.facts), 'the rule does not fire');
  for (const code of data.gives) say(there.has(code) || chosen(code), `${code} is not given`);
  for (const code of data.absent) say(!draft.lines.some((line) => line.item === code), `${code} is given`);
  if (data.says !== undefined) {
    const texts = draft.lines.filter((line) => data.gives.includes(line.item ?? '')).map((line) => line.text);
    say(
      texts.some((text) => text.includes(data.says ?? '')),
      `no line says "${data.says}": ${texts.join(' | ')}`,
    );
  }
  if (data.dose) {
    const { item, minutes, minutesMost, turns, rest, tier } = data.dose;
    const line = draft.lines.find((each) => each.item === item);
    say(line !== undefined, `${item} is not in the day`);
    if (line) {
      const day = dayMinutes(line.dose);
      say(day > 0, `${item} takes no minutes`);
      say(minutes === undefined || day === minutes, `${item} takes ${day} minutes`);
      say(minutesMost === undefined || day <= minutesMost, `${item} takes ${day} minutes`);
      say(turns === undefined || line.dose.sets === turns, `${item} has ${line.dose.sets} turns`);
      say(
        rest === undefined || line.dose.restMinutes?.least === rest,
        `${item} rests ${line.dose.restMinutes?.least} minutes`,
      );
      say(tier === undefined || line.tier === tier, `${item} stands on tier ${line.tier}`);
    }
  }
  const nearly = compose(inputOf(data.near.facts, rules), rules);
  const stays = [...nearly.lines, ...nearly.leftOut].some((line) => data.gives.includes(line.item ?? ''));
  say(data.near.byVeto === true ? !stays : !fires(data.near.facts), `the line stays although ${data.near.changed}`);
  for (const { facts, fires: wanted, why } of data.more ?? []) {
    say(fires(facts) === wanted, `${wanted ? 'silent' : 'fires'}: ${why}`);
  }
  return out;
}
