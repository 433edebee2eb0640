/**
 * Values of generated pages are held by method version, against results of an earlier day: a value that moves needs a
 * new version. Here a third of the pages; `npm run accuracy` compares all of them.
 */
import { expect, test } from 'vitest';
import { makePage } from './pages/generate.ts';
import { SPECS } from './pages/specs.ts';
import { METHOD_VERSION } from '../../renderer/measure/version.ts';
import { advice, differences, keptSnapshot, measureMadePage, snapshotOf } from './snapshot.ts';

const kept = keptSnapshot();

test(`there is a snapshot of ${METHOD_VERSION}, and it has every page`, () => {
  expect(Object.keys(kept ?? {}).sort(), advice).toEqual(SPECS.map(({ name }) => name).sort());
});

test.each(SPECS.filter((_, i) => i % 3 === 0).map((spec) => [spec.name, spec] as const))(
  'the page %s gives the values it gave',
  async (name, spec) => {
    const now = snapshotOf(measureMadePage(await makePage(spec)));
    expect(differences(kept?.[name], now), advice).toEqual([]);
  },
);

test('a value that moves by more than a millionth is told, and so are a lost word and a lost measure', () => {
  const page = { words: [7, 7], warnings: [], measures: { 'x-height': [2.8, 84, 2.7, 2.9, null] } };
  const changed = (part: object): string[] => differences(page, { ...page, ...part });
  expect(changed({})).toEqual([]);
  expect(changed({ measures: { 'x-height': [2.8 * (1 + 1e-7), 84, 2.7, 2.9, null] } })).toEqual([]);
  expect(changed({ measures: { 'x-height': [2.8 * (1 + 1e-5), 84, 2.7, 2.9, null] } })).toHaveLength(1);
  expect(changed({ measures: { 'x-height': [2.8, 84, null, 2.9, null] } })).toHaveLength(1);
  expect(changed({ words: [7, 6] })).toHaveLength(1);
  expect(changed({ measures: {} })).toHaveLength(1);
});
