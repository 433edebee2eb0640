/** Then and now: lines of two written pages, cut out at the size they were written; the same words where both have them. */
import type { ClientRecord } from '../../db/types/record.ts';
import type { SamplePage } from '../../db/types/sample.ts';
import { type ComparedPage, matchedLines, pagesThenAndNow } from '../progress/then-now.ts';
import { linesOnPages, type LinePicture } from '../readback/line-pictures.ts';
import { turnedView } from '../readback/turned.ts';
import type { WritingPicture } from './model.ts';

/** Widest picture on a page, mm. */
const mostWidth = 170;

export interface ThenAndNowPictures {
  pictures: WritingPicture[];
  /** Both at true size; otherwise the page has to say that sizes cannot be compared. */
  trueSize: boolean;
}

/** A part of a picture that was turned upright. */
interface Crop {
  x: number;
  y: number;
  width: number;
  height: number;
}

const uprightPart = (line: LinePicture): Crop => {
  const { x, y, width, height } = turnedView(line, line.turns, line.pageWidth, line.pageHeight);
  return { x, y, width, height };
};

/** The first line or two that fit the height; the page's upper part while it is not measured. */
function firstLines(record: ClientRecord, page: SamplePage, maxHeight: number): Crop {
  const lines = linesOnPages(record, page.sampleId).flatMap(({ picture }) =>
    picture?.view === page.view ? uprightPart(picture) : [],
  );
  const first = lines[0];
  if (!first) {
    const lies = page.quarterTurns % 2 === 1;
    const [width, height] = lies ? [page.heightPx, page.widthPx] : [page.widthPx, page.heightPx];
    return { x: 0, y: 0, width, height: Math.min(height, maxHeight) };
  }
  const shown = lines.slice(0, 2).filter((line) => line.y + line.height - first.y <= maxHeight);
  const used = shown.length > 0 ? shown : [first];
  const left = Math.min(...used.map((line) => line.x));
  const right = Math.max(...used.map((line) => line.x + line.width));
  const top = Math.min(...used.map((line) => line.y));
  const bottom = Math.max(...used.map((line) => line.y + line.height));
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/**
 * Pictures of the first baseline and the latest sample; [] with fewer than two days of pages.
 * @param mostHeight room for each picture's height, mm
 */
export function thenAndNowPictures(
  record: ClientRecord,
  caption: (day: string) => string,
  mostHeight: number,
): ThenAndNowPictures {
  const pair = pagesThenAndNow(record);
  if (!pair) return { pictures: [], trueSize: false };
  const same = matchedLines(record, pair.then.sample.id, pair.now.sample.id).find(
    (line) => line.then.picture.view === pair.then.page.view && line.now.picture.view === pair.now.page.view,
  );
  const cut = (one: ComparedPage, line: LinePicture | undefined) => {
    const pxPerMm = one.page.scale?.pxPerMm ?? one.page.widthPx / mostWidth;
    return { one, pxPerMm, crop: line ? uprightPart(line) : firstLines(record, one.page, mostHeight * pxPerMm) };
  };
  const crops = [cut(pair.then, same?.then.picture), cut(pair.now, same?.now.picture)];
  // Where a line is wider than the page both shrink alike, so that they still compare.
  const scale = Math.min(
    1,
    ...crops.map(({ crop, pxPerMm }) =>
      Math.min(mostWidth / (crop.width / pxPerMm), mostHeight / (crop.height / pxPerMm)),
    ),
  );
  return {
    trueSize: pair.sameScale && scale === 1,
    pictures: crops.map(({ one: { page, day }, pxPerMm, crop }) => ({
      blob: page.view,
      caption: caption(day),
      crop,
      imageWidth: page.widthPx,
      imageHeight: page.heightPx,
      transform: turnedView({ ...crop, x: 0, y: 0 }, page.quarterTurns, page.widthPx, page.heightPx).transform,
      widthMm: (crop.width / pxPerMm) * scale,
      heightMm: (crop.height / pxPerMm) * scale,
      scale,
    })),
  };
}
