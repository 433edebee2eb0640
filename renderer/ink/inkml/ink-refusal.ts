/** Sentences for ink files that are not read: what happened, what is safe, what to do. */
export const INK_REFUSALS = {
  dtd: 'This ink file declares a document type or entities of its own, which could hide other content. Nothing was kept. Export the ink again without them.',
  'not-well-formed': 'This ink file is damaged: it is not whole XML. Nothing was kept. Copy or export it again.',
  'other-root':
    'This file is XML, but not InkML: its outermost element is not "ink". Nothing was kept. Choose an InkML file.',
  'no-position':
    'The samples of this ink file have no X or no Y. Nothing was kept. Export the ink again with positions.',
  'column-count':
    'A sample in this ink file has more or fewer values than its format says. Nothing was kept. Export the ink again.',
  'not-a-number': 'A value in this ink file is not a finite number. Nothing was kept. Export the ink again.',
  'value-too-large':
    'A value in this ink file is larger than 10 million, which no pen writes. Nothing was kept. Export the ink again.',
  'file-too-large': 'This ink file is larger than 32 MB. Nothing was kept. Export shorter stretches of writing.',
  'too-many-samples':
    'This ink file has more than 2,000,000 samples. Nothing was kept. Export shorter stretches of writing.',
  'too-many-traces':
    'This ink file has more than 20,000 traces. Nothing was kept. Export shorter stretches of writing.',
  'too-deep': 'The elements of this ink file lie more than 32 levels deep. Nothing was kept. Export the ink again.',
} as const;

export type InkRefusalCode = keyof typeof INK_REFUSALS;

/** An ink file that is refused whole. */
export class InkRefusal extends Error {
  readonly code: InkRefusalCode;
  constructor(code: InkRefusalCode) {
    super(INK_REFUSALS[code]);
    this.name = 'InkRefusal';
    this.code = code;
  }
}

/** What is read at most. */
export const INK_LIMITS = { bytes: 32 * 1024 * 1024, samples: 2_000_000, traces: 20_000, depth: 32, value: 1e7 };
