import { expect, test } from 'vitest';
import { ruleVersion } from '../../../db/rules/index.ts';
import { canonicalJson, keptDigests, shippedDigest } from './digest.ts';

const advice = `The shipped rules differ from those of version ${ruleVersion}. Where that is meant, raise ruleVersion in db/rules/index.ts and run \`npx node build/gates/rule-digest.ts\`: it adds the new digest to db/rules/digest.json. Old ones stay.`;

test('a rule version names one table for ever', () => {
  expect(shippedDigest(), advice).toBe(keptDigests()[ruleVersion]);
});

test('digests are of 64 hex digits, one a version', () => {
  for (const digest of Object.values(keptDigests())) expect(digest).toMatch(/^[0-9a-f]{64}$/);
});

test('canonical JSON sorts keys at every depth and keeps the order of lists', () => {
  // As RFC 8785 (JSON Canonicalization Scheme), section 3.2.3: keys by UTF-16 code units, lists as they are.
  expect(canonicalJson({ b: [{ z: 1, y: 2 }, 3], a: null, '1': undefined })).toBe('{"a":null,"b":[{"y":2,"z":1},3]}');
  expect(canonicalJson({ '\ufb33': 5, '\ud83d\ude00': 4, '\u20ac': 1, '\r': 2 })).toBe(
    '{"\\r":2,"\u20ac":1,"\ud83d\ude00":4,"\ufb33":5}',
  );
});
