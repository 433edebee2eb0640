/** Digest of everything that ships in the rule table, the same however its keys are ordered. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rulesInUse } from '../../../db/rules/in-use.ts';

export const digestFile = fileURLToPath(new URL('../../../db/rules/digest.json', import.meta.url));

/** Version -> SHA-256. */
export const keptDigests = (): Record<string, string> =>
  JSON.parse(readFileSync(digestFile, 'utf8')) as Record<string, string>;

/** JSON with the keys of every object sorted; members that are undefined are left out as JSON does. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, member: unknown) =>
    typeof member === 'object' && member !== null && !Array.isArray(member)
      ? Object.fromEntries(Object.entries(member).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
      : member,
  );
}

/**
 * SHA-256 (hex) of the shipped table, screen, set-up constants, sample texts and goal ladder, without the version.
 * Translations stay out: each row names the English it was made from, and a printed page keeps its words.
 */
export function shippedDigest(): string {
  const { version: _version, translations: _translations, ...table } = rulesInUse(null);
  return createHash('sha256').update(canonicalJson(table)).digest('hex');
}
