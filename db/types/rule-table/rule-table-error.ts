import type { RuleProblem } from './rule-checks.ts';

/** The table cannot be used; the message names the place and the reason. */
export class RuleTableError extends Error {
  readonly problems: RuleProblem[];
  constructor(problems: RuleProblem[]) {
    const first = problems[0];
    super(
      first ? `The rule table has an error at ${first.path.join('.')}: ${first.reason}` : 'The rule table is wrong.',
    );
    this.problems = problems;
  }
}
