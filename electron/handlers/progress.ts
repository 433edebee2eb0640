import { setImmediate } from 'node:timers/promises';
import type { Caseload } from '../../db/index.ts';
import { limitsOf } from '../../renderer/logic/rules/limits.ts';
import type { RepeatPair } from '../../renderer/change/index.ts';
import { repeatPairs } from '../../renderer/logic/record/repeat-pairs.ts';
import type { progressRequests } from '../contract/progress.ts';
import type { Handler } from './handler.ts';
import { currentRules } from './rules.ts';

/** Records read between two pauses, so that the window stays alive with a large caseload. */
const atOnce = 20;

/** The last answer of each open caseload, good until anything is written. */
const known = new WeakMap<Caseload, { seq: number; pairs: RepeatPair[] }>();

export const progressHandlers: { [N in keyof typeof progressRequests]: Handler<N> } = {
  'progress.repeatPairs': async (services) => {
    const caseload = services.need();
    const seq = caseload.lastSeq();
    const before = known.get(caseload);
    if (before?.seq === seq) return { pairs: before.pairs };
    const limits = limitsOf(currentRules(services));
    const pairs: RepeatPair[] = [];
    for (const [i, client] of caseload.clients().entries()) {
      // The caseload may have been locked, or another one opened, while this waited.
      if (i % atOnce === atOnce - 1) await setImmediate();
      if (services.need() !== caseload) return { pairs: [] };
      pairs.push(...repeatPairs(caseload.record(client.id), limits));
    }
    // By size, not by client: the order must not say whose a pair is.
    const share = ({ first }: RepeatPair): number => first.right / first.words;
    pairs.sort((a, b) => share(a) - share(b) || a.second.right - b.second.right);
    known.set(caseload, { seq, pairs });
    return { pairs };
  },
};
