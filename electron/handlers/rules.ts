import { RuleTableError } from '../../db/rules/index.ts';
import { rulesInUse } from '../../db/rules/in-use.ts';
import type { RulesInUse } from '../../db/types/rules-in-use.ts';
import { ClinicRules } from '../../db/types/rules.ts';
import { Refusal } from '../contract/envelope.ts';
import type { rulesRequests } from '../contract/rules.ts';
import type { Handler } from './dispatch.ts';
import type { Services } from './services.ts';

const changesOf = (services: Services): ClinicRules | null =>
  (services.need().setting('ruleChanges') as ClinicRules | null) ?? null;

/** The rules in use. */
export const currentRules = (services: Services): RulesInUse => rulesInUse(changesOf(services));

const answer = (services: Services) => ({ rules: currentRules(services), changes: changesOf(services) });

export const rulesHandlers: { [N in keyof typeof rulesRequests]: Handler<N> } = {
  'rules.current': answer,
  'rules.saveChanges': (services, { changes }) => {
    if (changes === null) services.need().removeSetting('ruleChanges', services.doing());
    else {
      const parsed = ClinicRules.safeParse(changes);
      const issue = parsed.error?.issues[0];
      if (!parsed.success)
        throw new Refusal(
          'rule-table-refused',
          `${issue?.path.join('.') || 'the file'}: ${issue?.message ?? 'wrong shape'}`,
        );
      try {
        rulesInUse(parsed.data);
      } catch (error) {
        if (error instanceof RuleTableError) throw new Refusal('rule-table-refused', error.message);
        throw error;
      }
      services.need().putSetting('ruleChanges', parsed.data, services.doing());
    }
    return answer(services);
  },
};
