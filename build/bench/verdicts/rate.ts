/** One error rate: what was counted among how many simulated clients, and the bound it must keep. */
export interface Rate {
  setting: string;
  what: string;
  /** Share of clients, 0 to 1. */
  rate: number;
  clients: number;
  /** `most`: the rate may not be larger than `bound`; `least`: not smaller; `told`: no bound. */
  side: 'most' | 'least' | 'told';
  bound: number;
}

/** A setting to be simulated by itself, with a random stream of its own. */
export interface Setting {
  name: string;
  run: (clients: number, seed: number) => Rate[];
}

/** By how many standard errors a rate may miss its bound: 1 in 200 of rates that lie on it. */
export const STANDARD_ERRORS = 2.6;

/** Whether the bound is kept, chance of the simulation allowed for. */
export function keepsBound({ rate, clients, side, bound }: Rate): boolean {
  const room = STANDARD_ERRORS * Math.sqrt((bound * (1 - bound)) / clients);
  if (side === 'most') return rate <= bound + room;
  return side === 'told' || rate >= bound - room;
}

/** Counts what happened to how many. */
export class Counter {
  private readonly hits = new Map<string, number>();
  count(what: string, happened: boolean): void {
    this.hits.set(what, (this.hits.get(what) ?? 0) + (happened ? 1 : 0));
  }
  rate(setting: string, what: string, clients: number, side: Rate['side'], bound: number): Rate {
    return { setting, what, rate: (this.hits.get(what) ?? 0) / clients, clients, side, bound };
  }
}
