import { OUTLINE_HANDS } from '../../../build/letters/outline-fonts.ts';
import { PEN_HANDS } from '../../../build/letters/pen-fonts.ts';
import { seededRandom } from '../../../build/letters/random.ts';
import { PRINTED_BANDS } from '../../../renderer/measure/sheet/corner-marks.ts';
import type { Random } from '../../../build/letters/random.ts';
import { viewOf } from './camera.ts';
import { layOut, PAPERS } from './layout.ts';
import type { PageSpec, Picture, Ruling, Writing } from './types.ts';

/** Hands of which one is drawn; the slab and italic ones among them were never looked at while the method was made. */
const HANDS = [...Object.keys(OUTLINE_HANDS), ...Object.keys(PEN_HANDS)] as Writing['font'][];
const TABLES = ['#4a3a2e', '#2d3036', '#6b5138', '#1f2a24', '#857060'];
const RULING_COLORS = ['#9fb6d6', '#7f9cc9', '#b9c3cf', '#a9c9b4', '#c4b5cc'];
const DPI = [150, 200, 240, 300, 300, 300, 400, 600];

const chance = (random: Random, share: number): boolean => random.next() < share;

function isJoined(font: Writing['font']): boolean {
  return font in OUTLINE_HANDS
    ? OUTLINE_HANDS[font as keyof typeof OUTLINE_HANDS]
    : PEN_HANDS[font as keyof typeof PEN_HANDS];
}

/** Paper, and the distance of the lines written on it for letters of a size. */
function paperFor(random: Random, xHeightMm: number): { ruling: Ruling; pitchMm: number } {
  const free = xHeightMm * random.between(3.5, 5.6);
  const color = random.pick(RULING_COLORS);
  const widthMm = random.between(0.18, 0.34);
  /** As many printed lines as leave room for the letters. */
  const steps = (sideMm: number): number => Math.max(1, Math.ceil((3.2 * xHeightMm) / sideMm)) * sideMm;
  const kind = random.next();
  if (kind < 0.36) return { ruling: { kind: 'plain' }, pitchMm: free };
  if (kind < 0.66) {
    const pitchMm = random.pick([6, 6.35, 7, 7.1, 8, 8.7, 9, 10]);
    const marginMm = chance(random, 0.6) ? random.between(18, 34) : null;
    return { ruling: { kind: 'ruled', pitchMm, marginMm, color, widthMm }, pitchMm: steps(pitchMm) };
  }
  if (kind < 0.82) {
    const sideMm = random.pick([4, 5, 5, 7, 10]);
    return { ruling: { kind: 'squares', sideMm, color, widthMm }, pitchMm: steps(sideMm) };
  }
  const bodyMm = xHeightMm * random.between(0.97, 1.2);
  const pitchMm = bodyMm * random.between(3.6, 4.4);
  const own = chance(random, 0.4);
  const dashMm = own ? 2 : random.between(1.2, 4);
  return { ruling: { kind: own ? 'own-sheet' : 'midline', bodyMm, pitchMm, dashMm, color, widthMm }, pitchMm };
}

function pictureOf(random: Random, ownSheet: boolean): Picture {
  const photo = chance(random, 0.25);
  const dpi = photo ? random.pick([150, 200, 240, 300]) : random.pick(DPI);
  return {
    dpi,
    rotationDeg: chance(random, 0.3) ? 0 : random.between(-1, 1) * (photo ? 3.6 : 2.5),
    tilt: photo
      ? {
          pitchDeg: random.between(-14, 14),
          yawDeg: random.between(-10, 10),
          distanceMm: random.between(380, 600),
          marginMm: random.between(18, 40),
        }
      : null,
    table: random.pick(TABLES),
    uneven: random.between(0, photo ? 0.3 : 0.12),
    shadow: chance(random, 0.3) ? random.between(0.1, 0.4) : 0,
    blurPx: random.between(0.3, 1.3) * (dpi > 300 ? 1.5 : dpi < 250 ? 0.7 : 1),
    noise: random.between(0, ownSheet ? 5 : 7),
    jpeg: chance(random, 0.2) ? null : Math.round(random.between(62, 94)),
  };
}

/** One page with everything drawn by lot, within what a therapist could be handed. */
function heldOutSpec(index: number, seed: number): PageSpec {
  const random = seededRandom(seed * 1009 + index);
  const font = random.pick(HANDS);
  const joined = isJoined(font);
  const xHeightMm = Math.exp(random.between(Math.log(1.6), Math.log(5.2)));
  const paper = random.pick(['A4', 'Letter'] as const);
  const { ruling, pitchMm } = paperFor(random, xHeightMm);
  const topMm = random.between(34, 48);
  const most = Math.floor((PAPERS[paper].heightMm - topMm - 14) / pitchMm) + 1;
  const decrement = random.next();
  const wavy = ruling.kind !== 'own-sheet' && chance(random, 0.22);
  const letterGapXh = !joined && chance(random, 0.3) ? random.between(0.1, 0.4) : null;
  const drift = ruling.kind === 'plain' && chance(random, 0.35);
  const gap = Math.max(random.between(0.95, 2.3), letterGapXh === null ? 0 : 3.2 * letterGapXh, joined ? 1.3 : 0);
  return {
    name: `held-out-${seed}-${String(index).padStart(3, '0')}`,
    seed: seed * 7919 + index,
    paper,
    ruling,
    ink: random.pick(['blue', 'black', 'pencil'] as const),
    textGiven: chance(random, 0.4),
    writing: {
      font,
      xHeightMm,
      penMm: Math.min(random.between(0.3, 0.95), xHeightMm * 0.2),
      slantDeg: random.between(-1, 1) * (chance(random, 0.5) ? 0 : joined ? 8 : 19),
      slantSdDeg: chance(random, 0.25) ? random.between(1, 5) : 0,
      lines: Math.max(1, Math.min(most, Math.round(random.between(2, 22)))),
      wordsPerLine: Math.round(random.between(3, 10)),
      wordGapXh: gap,
      wordGapSdXh: chance(random, 0.6) ? gap * random.between(0.03, 0.17) : 0,
      letterGapXh,
      lnPerWord: decrement < 0.2 ? random.between(-0.07, -0.015) : decrement < 0.25 ? random.between(0.015, 0.03) : 0,
      percentPerLine: chance(random, 0.15) ? random.between(-3, -0.7) : 0,
      lineAngleDeg: drift ? random.between(-2.3, 2.3) : 0,
      lineAngleStepDeg: drift && chance(random, 0.3) ? random.between(-0.1, 0.1) : 0,
      waveMm: wavy ? xHeightMm * random.between(0.1, 0.3) : 0,
      waveLengthMm: random.between(55, 120),
      openShare: chance(random, 0.25) ? random.between(0.15, 0.7) : 0,
      openGapXh: random.between(0.22, 0.32),
      punctuation: chance(random, 0.3),
      vocabulary: chance(random, 0.35) ? 'mixed' : 'plain',
      leftMm:
        ruling.kind === 'ruled' && ruling.marginMm !== null
          ? ruling.marginMm + random.between(2, 9)
          : random.between(16, 36),
      topMm,
      pitchMm,
      aboveRulingMm: random.between(0, 0.16) * xHeightMm,
    },
    picture: pictureOf(random, ruling.kind === 'own-sheet'),
  };
}

/** Whether all writing lies in the picture and on the sheet, clear of its rim and of what is printed on it. */
function isWhole(spec: PageSpec): boolean {
  const view = viewOf(spec);
  const { widthMm, heightMm } = PAPERS[spec.paper];
  const clear = spec.ruling.kind === 'own-sheet' ? PRINTED_BANDS.footMm + 2 : 4;
  const boxes = layOut(spec).lines.map((line) => line.box);
  return boxes.every(({ xMm, yMm, widthMm: w, heightMm: h }) =>
    [
      [xMm, yMm],
      [xMm + w, yMm],
      [xMm, yMm + h],
      [xMm + w, yMm + h],
    ].every(([x = 0, y = 0]) => {
      const [px, py] = view.toPicture(x, y);
      const onSheet = x > 4 && x < widthMm - 4 && y > clear && y < heightMm - clear;
      return onSheet && px > 20 && py > 20 && px < view.width - 20 && py < view.height - 20;
    }),
  );
}

/** Pages drawn by lot: what no page of `specs.ts` was chosen for. Same seed, same pages. */
export function heldOutSpecs(seed: number, count: number): PageSpec[] {
  const specs: PageSpec[] = [];
  for (let index = 0; specs.length < count; index += 1) {
    const spec = heldOutSpec(index, seed);
    if (isWhole(spec)) specs.push(spec);
  }
  return specs;
}
