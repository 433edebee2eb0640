/** Every place of the window's source where words can be typed, so that a walk can tell which of them it did not reach. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'svelte/compiler';

const root = fileURLToPath(new URL('../../../', import.meta.url));

export interface FieldPlace {
  /** 'renderer/window/…/GoalForm.svelte:86', as Svelte's development build names it. */
  at: string;
  /** Its label as the source says it, or the tag. */
  says: string;
}

/** Components that are a field themselves: each use of one is a place of its own, their own inside is none. */
const FIELDS = new Set(['Field', 'NumberField', 'LengthField', 'ReadingsField', 'NewPassphrase']);
/** Inputs that take no words. */
const WORDLESS = /^(checkbox|radio|range|color|file|button|submit|hidden|date|time|month)$/;

interface Node {
  type?: string;
  name?: string;
  start?: number;
  attributes?: Node[];
  value?: unknown;
}

/** A literal text of an attribute; the expression as it is written; undefined where there is none. */
function said(node: Node, name: string, source: string): string | undefined {
  const attribute = node.attributes?.find((each) => each.type === 'Attribute' && each.name === name);
  if (!attribute) return undefined;
  const value = Array.isArray(attribute.value) ? attribute.value[0] : attribute.value;
  const { start, end, type, data } = (value ?? {}) as { start?: number; end?: number; type?: string; data?: string };
  if (type === 'Text') return data;
  return start === undefined ? '' : source.slice(start, end);
}

function takesWords(node: Node, source: string): boolean {
  const has = (name: string) => said(node, name, source) !== undefined;
  if (node.type === 'Component') {
    // A choice from a list and a day take no words.
    return FIELDS.has(node.name!) && !has('options') && !WORDLESS.test(said(node, 'type', source) ?? '');
  }
  if (node.type !== 'RegularElement') return false;
  if (node.name === 'textarea') return !has('readonly');
  if (node.name === 'input') return !has('readonly') && !WORDLESS.test(said(node, 'type', source) ?? 'text');
  return has('contenteditable');
}

function* nodes(value: unknown): Generator<Node> {
  if (Array.isArray(value)) for (const each of value) yield* nodes(each);
  else if (typeof value === 'object' && value !== null) {
    if ('type' in value) yield value as Node;
    for (const each of Object.values(value)) yield* nodes(each);
  }
}

/** All places, by file and line. */
export function fieldPlaces(): FieldPlace[] {
  const folder = path.join(root, 'renderer/window');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.svelte'));
  return files.sort().flatMap((file) => {
    if (FIELDS.has(path.basename(file, '.svelte'))) return [];
    const source = readFileSync(path.join(folder, file), 'utf8');
    return [...nodes(parse(source, { modern: true }).fragment)]
      .filter((node) => takesWords(node, source))
      .map((node) => ({
        at: `renderer/window/${file.replaceAll(path.sep, '/')}:${source.slice(0, node.start).split('\n').length}`,
        says: said(node, 'label', source) ?? said(node, 'aria-label', source) ?? `<${node.name}>`,
      }));
  });
}
