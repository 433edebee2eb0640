import type { ClientRecord } from '../../db/types/record.ts';
import type { Reading } from '../../db/types/reading.ts';
import { boxPoints, mapOf } from '../sample/overlay.ts';
import { assignLines } from './assign-lines.ts';
import { countReadback } from './score.ts';

/** A word that was not read right, at its place in the picture. */
export interface PageMark {
  /** Corners of its box in pixels, as an SVG polygon takes them. */
  points: string;
  x: number;
  y: number;
  intended: string;
  /** '' = left out. */
  read: string;
}

export interface MarkedPage {
  view: string;
  width: number;
  height: number;
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
export function marksOnPage(record: Facts, reading: Reading): MarkedPage | null {
  const sample = record.samples.find((one) => one.id === reading.sampleId);
  const page = record.samplePages.filter((p) => p.sampleId === reading.sampleId).sort((a, b) => a.order - b.order)[0];
  const measured = record.pageMeasurements
    .filter((m) => m.pageId === page?.id)
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .at(-1);
  const map = measured ? mapOf(measured.result) : null;
  if (!sample || !page || !measured || !map || reading.lines.length === 0) return null;
  const intended = assignLines(sample.task.text, measured.result.lines);
  const left = [...reading.lines];
  const marks: PageMark[] = [];
  const unmatched: number[] = [];
  measured.result.lines.forEach((line, i) => {
    const at = left.findIndex((one) => one.intended === intended[i]);
    if (at < 0) return;
    const [read] = left.splice(at, 1);
    const words = countReadback(read!.intended, read!.read).marks;
    if (words.length !== line.words.length) {
      unmatched.push(i + 1);
      return;
    }
    words.forEach((word, j) => {
      if (word.right) return;
      const points = boxPoints(map, line.words[j]!.box);
      const [x, y] = points.split(' ')[3]!.split(',').map(Number) as [number, number];
      marks.push({ points, x, y, intended: word.intended, read: word.read ?? '' });
    });
  });
  return { view: page.view, width: page.widthPx, height: page.heightPx, marks, unmatched };
}
