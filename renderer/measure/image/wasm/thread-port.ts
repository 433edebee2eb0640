import { instance, stagesModule } from './instance.ts';
import type { Instance, StageName } from './instance.ts';

/**
 * Where one thread lays down orders and the other takes them. What serves it is a few lines of plain JavaScript
 * (electron/files/measure/second-thread-worker.js), which a new thread has at once and in little memory.
 */
export interface Desk {
  module: WebAssembly.Module;
  memory: WebAssembly.Memory;
  /** Stages by number. */
  stages: readonly StageName[];
  /** Number of the last order given, of the last one done, and 1 when the thread is there: at these places. */
  flags: Int32Array;
  places: { given: number; done: number; ready: number };
  /** How often a flag is looked at before falling asleep: the other side mostly comes sooner than a sleeper wakes. */
  looks: number;
  /** An order: which stage, how many arguments, and the arguments. The answer takes the first place. */
  numbers: Float64Array;
}

const [GIVEN, DONE, READY] = [0, 1, 2] as const;
/** The longest order has fourteen arguments. */
const NUMBERS = 16;
const STAGES: readonly StageName[] = [
  'threshold',
  'votes',
  'runs',
  'rims',
  'markBands',
  'eraseBands',
  'halfContrast',
  'gatherPaper',
  'gatherInk',
  'outlines',
];
/** A part of a page takes milliseconds; after this time the thread is gone. */
const LOST_MS = 20_000;
/** About a twentieth of a millisecond. */
const LOOKS = 20_000;

/** The side that gives orders: whoever measures a page. The other side is started with the desk by the shell. */
export class SecondThread {
  readonly desk: Desk;
  /** The stages in this thread, over the memory that both share. */
  readonly own: Instance;

  private constructor(own: Instance, module: WebAssembly.Module) {
    this.own = own;
    this.desk = {
      module,
      memory: own.memory,
      stages: STAGES,
      flags: new Int32Array(new SharedArrayBuffer(16)),
      places: { given: GIVEN, done: DONE, ready: READY },
      looks: LOOKS,
      numbers: new Float64Array(new SharedArrayBuffer(8 * NUMBERS)),
    };
  }

  /** Null where the stages cannot run. */
  static create(): SecondThread | null {
    const own = instance();
    const module = stagesModule();
    return own && module ? new SecondThread(own, module) : null;
  }

  /** Whether it sits at its desk already: a page that comes earlier is measured without it. */
  get isReady(): boolean {
    return Atomics.load(this.desk.flags, READY) === 1;
  }

  /** Starts a stage over there. */
  begin(stage: StageName, args: readonly number[]): void {
    const { flags, numbers, stages } = this.desk;
    numbers[0] = stages.indexOf(stage);
    numbers[1] = args.length;
    numbers.set(args, 2);
    Atomics.add(flags, GIVEN, 1);
    Atomics.notify(flags, GIVEN);
  }

  /** Waits for what was begun. @returns what the stage answers @throws Error when the thread is lost */
  end(): number {
    const { flags, numbers } = this.desk;
    const before = Atomics.load(flags, GIVEN) - 1;
    for (let look = 0; look < LOOKS && Atomics.load(flags, DONE) === before; look += 1);
    // A wake-up of the order before may come late: nothing is done by it.
    while (Atomics.load(flags, DONE) === before)
      if (Atomics.wait(flags, DONE, before, LOST_MS) === 'timed-out') {
        Atomics.store(flags, READY, 0);
        throw new Error('the second thread of the page was lost');
      }
    return numbers[0]!;
  }
}
