import type { Goal, GoalRating } from '../../../db/types/goal.ts';
import type { Visit } from '../../../db/types/visit.ts';
import { gasTScore } from '../../statistics/gas-t-score.ts';

interface RatedGoal {
  goalId: string;
  level: GoalRating['level'];
  weight: number;
}

/** The goals as they stood after one visit. */
export interface Attainment {
  visitId: string;
  day: string;
  /** Levels in the order of the goals: shown beside the score, because levels are ranks. */
  levels: RatedGoal[];
  /** 50 = all as expected. */
  t: number;
}

/**
 * T-score after each visit at which a goal was rated; a goal not rated that day keeps its last level.
 * A revised or dropped goal counts up to its last rating before the goal that replaced it was set.
 */
export function attainment(
  goals: readonly Goal[],
  ratings: readonly GoalRating[],
  visits: readonly Visit[],
): Attainment[] {
  const dayOf = new Map(visits.map((visit) => [visit.id, visit.date]));
  const replacedOn = new Map(goals.flatMap((goal) => (goal.replaces ? [[goal.replaces, goal.setOn] as const] : [])));
  const dated = ratings
    .flatMap((rating) => {
      const day = dayOf.get(rating.visitId);
      return day ? [{ ...rating, day }] : [];
    })
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.at < b.at ? -1 : 1));
  const rounds: Attainment[] = [];
  const stand = new Map<string, RatedGoal>();
  for (const [i, rating] of dated.entries()) {
    const goal = goals.find((one) => one.id === rating.goalId);
    if (!goal) continue;
    stand.set(goal.id, { goalId: goal.id, level: rating.level, weight: goal.weight });
    if (dated[i + 1]?.visitId === rating.visitId) continue;
    const levels = goals.flatMap((one) => {
      const end = replacedOn.get(one.id);
      const rated = stand.get(one.id);
      return rated && !(end !== undefined && rating.day >= end) && one.status !== 'dropped' ? [rated] : [];
    });
    const t = gasTScore(levels);
    if (t !== null) rounds.push({ visitId: rating.visitId, day: rating.day, levels, t });
  }
  return rounds;
}

/** The chain of a goal and those it replaced, newest first. */
export function goalHistory(goal: Goal, goals: readonly Goal[]): Goal[] {
  const chain = [goal];
  const seen = new Set([goal.id]);
  let before = goals.find((one) => one.id === goal.replaces);
  while (before && !seen.has(before.id)) {
    chain.push(before);
    seen.add(before.id);
    const id: string | null = before.replaces;
    before = goals.find((one) => one.id === id);
  }
  return chain;
}
