/** The promises of the house (DEVELOPERS.md). Each is kept everywhere. */
import { expect, test } from 'vitest';
import { broken, engineDoors } from './house.ts';

test.each(Object.entries(broken))('%s', (_, places) => {
  expect(places()).toEqual([]);
});

test('each engine has a door', () => {
  expect(engineDoors()).toEqual(['renderer/change/index.ts', 'renderer/ink/index.ts', 'renderer/measure/index.ts']);
});
