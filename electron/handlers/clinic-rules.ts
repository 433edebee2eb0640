/** The rules in use, and what the whole clinic knows of unchanged hands: for every verdict, flag, proposal and export. */
import { setImmediate } from 'node:timers/promises';
import { isUnreadable, type Caseload } from '../../db/index.ts';
import { rulesInUse } from '../../db/rules/in-use.ts';
import type { RulesInUse } from '../../db/types/rules-in-use.ts';
import { upgradedClinicRules } from '../../db/types/rule-table/clinic-rules-format.ts';
import type { ClientRecord } from '../../db/types/record.ts';
import type { ClinicRules } from '../../db/types/rules.ts';
import { limitsOf, type Limits } from '../../renderer/logic/rules/limits.ts';
import type { RepeatPair } from '../../renderer/change/index.ts';
import { repeatPairs } from '../../renderer/logic/record/repeat-pairs.ts';
import { Refusal } from '../contract/envelope.ts';
import type { progressRequests } from '../contract/progress.ts';
import type { Handler } from './handler.ts';
import type { Services } from './services.ts';

/** The clinic's own rules as they are stored, whatever the format of their day; null = none. */
export const storedRules = (services: Services): unknown => services.need().setting('ruleChanges') ?? null;

/** The clinic's own rules, in the format of today whenever they were stored. */
export const changesOf = (services: Services): ClinicRules | null =>
  upgradedClinicRules(storedRules(services)) as ClinicRules | null;

/** The rules in use. */
export const currentRules = (services: Services): RulesInUse => rulesInUse(changesOf(services));

/** Records read between two pauses, so that the window stays alive with a large caseload. */
const AT_ONCE = 10;

/**
 * Between two records of many: a pause now and then.
 * @param read how many were read
 * @throws Refusal locked, when the caseload was locked or another one opened meanwhile
 */
export async function readOn(services: Services, caseload: Caseload, read: number): Promise<void> {
  if (read % AT_ONCE === 0) await setImmediate();
  if (services.need() !== caseload) throw new Refusal('locked');
}

/** What was found at the last look: gone with the caseload when it is locked. */
interface Look {
  seq: number;
  repeatDays: number;
  /** The same array as long as no pair has changed. */
  pairs: RepeatPair[];
  /** Of each client, good until anything of the client changes. */
  clients: Map<string, { change: number; pairs: RepeatPair[] }>;
}
const looks = new WeakMap<Caseload, Look>();
/** `seq` before the first look at a caseload. */
const NO_LOOK = -1;
const NO_PAIRS: RepeatPair[] = [];

function pairsOf(caseload: Caseload, clientId: string, limits: Limits): RepeatPair[] {
  try {
    return repeatPairs(caseload.record(clientId), limits);
  } catch (error) {
    if (isUnreadable(error)) return [];
    throw error;
  }
}

/** Reads the records that have changed; stops after each for whoever wants to pause. */
function* look(caseload: Caseload, limits: Limits): Generator<undefined, RepeatPair[]> {
  const { repeatDays } = limits;
  const before = looks.get(caseload);
  const seq = caseload.lastSeq();
  const current = before?.repeatDays === repeatDays ? before : undefined;
  if (current?.seq === seq) return current.pairs;
  const clients: Look['clients'] = new Map();
  for (const { id } of caseload.clients()) {
    const change = caseload.lastChange(id);
    const known = current?.clients.get(id);
    if (known?.change === change) clients.set(id, known);
    else {
      clients.set(id, { change, pairs: pairsOf(caseload, id, limits) });
      yield;
    }
  }
  const found = [...clients.values()].flatMap(({ pairs }) => pairs);
  // By size, not by client: the order must not say whose a pair is.
  const share = ({ first }: RepeatPair): number => first.right / first.words;
  found.sort((a, b) => share(a) - share(b) || a.second.right - b.second.right);
  const pairs = current && JSON.stringify(current.pairs) === JSON.stringify(found) ? current.pairs : found;
  looks.set(caseload, { seq, repeatDays, pairs, clients });
  return pairs;
}

/** Keeps the pairs of a record that was read for something else, so that a look need not read it again. */
export function meetPairs(caseload: Caseload, record: ClientRecord, limits: Limits): void {
  const { repeatDays } = limits;
  const before = looks.get(caseload);
  const known =
    before?.repeatDays === repeatDays ? before : { seq: NO_LOOK, repeatDays, pairs: NO_PAIRS, clients: new Map() };
  looks.set(caseload, known);
  const { id } = record.client;
  known.clients.set(id, { change: caseload.lastChange(id), pairs: repeatPairs(record, limits) });
}

/** The rules in use with the pairs of the last look, for whoever cannot wait for a new one. */
export function clinicRulesKnown(services: Services): RulesInUse {
  const rules = currentRules(services);
  return { ...rules, repeatPairs: looks.get(services.need())?.pairs ?? NO_PAIRS };
}

/** The rules in use with the clinic's repeat pairs: for whoever asks whether something has changed. */
export function clinicRules(services: Services): RulesInUse {
  const rules = currentRules(services);
  const looking = look(services.need(), limitsOf(rules));
  let step = looking.next();
  while (!step.done) step = looking.next();
  return { ...rules, repeatPairs: step.value };
}

/** The same with pauses, where many records may have to be read. @throws Refusal locked */
export async function clinicRulesSoon(services: Services): Promise<RulesInUse> {
  const rules = currentRules(services);
  const caseload = services.need();
  const looking = look(caseload, limitsOf(rules));
  let step = looking.next();
  for (let read = 1; !step.done; read++) {
    await readOn(services, caseload, read);
    step = looking.next();
  }
  return { ...rules, repeatPairs: step.value };
}

export const progressHandlers: { [N in keyof typeof progressRequests]: Handler<N> } = {
  'progress.repeatPairs': async (services) => ({ pairs: [...((await clinicRulesSoon(services)).repeatPairs ?? [])] }),
};
