/** Then and now: lines of two written pages, cut out at the size they were written; the same words where both have them. */
import { latestOfPage } from '../../sample/measured/latest-measurements.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { SamplePage } from '../../../../db/types/sample.ts';
import { type ComparedPage, type LineStrip, matchedLines, pagesThenAndNow } from '../../progress/then-now.ts';
import { linesOnPages, MARGIN_MM, OUTLINE_MM } from '../../readback/line-pictures.ts';
import { turnedView } from '../../sample/turned-boxes.ts';
import type { WritingPicture } from './packet.ts';

export interface ThenAndNowPictures {
  pictures: WritingPicture[];
  /** Both at true size. */
  trueSize: boolean;
  /** Both at one scale; otherwise the page has to say that sizes cannot be compared. */
  sameScale: boolean;
}

/** Room for each picture on the page, mm. */
export interface PictureRoom {
  widthMm: number;
  heightMm: number;
}

/** A part of a picture that was turned upright; `tiltDeg` clockwise about its middle makes its lines level. */
interface Crop {
  x: number;
  y: number;
  width: number;
  height: number;
  tiltDeg: number;
  outline?: string;
}

/** Of the free paper around a line only what its outline shows is printed. */
const TRIM_MM = MARGIN_MM - OUTLINE_MM;

const pointsOf = (outline: LineStrip['outline']): string =>
  (outline ?? []).map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');

/** A line as its page lay: level where the page was scanned askew, without what stands above and below. */
function levelLine(record: ClientRecord, line: LineStrip, page: SamplePage): Crop {
  const { picture, widthMm, heightMm } = line;
  const { x, y, width, height } = turnedView(picture, picture.turns, picture.pageWidth, picture.pageHeight);
  const plain = { x, y, width, height, tiltDeg: 0, outline: pointsOf(line.outline) };
  const pxPerMm = page.scale?.pxPerMm;
  if (!picture.cropped || !pxPerMm || picture.turns !== 0) return plain;
  const level = { width: Math.min(width, widthMm * pxPerMm), height: (heightMm - 2 * TRIM_MM) * pxPerMm };
  if (level.height <= 0) return plain;
  return {
    ...plain,
    ...level,
    x: x + (width - level.width) / 2,
    y: y + (height - level.height) / 2,
    tiltDeg: latestOfPage(record.pageMeasurements, page.id)?.result.page.rotationDeg ?? 0,
  };
}

/** The first line that can be shown; the page's upper part while it is not measured. */
function firstLine(record: ClientRecord, page: SamplePage, mostHeight: number): Crop {
  const first = linesOnPages(record, page.sampleId).find(({ picture }) => picture?.view === page.view);
  if (first?.picture) return levelLine(record, { ...first, picture: first.picture }, page);
  const lies = page.quarterTurns % 2 === 1;
  const [width, height] = lies ? [page.heightPx, page.widthPx] : [page.widthPx, page.heightPx];
  return { x: 0, y: 0, width, height: Math.min(height, mostHeight), tiltDeg: 0 };
}

/**
 * Pictures of the first baseline and the latest sample; [] with fewer than two days of pages.
 * @param room larger ones shrink alike, so that they still compare
 */
export function thenAndNowPictures(
  record: ClientRecord,
  caption: (day: string, which: 'then' | 'now') => string,
  { widthMm: mostWidth, heightMm: mostHeight }: PictureRoom,
): ThenAndNowPictures {
  const pair = pagesThenAndNow(record);
  if (!pair) return { pictures: [], trueSize: false, sameScale: false };
  const same = matchedLines(record, pair.then.sample.id, pair.now.sample.id).find(
    (line) => line.then.picture.view === pair.then.page.view && line.now.picture.view === pair.now.page.view,
  );
  const cut = (one: ComparedPage, line: LineStrip | undefined) => {
    const pxPerMm = one.page.scale?.pxPerMm ?? one.page.widthPx / mostWidth;
    return {
      one,
      pxPerMm,
      crop: line ? levelLine(record, line, one.page) : firstLine(record, one.page, mostHeight * pxPerMm),
    };
  };
  const crops = [cut(pair.then, same?.then), cut(pair.now, same?.now)];
  const scale = Math.min(
    1,
    ...crops.map(({ crop, pxPerMm }) =>
      Math.min(mostWidth / (crop.width / pxPerMm), mostHeight / (crop.height / pxPerMm)),
    ),
  );
  return {
    trueSize: pair.sameScale && scale === 1,
    sameScale: pair.sameScale,
    pictures: crops.map(({ one: { page, day }, pxPerMm, crop: { tiltDeg, outline, ...crop } }, i) => ({
      blob: page.view,
      caption: caption(day, i === 0 ? 'then' : 'now'),
      crop,
      imageWidth: page.widthPx,
      imageHeight: page.heightPx,
      transform: [
        tiltDeg ? `rotate(${tiltDeg.toFixed(3)} ${crop.x + crop.width / 2} ${crop.y + crop.height / 2})` : '',
        turnedView({ ...crop, x: 0, y: 0 }, page.quarterTurns, page.widthPx, page.heightPx).transform,
      ]
        .filter(Boolean)
        .join(' '),
      widthMm: (crop.width / pxPerMm) * scale,
      heightMm: (crop.height / pxPerMm) * scale,
      scale,
      ...(outline && { outline }),
    })),
  };
}
