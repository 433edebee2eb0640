import { expect, test } from 'vitest';
import { isWeak } from '../../../db/weak-passphrase.ts';
import { isGuessable } from '../../../electron/files/passphrase-guess.ts';

const CLINIC = ['Sunshine Hand Center', 'QM'];

// Long enough for the rule of twelve characters, and not caught by repeats and rows alone.
test.each([
  'handwriting therapy',
  'fairhandcaseload',
  'Fairhand2026!!',
  'Winter2026!!!',
  'sunshine hand center',
  'SunshineHand2026',
  'P@ssw0rd1234',
  'iloveyou12345678',
  'letmein letmein1',
])('%j is guessed too soon', async (passphrase) => expect(await isGuessable(passphrase, CLINIC)).toBe(true), 60_000);

test.each([
  'calm river blue lantern',
  'invented clients only',
  'oak kettle seven lanterns',
  'Žluťoučký kůň pěl úpěl',
  'seven kettles under snow',
  'x7#Qm2!vLp9s',
])('%j stands', async (passphrase) => expect(await isGuessable(passphrase, CLINIC)).toBe(false), 60_000);

test('what is refused at once is no secret to the estimator either', async () => {
  for (const plain of ['aaaaaaaaaaaa', 'passwordpassword']) {
    expect(isWeak(plain)).toBe(true);
    expect(await isGuessable(plain)).toBe(true);
  }
}, 60_000);
