/** One entry of a trail as it travels to a colleague, and the order in which entries came about. No SQL, no clock. */
import { z } from 'zod';

const Hex = z.string().regex(/^[0-9a-f]{64}$/);
const Stored = z.string().max(8_000_000).nullable();

export const HandedEntry = z.object({
  hash: Hex,
  /** The laptop in whose trail it stands, and its number there. */
  laptop: z.uuid(),
  seq: z.number().int().positive(),
  at: z.iso.datetime({ offset: true }),
  by: z.string().min(1).max(8),
  client_id: z.uuid(),
  kind: z.string().max(40),
  fact_id: z.uuid(),
  action: z.enum(['create', 'update', 'remove', 'undo', 'redo', 'import', 'set']),
  step: z.string().max(60),
  reverses: z.string().max(60).nullable(),
  digest: Hex,
  prev_hash: z.union([Hex, z.literal('')]),
  salt: z.string().max(64),
  /** The fact before and after as JSON text; null = absent. */
  before: Stored,
  after: Stored,
});
export type HandedEntry = z.infer<typeof HandedEntry>;

/** A restored caseload goes on under a new name: up to which entry it is the same trail as the one it grew from. */
export const GrownLaptop = z.object({ laptop: z.uuid(), grew_from: z.uuid(), up_to: z.number().int().min(0) });
export type GrownLaptop = z.infer<typeof GrownLaptop>;

/** In `reverses` of entries that only carry out a merge: nobody decided anything by them. */
export const CARRIED_OUT = 'handover';
/** Kind of the notes that a hand-over was taken in, and that a fact changed on both sides was looked at. */
export const NOTE = 'handover';

/** Highest number that had been seen of each laptop. */
type Seen = ReadonlyMap<string, number>;

const Note = z.object({
  seen: z.record(z.string(), z.number()).optional(),
  settled: z.array(z.string()).optional(),
});

/** What a note says; nothing for text that is no note. */
export function readNote(entry: Pick<HandedEntry, 'after'>): z.infer<typeof Note> {
  try {
    return Note.parse(JSON.parse(entry.after ?? '{}'));
  } catch {
    return {};
  }
}

type Place = Pick<HandedEntry, 'laptop' | 'seq'>;

/** Whether `later` was written by somebody whose laptop had `earlier` at that moment. Clocks play no part. */
export type CameAfter = (later: Place, earlier: Place) => boolean;

/** The order of entries, from the notes of what each laptop had taken in, and when. */
export function orderOf(entries: readonly HandedEntry[], grown: readonly GrownLaptop[]): CameAfter {
  const notes = new Map<string, HandedEntry[]>();
  for (const entry of entries) {
    if (entry.kind !== NOTE || entry.action !== 'import') continue;
    const list = notes.get(entry.laptop);
    if (list) list.push(entry);
    else notes.set(entry.laptop, [entry]);
  }
  for (const list of notes.values()) list.sort((a, b) => a.seq - b.seq);
  const origins = new Map(grown.map((each) => [each.laptop, each]));
  const steps = new Map<string, { seq: number; seen: Seen }[]>();

  const raise = (into: Map<string, number>, laptop: string, seq: number): void => {
    if ((into.get(laptop) ?? 0) < seq) into.set(laptop, seq);
  };
  /** What a laptop had seen, from each of its notes on. `depth` ends where a hostile file makes laptops grow in a ring. */
  const stepsOf = (laptop: string, depth: number): { seq: number; seen: Seen }[] => {
    const known = steps.get(laptop);
    if (known || depth > 20) return known ?? [];
    let seen = new Map<string, number>();
    const list: { seq: number; seen: Seen }[] = [];
    const origin = origins.get(laptop);
    if (origin) {
      raise(seen, origin.grew_from, origin.up_to);
      for (const step of stepsOf(origin.grew_from, depth + 1)) {
        if (step.seq <= origin.up_to) for (const [other, seq] of step.seen) raise(seen, other, seq);
      }
      list.push({ seq: 0, seen });
    }
    for (const note of notes.get(laptop) ?? []) {
      seen = new Map(seen);
      for (const [other, seq] of Object.entries(readNote(note).seen ?? {})) raise(seen, other, seq);
      list.push({ seq: note.seq, seen });
    }
    steps.set(laptop, list);
    return list;
  };
  return (later, earlier) => {
    if (later.laptop === earlier.laptop) return later.seq > earlier.seq;
    const before = stepsOf(later.laptop, 0).findLast((step) => step.seq < later.seq);
    return (before?.seen.get(earlier.laptop) ?? 0) >= earlier.seq;
  };
}
