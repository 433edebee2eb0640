/** What a printed line may not part, and what it may. */
import { expect, test } from 'vitest';
import { withPlainAmounts, withWholeAmounts } from '../../../renderer/logic/texts/whole-amounts.ts';

test.each([
  ['Seat 28 1/4 in (72 cm) high.', 'Seat 28~1/4~in (72~cm) high.'],
  ['Raise it 1/2 in.', 'Raise it 1/2~in.'],
  ['Fill in the boxes of 6 mm.', 'Fill in the boxes of 6~mm.'],
  ['90 % von 24 Wörtern', '90~% von 24 Wörtern'],
  ['Write 3 in the morning, 12 mmol, 4 cards.', 'Write 3 in the morning, 12 mmol, 4 cards.'],
])('%s', (kept, shown) => {
  expect(withWholeAmounts(kept)).toBe(shown.replaceAll('~', '\u00a0'));
  expect(withPlainAmounts(withWholeAmounts(kept))).toBe(kept);
});
