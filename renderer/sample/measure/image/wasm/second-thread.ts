import { instance } from './instance.ts';
import type { Instance, StageName } from './instance.ts';

/** What the second thread is given: the memory of the stages, and a desk over which it takes orders. */
export interface Desk {
  memory: WebAssembly.Memory;
  order: SharedArrayBuffer;
}

/** Flags of the desk: number of the last order given, of the last one done, and whether the thread is there. */
const [GIVEN, DONE, READY] = [0, 1, 2] as const;
const FLAG_BYTES = 16;
/** Then numbers: which stage, how many arguments, and the arguments; the answer takes the first place. */
const NUMBERS = 32;
/** Stages by number. */
const STAGES: readonly StageName[] = [
  'threshold',
  'votesAcross',
  'votesDown',
  'runs',
  'rims',
  'markBands',
  'eraseBands',
  'halfContrast',
  'seam',
  'gatherPaper',
  'gatherInk',
  'luma',
];
/** A part of a page takes milliseconds; after this time the thread is gone. */
const LOST_MS = 20_000;
/** Looks at a flag before falling asleep: the next order mostly comes sooner than a sleeping thread wakes. */
const LOOKS = 20_000;

/** A desk as its two sides see it. */
class Sides {
  readonly flags: Int32Array;
  readonly numbers: Float64Array;
  constructor(order: SharedArrayBuffer) {
    this.flags = new Int32Array(order, 0, FLAG_BYTES / 4);
    this.numbers = new Float64Array(order, FLAG_BYTES, NUMBERS);
  }

  /** Waits while a flag has this value. @returns false when it still has it after the time given, ms */
  changes(flag: number, from: number, timeoutMs = Infinity): boolean {
    for (let i = 0; i < LOOKS; i += 1) if (Atomics.load(this.flags, flag) !== from) return true;
    return Atomics.wait(this.flags, flag, from, timeoutMs) !== 'timed-out';
  }

  set(flag: number, value: number): void {
    Atomics.store(this.flags, flag, value);
    Atomics.notify(this.flags, flag);
  }
}

/** The side that gives orders: whoever measures a page. The other side is started with the desk by the shell. */
export class SecondThread {
  readonly desk: Desk;
  readonly own: Instance;
  private readonly sides: Sides;

  private constructor(own: Instance) {
    this.own = own;
    this.desk = { memory: own.memory, order: new SharedArrayBuffer(FLAG_BYTES + 8 * NUMBERS) };
    this.sides = new Sides(this.desk.order);
  }

  /** Null where the stages cannot run. */
  static create(): SecondThread | null {
    const own = instance();
    return own ? new SecondThread(own) : null;
  }

  /** Whether it sits at its desk already: a page that comes earlier is measured without it. */
  get isReady(): boolean {
    return Atomics.load(this.sides.flags, READY) === 1;
  }

  /** Starts a stage over there. */
  begin(stage: StageName, args: readonly number[]): void {
    const { flags, numbers } = this.sides;
    numbers[0] = STAGES.indexOf(stage);
    numbers[1] = args.length;
    numbers.set(args, 2);
    this.sides.set(GIVEN, Atomics.load(flags, GIVEN) + 1);
  }

  /** Waits for what was begun. @returns what the stage answers @throws Error when the thread is lost */
  end(): number {
    const { flags, numbers } = this.sides;
    const given = Atomics.load(flags, GIVEN);
    if (Atomics.load(flags, DONE) !== given && !this.sides.changes(DONE, given - 1, LOST_MS)) {
      Atomics.store(flags, READY, 0);
      throw new Error('the second thread of the page was lost');
    }
    return numbers[0]!;
  }
}

/** The other side: does one order after the other until its thread is ended from outside. */
export function serveSecondThread({ memory, order }: Desk): void {
  const own = instance(memory);
  if (!own) return;
  const sides = new Sides(order);
  sides.set(READY, 1);
  for (let done = 0; ; done += 1) {
    sides.changes(GIVEN, done);
    const [stage, count] = [sides.numbers[0]!, sides.numbers[1]!];
    const run = own.exports[STAGES[stage]!] as (...args: number[]) => number | undefined;
    sides.numbers[0] = run(...sides.numbers.subarray(2, 2 + count)) ?? 0;
    sides.set(DONE, done + 1);
  }
}
