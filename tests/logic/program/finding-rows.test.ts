import { expect, test } from 'vitest';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { findingRows } from '../../../renderer/logic/program/clinic/finding-rows.ts';
import { client, rules } from './support.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

test('a finding without a line says why: safety, no room, taken out, or that it sets the tier', () => {
  const input = client({ tone: 2, strength: 1, grasp: 1, 'in-hand': 1, opposition: 2, wrist: 1 });
  const draft = compose(input, rules);
  const rows = (lines = draft.lines) =>
    new Map(findingRows(input, lines, rules, draft, englishTelling).map(({ code, without }) => [code, without]));
  const told = new Set(rows().values());
  for (const line of draft.lines) for (const code of line.findings) expect(rows().get(code) ?? '').toBe('');
  expect([...told].every((each) => each !== 'no line')).toBe(true);
  const bare = rows([]);
  expect(bare.get('strength'), 'putty is forbidden with raised tone').toBe('kept out for safety');
  expect(bare.get('grasp'), 'one drill a day where no rise of fatigue is known').toBe('no room today');
  const read = client({}, { measures: [{ code: 'legibility', value: 80, unit: '%' }] });
  const row = findingRows(read, [], rules, compose(read, rules), englishTelling).find(
    ({ code }) => code === 'low-legibility',
  );
  expect(row?.without).toBe('sets the tier');
});
