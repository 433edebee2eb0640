import { expect, test } from 'vitest';
import { familyPage } from '../../../renderer/logic/pages/kinds/family.ts';
import { thenAndNowPictures } from '../../../renderer/logic/pages/sheet/pictures.ts';
import SheetView from '../../../renderer/window/pages/SheetView.svelte';
import { texts } from '../../../renderer/logic/texts/en.ts';
import { chromiumPath, htmlOf, noChromium, printHtml } from './html.ts';
import { clientId, id, input, record } from './record.ts';

/** Pages of 200 mm by 100 mm at the given scales, for the first and the last sample. */
const withPages = (scales: readonly (number | null)[]) =>
  record((r) => {
    const samples = [r.samples[0]!, r.samples.at(-1)!];
    r.samplePages = samples.map((sample, i) => {
      const px = scales[i] ?? 10;
      return {
        id: id(),
        at: sample.at,
        by: 'JM',
        clientId,
        visitId: sample.visitId,
        sampleId: sample.id,
        order: 0,
        blob: id(),
        view: id(),
        pdfPage: 1,
        sha256: 'a'.repeat(64),
        mime: 'image/png' as const,
        bytes: 10,
        widthPx: 200 * px,
        heightPx: 100 * px,
        scale: scales[i] == null ? null : { pxPerMm: px, source: 'bar' as const },
        fileDpi: null,
        quarterTurns: 0 as const,
      };
    });
  });

test('then and now shrink alike, so that they still compare', () => {
  const { pictures, trueSize } = thenAndNowPictures(withPages([12, 6]), (day) => day, { widthMm: 170, heightMm: 18 });
  expect(pictures).toHaveLength(2);
  expect(trueSize).toBe(false);
  expect(pictures[0]!.scale).toBe(pictures[1]!.scale);
  expect(pictures[0]!.widthMm).toBeCloseTo(pictures[1]!.widthMm, 6);
  for (const picture of pictures) {
    expect(picture.widthMm).toBeLessThanOrEqual(170.001);
    expect(picture.heightMm).toBeLessThanOrEqual(18.001);
  }
});

test('a page that was turned upright is cut upright', () => {
  const turned = withPages([12, 12]);
  turned.samplePages[1]!.quarterTurns = 1;
  const now = thenAndNowPictures(turned, (day) => day, { widthMm: 170, heightMm: 18 }).pictures[1]!;
  expect(now.crop.width).toBe(turned.samplePages[1]!.heightPx);
  expect(now.transform).toContain('rotate(90)');
});

test('with one page there is nothing to compare', () => {
  const one = withPages([12, 12]);
  one.samplePages.pop();
  expect(thenAndNowPictures(one, (day) => day, { widthMm: 170, heightMm: 18 }).pictures).toEqual([]);
});

test.skipIf(!chromiumPath)(`the pictures print on the family page, which stays one sheet${noChromium}`, async () => {
  const from = input({ record: withPages([12, 6]) });
  const { pictures } = thenAndNowPictures(from.record, (day) => day, { widthMm: 170, heightMm: 18 });
  const options = { pt: 14 as const, pictures, when: '', bring: '', ownWords: '' };
  const packet = familyPage(from, options, texts);
  expect(packet.sheets).toHaveLength(1);
  expect(packet.warnings.join(' ')).not.toContain('pictures were left out');
  const pixel =
    'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
  const printed = await printHtml(htmlOf(SheetView, { sheets: packet.sheets, blobUrl: () => pixel }));
  expect(printed.overflow).toEqual([0]);
});
