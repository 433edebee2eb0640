/** Then and now: the first lines of two written pages, cut out at the size they were written. */
import type { ClientRecord } from '../../db/types/record.ts';
import type { SamplePage } from '../../db/types/sample.ts';
import { linesOnPages } from '../readback/line-pictures.ts';
import { pagesThenAndNow } from '../progress/then-now.ts';
import type { WritingPicture } from './model.ts';

/** Room of one picture on a page, mm. */
const most = { width: 170, height: 30 };

export interface ThenAndNowPictures {
  pictures: WritingPicture[];
  /** Both at true size; otherwise the page has to say that sizes cannot be compared. */
  trueSize: boolean;
}

interface Crop {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** The first line or two that fit the room; the page's upper part while it is not measured. */
function cropOf(record: ClientRecord, page: SamplePage, pxPerMm: number): Crop {
  const lines = linesOnPages(record, page.sampleId).flatMap(({ picture }) =>
    picture?.view === page.view ? picture : [],
  );
  const first = lines[0];
  const maxHeight = most.height * pxPerMm;
  if (!first) return { x: 0, y: 0, width: page.widthPx, height: Math.min(page.heightPx, maxHeight) };
  const shown = lines.slice(0, 2).filter((line) => line.y + line.height - first.y <= maxHeight);
  const used = shown.length > 0 ? shown : [first];
  const left = Math.min(...used.map((line) => line.x));
  const right = Math.max(...used.map((line) => line.x + line.width));
  const top = Math.min(...used.map((line) => line.y));
  const bottom = Math.max(...used.map((line) => line.y + line.height));
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Pictures of the first baseline and the latest sample; [] with fewer than two days of pages. */
export function thenAndNowPictures(record: ClientRecord, caption: (day: string) => string): ThenAndNowPictures {
  const pair = pagesThenAndNow(record);
  if (!pair) return { pictures: [], trueSize: false };
  const scaleOf = (page: SamplePage): number => page.scale?.pxPerMm ?? page.widthPx / most.width;
  const crops = [pair.then, pair.now].map((one) => {
    const pxPerMm = scaleOf(one.page);
    return { one, pxPerMm, crop: cropOf(record, one.page, pxPerMm) };
  });
  // Where a line is wider than the page both shrink alike, so that they still compare.
  const scale = Math.min(
    1,
    ...crops.map(({ crop, pxPerMm }) =>
      Math.min(most.width / (crop.width / pxPerMm), most.height / (crop.height / pxPerMm)),
    ),
  );
  return {
    trueSize: pair.sameScale && scale === 1,
    pictures: crops.map(({ one, pxPerMm, crop }) => ({
      blob: one.page.view,
      caption: caption(one.day),
      crop,
      imageWidth: one.page.widthPx,
      imageHeight: one.page.heightPx,
      widthMm: (crop.width / pxPerMm) * scale,
      heightMm: (crop.height / pxPerMm) * scale,
      scale,
    })),
  };
}
