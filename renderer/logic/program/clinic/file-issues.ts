/** What is wrong in a rule file, in words a therapist can act on: where it is, what stands there, what is needed. */
import type { z } from 'zod';

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

const needed: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'words in quotes',
  boolean: 'true or false',
  array: 'a list in square brackets',
  object: 'entries in braces',
  record: 'entries in braces',
};

function found(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'entries in braces';
  return JSON.stringify(value).slice(0, 60);
}

const oneOf = (values: readonly unknown[]): string =>
  `it has to be one of ${values.map((each) => JSON.stringify(each)).join(', ')}`;

function wanted(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `it has to be ${needed[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return oneOf(issue.values);
    case 'too_small':
      return issue.origin === 'string' ? 'it has to say something' : `it has to be ${issue.minimum} or more`;
    case 'too_big':
      return `it has to be ${issue.maximum} or less${issue.origin === 'string' ? ' letters' : ''}`;
    case 'invalid_union': {
      const literals = issue.errors.flatMap((branch) =>
        branch.flatMap((each) => (each.code === 'invalid_value' && each.path.length === 0 ? each.values : [])),
      );
      if (literals.length >= issue.errors.length) return oneOf(literals);
      return 'this is none of the forms that can stand here';
    }
    default:
      return issue.message;
  }
}

/** @param data the file as it was read, before it was checked */
export function plainIssue(issue: Issue, data: unknown): PlainIssue {
  const inner = innermost(issue, data);
  const path = inner.path.filter((step) => typeof step !== 'symbol');
  const name = path.findLast((step) => typeof step === 'string') ?? 'the file';
  if (inner.issue.code === 'unrecognized_keys') {
    const [key = ''] = inner.issue.keys;
    return { path: [...path, key], reason: `"${key}" is not known here.` };
  }
  const value = valueAt(data, path);
  if (value === undefined) return { path, reason: `"${name}" is missing: ${wanted(inner.issue)}.` };
  return { path, reason: `In "${name}" stands ${found(value)}, but ${wanted(inner.issue)}.` };
}
