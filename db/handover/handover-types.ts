/** What travels between two laptops, and what an open caseload offers for it. */
import type { ExportedPicture } from '../types/client-export.ts';
import type { GrownLaptop, HandedEntry } from './handed-entry.ts';
import type { BothChanged } from './merge-facts.ts';

export type { BothChanged };

/** Who does it, and when. */
interface Stamp {
  at: string;
  by: string;
}

/** What a hand-over holds besides the pictures' bytes. */
export interface Handed {
  clientIds: string[];
  entries: HandedEntry[];
  grown: GrownLaptop[];
  pictures: (ExportedPicture & { clientId: string })[];
}

export interface TakenIn {
  /** Entries that were new here. */
  entries: number;
  /** Clients whose code another client has here, with the code they were given instead. */
  recoded: { id: string; code: string }[];
}

/** One client of a hand-over, before anything is taken in. */
export interface Expected {
  id: string;
  code: string;
  name: string;
  state: 'new' | 'known' | 'nothing-new' | 'erased-here';
  /** Changes that are not here yet. */
  changes: number;
  /** Code it will have here, where another client has its own. */
  codeHere: string;
  /** Clients here that may be the same person. */
  twins: { id: string; code: string; name: string }[];
}

export interface HandoverRecords {
  /** Name of this laptop in hand-overs; a new one after a restore. */
  laptop(doing: Stamp): string;
  /** Everything that was ever written about these clients, here or by colleagues. @throws not-found */
  handOver(clientIds: readonly string[], doing: Stamp): Handed;
  /** @throws malformed-request, handover-forked */
  expect(handed: Handed, doing: Stamp): Expected[];
  /** @throws malformed-request, handover-forked, disk-full; nothing is changed then */
  takeIn(handed: Handed, bytesOf: (id: string) => Uint8Array | null, doing: Stamp): TakenIn;
  /** Facts that were changed on two sides and not looked at yet. */
  bothChanged(doing: Stamp): BothChanged[];
  /** Two sides were looked at: the one that stands stays, or the other takes its place. @throws not-found, already-approved */
  settle(id: string, take: 'kept' | 'other', doing: Stamp): void;
  /** Clients that may be one person entered on two laptops: in each pair the one that was taken in comes first. */
  twins(): { id: string; ofId: string }[];
}
