import { OUTLINE_HANDS } from '../../../build/letters/outline-fonts.ts';
import { PEN_HANDS } from '../../../build/letters/pen-fonts.ts';
import { seededRandom } from '../../../build/letters/random.ts';
import { SPECS } from './specs.ts';
import type { PageSpec, Ruling, Writing } from './types.ts';

/** Unjoined hands: their letters can be set apart and together again. */
const HANDS = [...Object.entries(OUTLINE_HANDS), ...Object.entries(PEN_HANDS)]
  .filter(([, joined]) => !joined)
  .map(([name]) => name) as Writing['font'][];
const NOTEBOOK: Ruling[] = [
  { kind: 'ruled', pitchMm: 7.14, marginMm: 31 },
  { kind: 'ruled', pitchMm: 8.73, marginMm: 31 },
  { kind: 'ruled', pitchMm: 7.21, marginMm: null },
];

/**
 * Pages like those that people write, drawn by lot. Ranges are what two people did on 37 pages (mean of inner gaps -1.2
 * to -0.4, of word gaps 0.55 to 1.3, their spreads 0.36 to 0.62 and 0.22 to 0.53 with the wildest page, variation of
 * height 16 to 28 %), somewhat widened; how often a page is faint, shines through or has holes is our own choice.
 */
export function peopleSpecs(seed: number, count: number): PageSpec[] {
  const like = SPECS.find(({ name }) => name === 'plain-patrick')!;
  return Array.from({ length: count }, (_, i): PageSpec => {
    const random = seededRandom(seed * 7919 + i);
    const xHeightMm = random.pick([1.4, 1.8, 2.4, 2.9, 3.4, 4]) * random.between(0.92, 1.08);
    const ruled = random.next() < 0.4;
    const ruling: Ruling = ruled ? random.pick(NOTEBOOK) : { kind: 'plain' };
    const free = xHeightMm * random.between(3.6, 4.8);
    const rule = ruling.kind === 'ruled' ? ruling.pitchMm : 0;
    const pitchMm = rule > 0 ? rule * Math.max(1, Math.ceil((3.2 * xHeightMm) / rule)) : free;
    const lines = Math.min(12, Math.floor(225 / pitchMm));
    return {
      ...like,
      name: `people-${seed}-${i}`,
      seed: seed * 104_729 + i,
      ruling,
      ink: random.pick(['blue', 'black', 'pencil'] as const),
      writing: {
        ...like.writing,
        font: random.pick(HANDS),
        xHeightMm,
        penMm: xHeightMm * random.between(0.1, 0.2),
        slantDeg: random.between(-12, 18),
        slantSdDeg: random.between(1, 4),
        lines,
        wordsPerLine: Math.max(4, Math.min(18, Math.round(24 / xHeightMm))),
        lineAngleDeg: random.between(-1, 1),
        lineAngleStepDeg: random.between(-0.05, 0.05),
        punctuation: true,
        vocabulary: 'mixed',
        leftMm: 34,
        pitchMm,
      },
      people: {
        letterCv: random.between(0.15, 0.3),
        feetXh: random.between(0.05, 0.14),
        letterSlantSdDeg: random.between(1, 5),
        inner: { mean: random.between(-1.2, -0.5), sd: random.between(0.36, 0.6) },
        between: { mean: random.between(0.55, 1.25), sd: random.between(0.22, 0.38) },
        lineSd: 0.1,
        touching: random.between(0.15, 0.5),
        parted: 0.03,
        marksApart: 0.25,
        crossedOut: random.between(0, 1.5),
        inserted: random.between(0, 0.4),
        contrast: random.next() < 0.2 ? random.between(0.26, 0.45) : null,
        showThrough: random.next() < 0.15 ? random.between(0.05, 0.12) : 0,
        holes: random.next() < 0.2,
      },
      picture: { ...like.picture, dpi: random.pick([200, 300, 300, 300]), rotationDeg: random.between(-0.8, 0.8) },
    };
  });
}
