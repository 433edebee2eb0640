import { RuleTableError, rulesCurrent } from '../../db/rules/index.ts';
import { rulesInUse } from '../../db/rules/in-use.ts';
import type { RulesInUse } from '../../db/types/rules-in-use.ts';
import { rolesToAsk } from '../../db/types/rule-table/clinic-rules-format.ts';
import { ClinicRules } from '../../db/types/rules.ts';
import { programInput } from '../../renderer/logic/program/facts/from-record.ts';
import { plainIssue } from '../../renderer/logic/program/clinic/file-issues.ts';
import { readClinicRules } from '../../renderer/logic/program/clinic/own-rules.ts';
import { tryOnCaseload } from '../../renderer/logic/program/clinic/clinic-trial.ts';
import { Refusal } from '../contract/envelope.ts';
import type { rulesRequests } from '../contract/rules.ts';
import type { Handler } from './handler.ts';
import { changesOf, clinicRules, currentRules, storedRules } from './clinic-rules.ts';
import type { Services } from './services.ts';

const answer = (services: Services) => ({
  rules: currentRules(services),
  changes: changesOf(services),
  asks: rolesToAsk(storedRules(services), rulesCurrent().items),
});

/** In plain words: the place in the merged table says nothing to whoever changed it. */
const refused = (reason: string): Refusal => new Refusal('rule-table-refused', reason.replace(/\.$/, ''));

/** The table with changes that are not stored. @throws Refusal rule-table-refused */
function rulesWith(changes: ClinicRules | null): RulesInUse {
  try {
    return rulesInUse(changes);
  } catch (error) {
    if (error instanceof RuleTableError) throw refused(error.problems[0]?.reason ?? error.message);
    throw error;
  }
}

export const rulesHandlers: { [N in keyof typeof rulesRequests]: Handler<N> } = {
  'rules.current': answer,
  'rules.readFile': (services, { text }) => {
    const read = readClinicRules(text, rulesCurrent(), services.told().ruleFile);
    return read.ok
      ? { changes: read.rules, asks: read.asks, problems: [] }
      : { changes: null, asks: [], problems: read.problems.slice(0, 50) };
  },
  'rules.try': (services, { changes }) => {
    const before = clinicRules(services);
    const after = { ...rulesWith(changes), repeatPairs: before.repeatPairs };
    const records = services
      .need()
      .clients()
      .filter((client) => client.archivedOn === null)
      .map((client) => services.need().record(client.id));
    const inputs = records.map((record) => programInput(record, before));
    const inputsAfter = records.map((record) => programInput(record, after));
    const trial = tryOnCaseload(inputs, before, after, inputsAfter);
    const clients = trial.clients.flatMap((i) => records[i]?.client.code ?? []);
    return { changed: trial.changed, of: trial.of, clients };
  },
  'rules.saveChanges': (services, { changes }) => {
    if (changes === null) services.need().removeSetting('ruleChanges', services.doing());
    else {
      const parsed = ClinicRules.safeParse(changes);
      if (!parsed.success) throw refused(plainIssue(parsed.error.issues[0]!, changes, services.told().ruleFile).reason);
      rulesWith(parsed.data);
      services.need().putSetting('ruleChanges', parsed.data, services.doing());
    }
    return answer(services);
  },
};
