/**
 * Clinic rule files of format 1 had no roles: a rule's part in the day was read from how its id was spelled. Read once,
 * when such a file or stored table is opened; from format 2 on the role is written down and ids are citations only.
 */
import { ClinicRules, type LibraryItem, type Rule } from '../rules.ts';

/** Role that a rule of format 1 had by its id. */
function roleInFormatOne(id: string): Rule['role'] {
  if (/^(W[123]\d|R47)$/.test(id)) return 'main-writing';
  return /^W\d/.test(id) ? 'manner' : 'other';
}

/** The same content in format 2; anything that is not format 1 comes back as it was. */
export function upgradedClinicRules(data: unknown): unknown {
  if (typeof data !== 'object' || data === null) return data;
  const file = data as { formatVersion?: unknown; rules?: unknown };
  if (file.formatVersion !== 1 || !Array.isArray(file.rules)) return data;
  const rules = file.rules.map((rule: unknown) =>
    typeof rule === 'object' && rule !== null && !('role' in rule) && 'id' in rule && typeof rule.id === 'string'
      ? { ...rule, role: roleInFormatOne(rule.id) }
      : rule,
  );
  return { ...file, formatVersion: 2, rules };
}

/**
 * Rules of a file of format 1 whose part in the day their ids did not say: they give writing and are taken as beside the
 * main one. The therapist is asked once, before the file is kept in format 2.
 * @param data as it was read, before `upgradedClinicRules`
 * @returns their ids; none for a file of format 2
 */
export function rolesToAsk(data: unknown, items: readonly Pick<LibraryItem, 'code' | 'kind'>[]): string[] {
  if (typeof data !== 'object' || data === null || (data as { formatVersion?: unknown }).formatVersion !== 1) return [];
  const read = ClinicRules.safeParse(upgradedClinicRules(data));
  if (!read.success) return [];
  const writing = new Set(
    [...items, ...read.data.items].filter(({ kind }) => kind === 'writing').map(({ code }) => code),
  );
  return read.data.rules
    .filter(({ role, gives }) => role === 'other' && gives.some((code) => writing.has(code)))
    .map(({ id }) => id);
}
