import { expect, test } from 'vitest';
import { isWeak } from '../../db/weak-passphrase.ts';

test.each([
  'aaaaaaaaaaaa',
  'passwordpassword',
  '123456789012',
  'abcdefghijkl',
  'qwertyuiopas',
  'abab abab abab',
  '            ',
])('%j is weak', (passphrase) => expect(isWeak(passphrase)).toBe(true));

test.each([
  'calm river blue lantern',
  'invented clients only',
  'oak kettle seven lanterns',
  'Žluťoučký kůň pěl',
  'seven kettles under snow',
])('%j is not', (passphrase) => expect(isWeak(passphrase)).toBe(false));
