/** A page is read once and measured by any number of texts and corrections: each as if it were measured from the picture. */
import { expect, test } from 'vitest';
import type { Correction, MeasureOptions } from '../../renderer/measure/index.ts';
import { measurePage, measureRead, readPage } from '../../renderer/measure/index.ts';
import { makePage } from './pages/generate.ts';
import { SPECS } from './pages/specs.ts';

test('a page read once gives what a page read anew gives', async () => {
  const ruled = SPECS.find(({ name }) => name === 'ruled-kalam')!;
  const spec = { ...ruled, writing: { ...ruled.writing, lines: 5, wordsPerLine: 4 } };
  const { gray, width, height, truth } = await makePage(spec);
  const scale = { pxPerMm: spec.picture.dpi / 25.4, source: 'dpi' as const };
  const picture = () => ({ width, height, data: Uint8Array.from(gray) });
  const plain = measurePage(picture(), { scale });
  const [first, second] = plain.lines[1]!.words;
  const middle = ({ box }: typeof first & object) => ({
    xMm: box.xMm + box.widthMm / 2,
    yMm: box.yMm + box.heightMm / 2,
  });
  const text = truth.lines.map(({ words }) => words.map((word) => word.text).join(' ')).join('\n');
  const corrections: Correction[][] = [
    [{ kind: 'exclude-word', at: middle(first!) }],
    [{ kind: 'split-word', at: middle(second!) }],
    [{ kind: 'join-words', at: middle(first!), with: middle(second!) }],
  ];
  const all: MeasureOptions[] = [
    { scale },
    ...corrections.map((each) => ({ scale, corrections: each })),
    { scale, text },
    { scale },
  ];
  const anew = all.map((options) => measurePage(picture(), options));
  const read = readPage(picture(), { scale });
  all.forEach((options, i) => expect(measureRead(read, options)).toEqual(anew[i]));
});
