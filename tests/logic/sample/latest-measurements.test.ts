import { expect, test } from 'vitest';
import type { ClientRecord } from '../../../db/types/record.ts';
import { measuredPage } from '../../../renderer/logic/program/facts/record-measures.ts';
import { ownRepeats } from '../../../renderer/logic/record/hand-ranges.ts';
import { sampleValues } from '../../../renderer/logic/record/measure-values.ts';
import { linesOnPages } from '../../../renderer/logic/readback/line-pictures.ts';
import { latestOf, latestOfPage } from '../../../renderer/logic/sample/measured/latest-measurements.ts';
import { record, sample, stamp } from '../progress/facts.ts';

type Measurement = ClientRecord['pageMeasurements'][number];

const measurement = (id: string, at: string, value: number, lines: number) =>
  ({
    ...stamp,
    ...{
      id,
      at,
      pageId: 'p',
      sampleId: 's',
      visitId: 'v-2026-03-04',
      method: 'page',
      version: 'page-6',
      corrections: [],
    },
    result: {
      page: { dpi: 300, toPicture: [1, 0, 0, 0, 1, 0, 0, 0, 1] },
      measures: [{ code: 'x-height', value, unit: 'mm' }],
      lines: Array.from({ length: lines }, () => ({ box: { xMm: 0, yMm: 0, widthMm: 1, heightMm: 1 }, words: [] })),
    },
  }) as unknown as Measurement;

test('the latest measurement of a page counts wherever it stands in the record, for everybody who asks', () => {
  // As after a merge of two laptops: the newer one stands first.
  const newer = measurement('b', '2026-03-05T10:00:00.000Z', 3, 1);
  const older = measurement('a', '2026-03-04T10:00:00.000Z', 2, 4);
  const page = { ...stamp, id: 'p', sampleId: 's', order: 0, ink: null, scale: null, quarterTurns: 0 };
  const r = record({
    samples: [sample('s', '2026-03-04')],
    samplePages: [page as never],
    pageMeasurements: [newer, older],
  });
  expect(latestOfPage(r.pageMeasurements, 'p')).toBe(newer);
  expect(latestOfPage(r.pageMeasurements, undefined)).toBeNull();
  expect(latestOf(r.pageMeasurements)).toBe(newer);

  expect(measuredPage(r, 's')).toBe(newer.result);
  expect(linesOnPages(r, 's')).toHaveLength(1);
  expect(sampleValues(r).map(({ value }) => value)).toEqual([3]);
  expect(ownRepeats(r, 'page-6')('x-height', 'mm'), 'a page is no repeat of itself').toEqual([]);
});
