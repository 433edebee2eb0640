import type { ClientRecord } from '../../../db/types/record.ts';
import type { Reading } from '../../../db/types/reading.ts';
import type { OwnSpelling } from '../../../db/types/sample.ts';
import type { BoxMm, PageWord } from '../../../db/types/sample.ts';
import { latestOfPage } from '../sample/measured/latest-measurements.ts';
import { mapOf, toPicture, type Px } from '../sample/overlay-shapes.ts';
import { align } from './align.ts';
import { assignLines } from './assign-lines.ts';
import { countReadback, type WordMark } from './score.ts';
import { turnedView, turnPoint } from '../sample/turned-boxes.ts';

/** A word that was not read right, at its place in the picture, turned upright. */
interface PageMark {
  /** Corners of its box in pixels, as an SVG polygon takes them. */
  points: string;
  /** The same of the letters read wrong or left out, where the page knows its letters. */
  letters: string[];
  x: number;
  y: number;
  intended: string;
  /** '' = left out. */
  read: string;
}

export interface MarkedPage {
  view: string;
  /** Size of the picture before and after it was turned upright, and the SVG transform that turns it. */
  pictureWidth: number;
  pictureHeight: number;
  width: number;
  height: number;
  transform: string;
  marks: PageMark[];
  /** Lines whose words on the page could not be matched with the intended ones, counted from 1. */
  unmatched: number[];
}

type Facts = Pick<ClientRecord, 'samples' | 'samplePages' | 'pageMeasurements'>;

/**
 * The words of a reading that went wrong, on the first measured page of its sample. A line is marked only where the
 * page holds as many words as were intended: a mark at the wrong word would mislead.
 * @returns null without a measured page or without read lines
 */
export function marksOnPage(
  record: Facts,
  reading: Reading,
  spellings: readonly OwnSpelling[] = [],
): MarkedPage | null {
  const sample = record.samples.find((one) => one.id === reading.sampleId);
  const page = record.samplePages.filter((p) => p.sampleId === reading.sampleId).sort((a, b) => a.order - b.order)[0];
  const measured = latestOfPage(record.pageMeasurements, page?.id);
  const map = measured ? mapOf(measured.result) : null;
  if (!sample || !page || !measured || !map || reading.lines.length === 0) return null;
  const intended = assignLines(sample.task.text, measured.result.lines);
  const upright = ({ x, y }: Px): Px => turnPoint(x, y, page.quarterTurns, page.widthPx, page.heightPx);
  const left = [...reading.lines];
  const marks: PageMark[] = [];
  const unmatched: number[] = [];
  measured.result.lines.forEach((line, i) => {
    const at = left.findIndex((one) => one.intended === intended[i]);
    if (at < 0) return;
    const [read] = left.splice(at, 1);
    const words = countReadback(read!.intended, read!.read, spellings).marks;
    if (words.length !== line.words.length) {
      unmatched.push(i + 1);
      return;
    }
    words.forEach((word, j) => {
      if (word.right) return;
      const found = line.words[j]!;
      const corners = boxCorners(map, found.box).map(upright);
      marks.push({
        points: pointsOf(corners),
        letters: wrongLetters(word, lettersOf(found)).map((box) => pointsOf(boxCorners(map, box).map(upright))),
        x: Math.min(...corners.map((corner) => corner.x)),
        y: Math.max(...corners.map((corner) => corner.y)),
        intended: word.intended,
        read: word.read ?? '',
      });
    });
  });
  const whole = { x: 0, y: 0, width: page.widthPx, height: page.heightPx };
  const { width, height, transform } = turnedView(whole, page.quarterTurns, page.widthPx, page.heightPx);
  return {
    view: page.view,
    pictureWidth: page.widthPx,
    pictureHeight: page.heightPx,
    width,
    height,
    transform,
    marks,
    unmatched,
  };
}

/** Boxes of a word's letters as the engine found them; empty where it did not look for letters. */
const lettersOf = (word: PageWord): BoxMm[] =>
  Array.isArray(word['letters']) ? (word['letters'] as { box: BoxMm }[]).map((letter) => letter.box) : [];

/** The letters of a word that were read as others or left out; none where the page holds another number of letters. */
function wrongLetters(word: WordMark, boxes: readonly BoxMm[]): BoxMm[] {
  const intended = [...word.intended];
  if (word.read === null || boxes.length !== intended.length) return [];
  let at = 0;
  return align(intended, [...word.read]).flatMap((step) => {
    if (step.intended === null) return [];
    const box = boxes[at++]!;
    return step.kind === 'match' ? [] : [box];
  });
}

const boxCorners = (map: readonly number[], { xMm, yMm, widthMm, heightMm }: BoxMm): Px[] => [
  toPicture(map, xMm, yMm),
  toPicture(map, xMm + widthMm, yMm),
  toPicture(map, xMm + widthMm, yMm + heightMm),
  toPicture(map, xMm, yMm + heightMm),
];

const pointsOf = (corners: readonly Px[]): string =>
  corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
