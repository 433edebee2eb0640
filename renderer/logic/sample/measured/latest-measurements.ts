/** A page may be measured any number of times, a correction measures it anew: what counts is the latest, everywhere. */
import type { ClientRecord } from '../../../../db/types/record.ts';

type Measurements = ClientRecord['pageMeasurements'];
type PageMeasurement = Measurements[number];

const later = (known: PageMeasurement | null | undefined, one: PageMeasurement): PageMeasurement =>
  known && known.at > one.at ? known : one;

/** The measurement that counts of each page, by the page's id; of two of one moment the one stored later. */
export function latestMeasurements(all: Measurements): Map<string, PageMeasurement> {
  const latest = new Map<string, PageMeasurement>();
  for (const one of all) latest.set(one.pageId, later(latest.get(one.pageId), one));
  return latest;
}

/** The measurement that counts of one page; null = it was not measured. */
export const latestOfPage = (all: Measurements, pageId: string | undefined): PageMeasurement | null =>
  latestOf(all.filter((one) => one.pageId === pageId));

/** The last of several measurements, whatever their pages; null = none. */
export const latestOf = (all: Measurements): PageMeasurement | null =>
  all.reduce<PageMeasurement | null>((known, one) => later(known, one), null);
