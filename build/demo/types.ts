import type { Client } from '../../db/types/client.ts';
import type { Grade, Side } from '../../db/types/common.ts';
import type { OwnWord, WritingOccasion } from '../../db/types/occasions.ts';
import type { Conditions, TaskKind } from '../../db/types/sample.ts';

/** How a client's hand writes at one visit; sizes in mm, angles in degrees. */
export interface DemoHand {
  /** Handwriting font by npm name, open license. */
  font: string;
  xHeightMm: number;
  /** ln of size change per word: negative shrinks. */
  decrement?: number;
  tremor?: { amplitudeMm: number; perMm: number };
  overshootMm?: number;
  /** Word gap over letter height. */
  wordGap?: number;
  /** Extra letter gap over letter height, negative crowds. */
  letterGap?: number;
  tiltDeg?: number;
  slantDeg?: number;
  openLoops?: number;
  ink?: 'blue' | 'black' | 'pencil';
  paper?: 'plain' | 'ruled' | 'dashed';
}

export interface DemoAnswer {
  item: string;
  side?: Side;
  grade: Grade | null;
  detail?: string;
  before?: number;
  after?: number;
  note?: string;
  /** Why it was not tested, when grade is null. */
  notTested?: string;
}

export interface DemoSample {
  task: TaskKind;
  textCodes: string[];
  hand: DemoHand;
  /** Share of words a reader gets right. */
  legibility: number;
  fatigue: [number, number];
  pain?: [number, number];
  seconds: number;
  conditions?: Partial<Conditions>;
  baseline?: boolean;
  /** Ruler readings, as Sample.typed. */
  typed?: Record<string, number[]>;
  /** 'second': another reader who does not know the client. */
  readers?: ('unfamiliar' | 'second' | 'family')[];
}

export interface DemoVisit {
  /** Also a sample with a pen in the window. */
  ink?: { shrinkPerStroke: number; rhythmToo: boolean };
  /** Days before the day the demo was made. */
  daysAgo: number;
  hour: string;
  kind: 'first' | 'treatment' | 'retest' | 'discharge';
  minutes: number;
  told?: string;
  skilled?: string;
  response?: string;
  taughtBack?: string;
  plan?: string;
  nextVisit?: string;
  /** Day and hour agreed for the next visit, days after the demo was made. */
  next?: { inDays: number; hour: string; retest?: TaskKind; questions?: string };
  /** The note of this visit is not written yet. */
  noteOpen?: true;
  samples: DemoSample[];
  answers?: DemoAnswer[];
  /**
   * Approves a home program at this visit: 'draft' from the findings, 'next' from the last program with the step that
   * the app proposes, and with what the therapist adds and takes out.
   */
  program?: 'draft' | 'next';
  adds?: string[];
  drops?: string[];
  goalLevel?: -2 | -1 | 0 | 1 | 2;
}

/** What a payer and a record ask about the course; days before the demo was made (negative: ahead). */
export interface DemoCare {
  payer: string;
  authorizedVisits: number | null;
  reportEveryVisits: number | null;
  reportEveryDays: number | null;
  certifiedDaysAhead: number | null;
  priorLevel: string;
  potential: string;
  outsideTests?: { name: string; score: string; daysAgo: number }[];
  missed?: { daysAgo: number; reason: string }[];
}

export type DemoOccasion = Pick<WritingOccasion, 'code' | 'topics' | 'often' | 'example'> & {
  words: [OwnWord['kind'], string][];
};

export interface DemoClient {
  client: Partial<Client> & { name: string; code: string };
  care?: DemoCare;
  /** What the client wants to write, as the record keeps it. */
  occasions: DemoOccasion[];
  /** Red flags present; every other question is answered no. */
  flags: { code: string; note: string }[];
  setup?: {
    popliteal: number;
    elbow: number;
    shoe: number;
    table: number;
    tableThickness: number;
    thigh: number;
    purpose: 'writing' | 'support' | 'shoulder-pain';
  };
  visits: DemoVisit[];
  goal?: {
    output: string;
    paper: string;
    aid: string;
    words: number;
    percent: number;
    because: string;
    /** One whole-number variable, as the goal screen builds its levels. */
    levels: { unit: string; max: number; baseline: number; expected: number };
    nextStep: string;
    baseline: string;
  };
  /** Practice days a week between first program and today, minutes each. */
  practice?: { daysAWeek: number; minutes: number; lines: number };
}
