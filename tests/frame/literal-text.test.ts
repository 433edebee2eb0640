/** What a screen says stands in the catalogue (renderer/logic/texts/screens), never in a .svelte file. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'svelte/compiler';
import { expect, test } from 'vitest';

const folder = fileURLToPath(new URL('../../renderer/window/', import.meta.url));
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.svelte'))
  .map((file) => file.replaceAll(path.sep, '/'));

/** Printed for the client to read in a test whose words are measured in English: no words of a screen. */
const PRINTED_TESTS = ['intake/TestSheets.svelte'];

/** The same in every language: the program's name, units, keys, names of formats and papers. */
const SAME =
  /^(Fairhand|F|airhand|Ctrl|Alt|Ctrl\+Enter|F6|Tab|Esc|Enter|A4|Aa|mm|cm|m|s|ms|min|h|kg|Hz|pt|px|dpi|kB|MB|PDF|CSV|FHIR|JSON|n|N|[A-Za-z])$/;

interface Node {
  type: string;
  [key: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';

const wordsIn = (text: string): string[] =>
  text.split(/[^\p{L}+\d’]+/u).filter((word) => /\p{L}/u.test(word) && !SAME.test(word) && !/^\d+[a-z]?$/.test(word));

/** A string that a person would read: a sentence, or a word with a capital. Codes, classes and selectors are neither. */
const readsAsProse = (text: string): boolean =>
  wordsIn(text).length > 0 &&
  !/^Mx|[[\]{}<>=#|]|--|\((-?[a-z]|-?\d+%)|deg\)|^[.:/]|\bminmax|\dfr\b|\w:\w|\.\w+ /.test(text) &&
  (/^[A-Z“][a-z’]+([.:?…]|$)/.test(text.trim()) || /[a-zA-Z’”,.;:)] +[A-Za-z“(]/.test(text.trim()));

const TEXT_ATTRIBUTES =
  /^(title|aria-label|aria-description|aria-valuetext|placeholder|alt|label|hint|caption|legend)$/;
/** Values that the window compares or hands on, never shows. */
const NOT_SHOWN = new Set([
  'ImportDeclaration',
  'SwitchCase',
  'StyleSheet',
  'StyleDirective',
  'Comment',
  'ExportAllDeclaration',
]);
const CODE_ATTRIBUTES =
  /^(class|style|columns|id|d|points|transform|viewBox|preserveAspectRatio|autocomplete|aria-keyshortcuts|suggestions|onkeydown|value)$/;
/** Keys of a keyboard event, files and queries. */
const CODE_CALLS =
  /^(closest|matches|querySelector|querySelectorAll|matchMedia|MediaQuery|includes|startsWith|endsWith|split|replace|test|shortcut|useStep)$/;

function literals(node: unknown, found: string[], shown = false): void {
  if (Array.isArray(node)) return node.forEach((one) => literals(one, found, shown));
  if (!isNode(node)) return;
  if (NOT_SHOWN.has(node.type) || node.type.startsWith('TS')) {
    if (isNode(node['expression'])) literals(node['expression'], found, shown);
    return;
  }
  if (node.type === 'Text') {
    if (wordsIn(node['data'] as string).length > 0) found.push((node['data'] as string).trim());
    return;
  }
  if (node.type === 'Attribute') {
    const name = node['name'] as string;
    if (CODE_ATTRIBUTES.test(name)) return;
    const parts = (Array.isArray(node['value']) ? node['value'] : [node['value']]).filter(isNode);
    for (const part of parts) {
      if (part.type !== 'Text') literals(part, found, TEXT_ATTRIBUTES.test(name));
      else if (
        TEXT_ATTRIBUTES.test(name) ? wordsIn(part['data'] as string).length : readsAsProse(part['data'] as string)
      )
        found.push(`${name}="${part['data'] as string}"`);
    }
    return;
  }
  if (node.type === 'Literal' && typeof node['value'] === 'string') {
    if (readsAsProse(node['value'])) found.push(node['value']);
    return;
  }
  if (node.type === 'TemplateLiteral') {
    const said = (node['quasis'] as { value: { cooked: string } }[]).map((part) => part.value.cooked).join('x');
    if (readsAsProse(said)) found.push(said);
    return literals(node['expressions'], found, shown);
  }
  if (node.type === 'BinaryExpression' && /[=<>]|in/.test(node['operator'] as string)) return;
  if (node.type === 'Property' && /^(key|keys|value|id|code|family)$/.test(String((node['key'] as Node)['name'])))
    return;
  if (node.type === 'CallExpression' || node.type === 'NewExpression') {
    const callee = node['callee'] as Node;
    const name = (callee['name'] ?? (callee['property'] as Node | undefined)?.['name']) as string;
    literals(callee, found, shown);
    if (!CODE_CALLS.test(name)) literals(node['arguments'], found, shown);
    return;
  }
  for (const [key, inner] of Object.entries(node))
    if (!['css', 'loc', 'typeAnnotation', 'metadata', 'parent'].includes(key) && typeof inner === 'object')
      literals(inner, found, shown);
}

export const literalsOf = (source: string): string[] => {
  const found: string[] = [];
  const { fragment, instance, module } = parse(source, { modern: true });
  for (const part of [fragment, instance?.content, module?.content]) literals(part, found);
  return found;
};

test.each(files.filter((file) => !PRINTED_TESTS.includes(file)))('%s holds no literal text', (file) => {
  expect(literalsOf(readFileSync(path.join(folder, file), 'utf8'))).toEqual([]);
});

test('the check itself sees text, attributes, props, conditions and sentences in scripts', () => {
  const source = `<script lang="ts">const said = 'Saved twice.'; const code = 'line-1';</script>
    <p title="Lines">{said} of {code === 'Other words' ? 'Two lines' : \`Read \${code} lines\`}</p><Part hint="words" />5 mm`;
  expect(literalsOf(source)).toEqual([
    'title="Lines"',
    'of',
    'Two lines',
    'Read x lines',
    'hint="words"',
    'Saved twice.',
  ]);
});
