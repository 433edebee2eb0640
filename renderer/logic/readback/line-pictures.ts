import type { ClientRecord } from '../../../db/types/record.ts';
import type { BoxMm, SamplePage } from '../../../db/types/sample.ts';
import { latestOfPage } from '../sample/measured/latest-measurements.ts';
import { mapOf, toPicture } from '../sample/overlay-shapes.ts';
import { unread } from '../sample/next-text.ts';
import { assignLines } from './assign-lines.ts';
import type { QueueSample } from './queue.ts';
import type { Turns } from '../sample/turned-boxes.ts';

/** Where a written line stands in the picture of its page, in pixels; the whole page when it was not measured. */
export interface LinePicture {
  /** Blob of the picture the window can show. */
  view: string;
  /** Quarter turns clockwise that bring it upright; the rest is in pixels before the turn. */
  turns: Turns;
  pageWidth: number;
  pageHeight: number;
  x: number;
  y: number;
  width: number;
  height: number;
  /** False: the whole page is shown, because no lines were found in it. */
  cropped: boolean;
  /** Pixels of the picture for one mm on paper, where the line stands; null without a scale. */
  pxPerMm: number | null;
}

/** A sample to be read, with a picture for each of its lines (null: nothing to show, only a count is possible). */
export interface SampleToRead extends QueueSample {
  pictures: (LinePicture | null)[];
}

type Facts = Pick<ClientRecord, 'samples' | 'samplePages' | 'pageMeasurements'>;

/** Free paper shown around a line, in mm, so that loops and dots are not cut. */
export const MARGIN_MM = 2;

/** Free paper inside a line's outline, in mm: the next line may be close. */
export const OUTLINE_MM = 0.8;

/** The samples of a client that can be read back, with the picture of each line. */
export function samplesToRead(record: Facts): SampleToRead[] {
  return record.samples
    .filter((sample) => sample.task.text.trim() && !unread.has(sample.task.kind))
    .map((sample) => {
      const found = linesOnPages(record, sample.id);
      const lines = assignLines(
        sample.task.text,
        found.map((line) => ({ words: line.words })),
      );
      const whole = wholePage(record, sample.id);
      return {
        sampleId: sample.id,
        clientId: sample.clientId,
        visitId: sample.visitId,
        takenAt: sample.takenAt,
        textCodes: sample.task.textCodes,
        text: sample.task.text,
        lines,
        pictures: lines.map((_, i) => found[i]?.picture ?? whole),
      };
    });
}

/** A written line as it was found on a page. */
export interface FoundLine {
  words: { text: string | null }[];
  picture: LinePicture | null;
  /** Size on paper of what the picture shows, mm. */
  widthMm: number;
  heightMm: number;
  /** Corners around the line's own words, in pixels before the turn: what lies outside belongs to other lines. */
  outline: Point[];
}

interface Point {
  x: number;
  y: number;
}

/** The lines of all pages of a sample, top to bottom; none where nothing was measured. */
export function linesOnPages(record: Facts, sampleId: string): FoundLine[] {
  return pagesOf(record, sampleId).flatMap((page) => {
    const measured = latestOfPage(record.pageMeasurements, page.id);
    const map = measured ? mapOf(measured.result) : null;
    if (!measured || !map) return [];
    return measured.result.lines.map((line) => ({
      words: line.words.map((word) => ({ text: word.text })),
      picture: crop(line.box, map, page, page.scale !== null || measured.result.page.dpi !== null),
      widthMm: line.box.widthMm + 2 * MARGIN_MM,
      heightMm: line.box.heightMm + 2 * MARGIN_MM,
      outline: outlineOf(line.words.length > 0 ? line.words.map((word) => word.box) : [line.box], map),
    }));
  });
}

function crop(box: BoxMm, map: readonly number[], page: SamplePage, scaled: boolean): LinePicture {
  const { view, widthPx: pageWidth, heightPx: pageHeight, quarterTurns: turns } = page;
  const left = box.xMm - MARGIN_MM;
  const top = box.yMm - MARGIN_MM;
  const right = box.xMm + box.widthMm + MARGIN_MM;
  const bottom = box.yMm + box.heightMm + MARGIN_MM;
  const corners = [
    toPicture(map, left, top),
    toPicture(map, right, top),
    toPicture(map, right, bottom),
    toPicture(map, left, bottom),
  ];
  const within = (value: number, most: number) => Math.min(most, Math.max(0, value));
  const x = within(Math.min(...corners.map((c) => c.x)), pageWidth);
  const y = within(Math.min(...corners.map((c) => c.y)), pageHeight);
  const width = within(Math.max(...corners.map((c) => c.x)), pageWidth) - x;
  const height = within(Math.max(...corners.map((c) => c.y)), pageHeight) - y;
  // Pages taken by camera are larger where they were nearer: the scale is that of this line.
  const middle = (top + bottom) / 2;
  const [from, to] = [toPicture(map, left, middle), toPicture(map, right, middle)];
  const pxPerMm = scaled ? Math.hypot(to.x - from.x, to.y - from.y) / (right - left) : null;
  return { view, turns, pageWidth, pageHeight, x, y, width, height, cropped: true, pxPerMm };
}

function outlineOf(boxes: readonly BoxMm[], map: readonly number[]): Point[] {
  return convexHull(
    boxes.flatMap(({ xMm, yMm, widthMm, heightMm }) =>
      [xMm - OUTLINE_MM, xMm + widthMm + OUTLINE_MM].flatMap((x) =>
        [yMm - OUTLINE_MM, yMm + heightMm + OUTLINE_MM].map((y) => toPicture(map, x, y)),
      ),
    ),
  );
}

/** The smallest convex polygon around points (Andrew's monotone chain). */
function convexHull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (along: readonly Point[]): Point[] => {
    const kept: Point[] = [];
    for (const p of along) {
      for (;;) {
        const [a, b] = kept.slice(-2);
        if (!a || !b || (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) break;
        kept.pop();
      }
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

function wholePage(record: Facts, sampleId: string): LinePicture | null {
  const [page] = pagesOf(record, sampleId);
  if (!page) return null;
  const { view, widthPx, heightPx, quarterTurns } = page;
  return {
    view,
    turns: quarterTurns,
    pageWidth: widthPx,
    pageHeight: heightPx,
    x: 0,
    y: 0,
    width: widthPx,
    height: heightPx,
    cropped: false,
    pxPerMm: page.scale?.pxPerMm ?? null,
  };
}

const pagesOf = (record: Facts, sampleId: string) =>
  record.samplePages.filter((page) => page.sampleId === sampleId).sort((a, b) => a.order - b.order);
