/** What is wrong in a rule file, in words a therapist can act on: where it is, what stands there, what is needed. */
import type { z } from 'zod';
import type { Told } from '../../texts/screens/en/screens-en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

type Issue = z.core.$ZodIssue;
type Path = PropertyKey[];

export interface PlainIssue {
  path: (string | number)[];
  /** A whole sentence. */
  reason: string;
}

function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined,
    data,
  );
}

const isShape = (issue: Issue, data: unknown, at: Path): boolean =>
  issue.code === 'unrecognized_keys' || valueAt(data, [...at, ...issue.path]) === undefined;

/** Of several shapes that a value may have, the one it comes nearest to is the one it was meant to have. */
function innermost(issue: Issue, data: unknown, at: Path = []): { issue: Issue; path: Path } {
  const path = [...at, ...issue.path];
  if (issue.code !== 'invalid_union' || typeof valueAt(data, path) !== 'object') return { issue, path };
  const meant = issue.errors.find((branch) => branch.length > 0 && !branch.some((each) => isShape(each, data, path)));
  return meant?.[0] ? innermost(meant[0], data, path) : { issue, path };
}

type Words = Told['ruleFile'];

function found(value: unknown, words: Words): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return words.list;
  if (typeof value === 'object') return words.entries;
  return JSON.stringify(value).slice(0, 60);
}

const oneOf = (values: readonly unknown[], words: Words): string =>
  words.oneOf(values.map((each) => JSON.stringify(each)).join(', '));

function wanted(issue: Issue, words: Words): string {
  switch (issue.code) {
    case 'invalid_type':
      return words.hasToBe((words.needed as Readonly<Record<string, string>>)[issue.expected] ?? issue.expected);
    case 'invalid_value':
      return oneOf(issue.values, words);
    case 'too_small':
      return issue.origin === 'string' ? words.saySomething : words.least(String(issue.minimum));
    case 'too_big':
      return (issue.origin === 'string' ? words.mostLetters : words.most)(String(issue.maximum));
    case 'invalid_union': {
      const literals = issue.errors.flatMap((branch) =>
        branch.flatMap((each) => (each.code === 'invalid_value' && each.path.length === 0 ? each.values : [])),
      );
      if (literals.length >= issue.errors.length) return oneOf(literals, words);
      return words.noForm;
    }
    default:
      return issue.message;
  }
}

/** @param data the file as it was read, before it was checked */
export function plainIssue(issue: Issue, data: unknown, words = toldEnglish.ruleFile): PlainIssue {
  const inner = innermost(issue, data);
  const path = inner.path.filter((step) => typeof step !== 'symbol');
  const name = path.findLast((step) => typeof step === 'string') ?? words.theFile;
  if (inner.issue.code === 'unrecognized_keys') {
    const [key = ''] = inner.issue.keys;
    return { path: [...path, key], reason: words.notKnown(key) };
  }
  const value = valueAt(data, path);
  if (value === undefined) return { path, reason: words.missing(name, wanted(inner.issue, words)) };
  return { path, reason: words.stands(name, found(value, words), wanted(inner.issue, words)) };
}
