/** The code at the foot of sheets that come back. */
import { expect, test } from 'vitest';
import { codeOfText, codeSquares, codeText, type PageCode } from '../../../renderer/measure/index.ts';
import { codeOfSquares } from '../../../renderer/measure/printed/page-code.ts';
import { checkBytes, corrected } from '../../../renderer/measure/printed/reed-solomon.ts';
import { choiceFrom } from '../../../renderer/logic/sample/seeded-choice.ts';

test('check bytes are those of the worked example of ISO/IEC 16022', () => {
  // “123456” of Annex R of ISO/IEC 16022:2000, and “A” with two words of padding, as the tests of ZXing quote them.
  expect([...checkBytes([142, 164, 186], 5)]).toEqual([114, 25, 5, 88, 102]);
  expect([...checkBytes([66, 129, 70], 5)]).toEqual([138, 234, 82, 82, 95]);
});

test('up to four wrong bytes are put right, more are noticed', () => {
  const choice = choiceFrom(5);
  for (let round = 0; round < 500; round += 1) {
    const data = Array.from({ length: 12 }, () => choice.below(256));
    const word = Uint8Array.from([...data, ...checkBytes(data, 12)]);
    const wrong = round % 9;
    const places = new Set<number>();
    while (places.size < wrong) places.add(choice.below(24));
    const spoiled = word.slice();
    for (const at of places) spoiled[at]! ^= 1 + choice.below(255);
    const right = corrected(spoiled, 12, 4);
    if (wrong <= 4) expect(right).toEqual(word);
    else expect(right).toBeNull();
  }
});

const page: PageCode = {
  layout: 1,
  kind: 'log',
  few: true,
  client: '0a1b2c3d4e',
  firstDay: '2026-11-27',
  sheet: 3,
  content: '00ffee',
};

test('a code holds what it was made of, and scribble is no code', () => {
  expect(codeOfText(codeText(page))).toEqual(page);
  const practice = { ...page, kind: 'practice' as const, few: false, firstDay: '2020-01-01', sheet: 200 };
  expect(codeOfText(codeText(practice))).toEqual(practice);
  expect(codeOfSquares(codeSquares(codeText(page)))).toBe(codeText(page));
  const choice = choiceFrom(9);
  for (let round = 0; round < 2000; round += 1)
    expect(codeOfSquares(Array.from({ length: 192 }, () => choice.chance(0.5)))).toBeNull();
});
