/** A share of the accuracy report (`npm run accuracy` has all pages): one page of each kind must keep every limit. */
import { expect, test } from 'vitest';
import { measurePage } from '../../../renderer/measure/measure-page.ts';
import type { PageResult } from '../../../renderer/measure/types.ts';
import { makePage } from './generate.ts';
import { heldOutSpecs } from './held-out.ts';
import { isMissed, judgePage } from './judge.ts';
import { SPECS } from './specs.ts';
import type { MadePage } from './types.ts';

const SHARE = [
  'plain-patrick',
  'turned-right',
  'wave-short',
  'shrink-line',
  'open-kalam',
  'slant-right',
  'ruled-kalam',
  'squares-5',
  'pencil-kalam',
  'photo-tilted',
  'joined-ruled',
  'dpi-150',
];

test.each(SHARE)('the page %s keeps every limit', async (name) => {
  const spec = SPECS.find((one) => one.name === name);
  if (!spec) throw new Error(`no page is called ${name}`);
  const page = await makePage(spec);
  const scale = { pxPerMm: spec.picture.dpi / 25.4, source: 'dpi' as const };
  const result = measurePage({ width: page.width, height: page.height, data: page.gray }, { scale });
  expect(judgePage(page, result).filter(isMissed)).toEqual([]);
});

/** A page drawn by lot, measured with the scale of its file. */
async function drawnByLot(name: string): Promise<{ page: MadePage; result: PageResult }> {
  const seed = Number(name.split('-')[2]);
  const spec = heldOutSpecs(seed, 50).find((one) => one.name === name);
  if (!spec) throw new Error(`no page is called ${name}`);
  const page = await makePage(spec);
  const scale = { pxPerMm: spec.picture.dpi / 25.4, source: 'dpi' as const };
  return { page, result: measurePage({ width: page.width, height: page.height, data: page.gray }, { scale }) };
}

/** Pages drawn by lot on which printed lines or a shadow once made false words (`npm run accuracy -- --held-out 60`). */
const ONCE_FALSE = {
  'held-out-1-000': 'squares cut by the edge of the picture',
  'held-out-1-004': 'a line of head, dashed and foot lines hidden by the writing on it',
  'held-out-1-046': 'letters in felt pen, as black as a corner mark',
  'held-out-1-028': 'a photographed sheet half in shadow',
  'held-out-7-033': 'thick strokes on small letters, once taken for a page on its side',
  'held-out-8-038': 'a margin that crosses ruled lines as dark as the pencil',
};

test.each(Object.entries(ONCE_FALSE))('%s: lines and words are exact on %s', async (name) => {
  const { page, result } = await drawnByLot(name);
  expect(result.lines.map((line) => line.words.length)).toEqual(page.truth.lines.map((line) => line.words.length));
});

test.each(['held-out-7-040', 'held-out-8-029'])(
  '%s: letters of pencil that stand on a printed line keep their height',
  async (name) => {
    const { page, result } = await drawnByLot(name);
    expect(judgePage(page, result).filter((row) => row.quantity === 'x-height' && isMissed(row))).toEqual([]);
  },
);
