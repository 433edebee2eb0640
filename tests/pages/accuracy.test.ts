/** A share of the accuracy report (`npm run accuracy` has all pages): one page of each kind must keep every limit. */
import { expect, test } from 'vitest';
import { measurePage } from '../../renderer/sample/measure/page.ts';
import { makePage } from './generate.ts';
import { isMissed, judgePage } from './judge.ts';
import { SPECS } from './specs.ts';

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

test.each(SHARE)(
  'the page %s keeps every limit',
  async (name) => {
    const spec = SPECS.find((one) => one.name === name);
    if (!spec) throw new Error(`no page is called ${name}`);
    const page = await makePage(spec);
    const scale = { pxPerMm: spec.picture.dpi / 25.4, source: 'dpi' as const };
    const result = measurePage({ width: page.width, height: page.height, data: page.gray }, { scale });
    expect(judgePage(page, result).filter(isMissed)).toEqual([]);
  },
  60_000,
);
