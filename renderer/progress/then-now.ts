import type { ClientRecord } from '../../db/types/record.ts';
import type { Sample, SamplePage } from '../../db/types/sample.ts';

export interface ComparedPage {
  sample: Sample;
  page: SamplePage;
  day: string;
  /** Width of the picture on paper; pixels stand in where there is no scale. */
  widthMm: number;
}

type Facts = Pick<ClientRecord, 'visits' | 'samples' | 'samplePages'>;

/**
 * The first baseline page and the latest one of another day, of the same task where there is one.
 * @returns null with fewer than two days of pages; signatures and personal lines are left out
 */
export function pagesThenAndNow(record: Facts): { then: ComparedPage; now: ComparedPage; sameScale: boolean } | null {
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
  const now = later.findLast((one) => one.sample.task.kind === then.sample.task.kind) ?? later.at(-1);
  if (!now) return null;
  const sameScale = then.page.scale !== null && now.page.scale !== null;
  const width = (page: SamplePage) => (sameScale ? page.widthPx / page.scale!.pxPerMm : page.widthPx);
  const compared = (one: typeof then): ComparedPage => ({ ...one, widthMm: width(one.page) });
  return { then: compared(then), now: compared(now), sameScale };
}
