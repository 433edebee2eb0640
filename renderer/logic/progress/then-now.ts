import type { ClientRecord } from '../../../db/types/record.ts';
import type { Sample, SamplePage } from '../../../db/types/sample.ts';
import { assignLines } from '../readback/assign-lines.ts';
import { linesOnPages, type LinePicture } from '../readback/line-pictures.ts';
import { normalise } from '../readback/normalise.ts';

export interface ComparedPage {
  sample: Sample;
  page: SamplePage;
  day: string;
  /** The whole page; its size on paper, or in pixels where there is no scale. */
  strip: LineStrip;
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'samplePages'>;

export interface ThenAndNow {
  then: ComparedPage;
  now: ComparedPage;
  /** Every later page that could stand beside the first one, oldest first. */
  later: { sample: Sample; day: string }[];
  /** Both pages have a scale, so their sizes can be compared. */
  sameScale: boolean;
}

/**
 * The first baseline page and a later one of another day: the chosen one, else the latest of the same task.
 * @param nowSampleId sample to compare with; null or unknown = the latest
 * @returns null with fewer than two days of pages; signatures and personal lines are left out
 */
export function pagesThenAndNow(record: Facts, nowSampleId: string | null = null): ThenAndNow | null {
  const dayOf = new Map(record.visits.map((visit) => [visit.id, visit.date]));
  const all = record.samples
    .filter((sample) => sample.task.kind !== 'signature' && sample.task.kind !== 'personal')
    .flatMap((sample) => {
      const [page] = record.samplePages.filter((p) => p.sampleId === sample.id).sort((a, b) => a.order - b.order);
      const day = dayOf.get(sample.visitId) ?? sample.takenAt.slice(0, 10);
      return page ? [{ sample, page, day }] : [];
    })
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.sample.takenAt < b.sample.takenAt ? -1 : 1));
  const then = all.find((one) => one.sample.baseline) ?? all[0];
  if (!then) return null;
  const later = all.filter((one) => one.day > then.day);
  const now =
    later.find((one) => one.sample.id === nowSampleId) ??
    later.findLast((one) => one.sample.task.kind === then.sample.task.kind) ??
    later.at(-1);
  if (!now) return null;
  const sameScale = then.page.scale !== null && now.page.scale !== null;
  const compared = (one: typeof then): ComparedPage => ({
    ...one,
    strip: wholePage(one.page, sameScale ? one.page.scale!.pxPerMm : 1),
  });
  return {
    then: compared(then),
    now: compared(now),
    later: later.map(({ sample, day }) => ({ sample, day })),
    sameScale,
  };
}

/** A written line or page, cut out of its picture. */
export interface LineStrip {
  picture: LinePicture;
  /** Size on paper, mm. */
  widthMm: number;
  heightMm: number;
  /** Corners around the line's own words, in pixels before the turn; none for a whole page. */
  outline?: { x: number; y: number }[];
}

function wholePage(page: SamplePage, pxPerMm: number): LineStrip {
  const { view, quarterTurns: turns, widthPx, heightPx } = page;
  const lies = turns % 2 === 1;
  return {
    picture: {
      view,
      turns,
      pageWidth: widthPx,
      pageHeight: heightPx,
      x: 0,
      y: 0,
      width: widthPx,
      height: heightPx,
      cropped: false,
      pxPerMm,
    },
    widthMm: (lies ? heightPx : widthPx) / pxPerMm,
    heightMm: (lies ? widthPx : heightPx) / pxPerMm,
  };
}

/** The same words written then and now. */
export interface MatchedLine {
  text: string;
  then: LineStrip;
  now: LineStrip;
}

type LineFacts = Pick<ClientRecord, 'samples' | 'samplePages' | 'pageMeasurements'>;

/**
 * Lines that hold the same words in both samples, in the order of the first; a line written twice is matched twice.
 * Case and punctuation do not matter. None where a page was not measured or the texts differ.
 */
export function matchedLines(record: LineFacts, thenSampleId: string, nowSampleId: string): MatchedLine[] {
  const left = lineStrips(record, nowSampleId);
  return lineStrips(record, thenSampleId).flatMap((then): MatchedLine[] => {
    const at = left.findIndex((now) => now.key === then.key);
    const [now] = at < 0 ? [] : left.splice(at, 1);
    return now ? [{ text: then.text, then: then.strip, now: now.strip }] : [];
  });
}

function lineStrips(record: LineFacts, sampleId: string): { key: string; text: string; strip: LineStrip }[] {
  const sample = record.samples.find((one) => one.id === sampleId);
  if (!sample) return [];
  const found = linesOnPages(record, sampleId);
  const texts = assignLines(sample.task.text, found);
  return found.flatMap(({ picture, widthMm, heightMm, outline }, i) => {
    const text = texts[i]?.trim() ?? '';
    const key = normalise(text);
    return key && picture ? [{ key, text, strip: { picture, widthMm, heightMm, outline } }] : [];
  });
}
