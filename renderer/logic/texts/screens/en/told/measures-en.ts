import { MEASURES } from '../../../../../measure/index.ts';

/** Measures of a page: names, values with their units, ranges, and how they were read. */
export const measuresEn = {
  /** The engine's own, by code. */
  names: Object.fromEntries(MEASURES.map(({ code, name }) => [code, name])),
  hows: Object.fromEntries(MEASURES.map(({ code, how }) => [code, how])),
  otherNames: {
    'x-height-before': 'Height of small letters before',
    'x-height-goal': 'Height of small letters aimed at',
    'word-gap-mm': 'Gaps between words',
    'letter-gap-mm': 'Gaps between letters',
    'baseline-end-offset-mm': 'Rise of each line over its length',
  },
  ruled: {
    'x-height': ['Height of small letters (a c e m n o …), mm', 'at least 10 letters, in the order written'],
    'word-gap-mm': ['Gaps between words, mm', 'at least 5 gaps'],
    'letter-gap-mm': ['Gaps between letters, mm', 'at least 10 gaps; overlap is negative'],
    'baseline-end-offset-mm': ['Rise of each line over its length, mm', 'one a line; falling is negative'],
  },
  unknown: 'unknown',
  letterHeights: (value: string) => `${value} × letter height`,
  ways: { smaller: 'smaller', larger: 'larger', left: 'to the left', right: 'to the right' },
  per: { word: 'each word', letter: 'each letter', line: 'each line' },
  noChange: (each: string) => `no change ${each}`,
  changeOf: (amount: string, way: string) => `${amount} ${way}`,
  change: (change: string, each: string) => `${change} ${each}`,
  onThisPage: (change: string) => `${change}, on this page`,
  range: (low: string, high: string) => `${low} to ${high}`,
  ranges:
    'This page: how exactly this page was read (95 %). This hand: where 95 of 100 pages of an unchanged hand would lie. Less than that apart is no change.',
  readings: (n: number) => (n === 1 ? 'From 1 reading.' : `From ${n} readings.`),
  pageRange: (range: string) => `This page (95 %): ${range}.`,
  handRange: (range: string) => `This hand, page to page: ${range}.`,
  handFromPages: (pages: number) =>
    `This hand: from ${pages} pages repeated on one day, and from what ordinary writers vary.`,
  handFromWriters:
    'This hand: from what ordinary writers vary from page to page (two writers); repeat a page on one day to learn what this client varies.',
  method: (version: string, how: string) => `Method: ${version}: ${how}.`,
  notes: {
    'x-height': 'larger helps where writing had become small',
    'ascender-ratio': 'near 2 reads well',
    'descender-ratio': 'near 1 reads well',
    'line-decrement': 'steady is better than shrinking',
    'line-decrement-letter': 'steady is better than shrinking',
    'first-last-five': 'in a row of one letter, written without a stop',
    'page-decrement': 'steady is better than shrinking',
    'word-gap': 'about one letter width reads well',
    'gap-ratio': 'from 3 on, words stand apart',
    slant: 'evenness counts, not the angle',
    'stroke-width': 'depends on the pen',
    darkness: 'depends on the pen',
    'baseline-angle': 'nearer 0 is level',
  },
  drawnPage: (name: string) => `${name}, drawn page`,
  layers: {
    lines: 'Baselines',
    words: 'Words',
    bands: 'Letter height',
    decrement: 'Size along the line',
    gaps: 'Gaps',
    letters: 'Letters',
    closure: 'Closing',
    slant: 'Slant',
  },
  troubles: {
    small: 'Small letters',
    gaps: 'Narrow word gaps',
    open: 'Letters left open',
    gap: (mm: string) => `gap ${mm} mm`,
    closed: (closed: number, of: number) => `${closed} of ${of} closed`,
  },
  caption: {
    height: (mm: string) => `letter height ${mm} mm`,
    gap: (mm: string) => `gap before ${mm} mm`,
    slant: (degrees: string) => `slant ${degrees}°`,
    stroke: (mm: string) => `stroke ${mm} mm`,
    word: (line: number, word: number, text: string, parts: string) =>
      `Line ${line}, word ${word}${text ? ` “${text}”` : ''}: ${parts === '' ? 'nothing could be read' : parts}.`,
  },
};
