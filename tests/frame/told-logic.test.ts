/**
 * What logic says to a therapist stands in the catalogue (renderer/logic/texts/screens/<language>/told), never in the rooms
 * that decide. A room that is done is listed here and stays so.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { expect, test } from 'vitest';

const logic = fileURLToPath(new URL('../../renderer/logic/', import.meta.url));

/** Rooms and folders whose sentences come from the catalogue. */
const DONE = [
  ...['caseload', 'record', 'sample', 'readback', 'progress'],
  ...['intake', 'setup', 'goals', 'rules', 'program', 'pages/sheet', 'pages/practice'],
];

/** Files that speak English on purpose, and why. */
const ENGLISH: Readonly<Record<string, string>> = {
  'caseload/figures-csv.ts': 'heads of an exported table',
  'record/co-sign.ts': 'a line of a clinical page',
  'record/measure-values.ts': 'a method as it is exported',
  'intake/shopping-page.ts': 'the words of a test sheet, the same for every client',
  'program/clinic/hazard-words.ts': 'words of an English text that give a hazard away',
  'program/clinic/rule-forms.ts': 'a stored row of the rule table',
  'program/clinic/own-item.ts': 'a stored row of the rule table',
  'program/facts/read-findings.ts': 'refusals of the command line',
  'pages/sheet/words-language.ts': 'small words of each language',
  'pages/practice/ruling-drawings.ts': 'sources',
  'pages/practice/letter-styles.ts': 'names and licenses of letter styles',
  'pages/practice/sheet-sizes.ts': 'names of papers in messages of the command line',
};

/** Two words at least, as a person would read them: no code, selector or path. */
const readsAsProse = (text: string): boolean =>
  /\p{L}{2,}[ ,:;.’'”"]+ ?\p{L}{2,}/u.test(text) && / /.test(text.trim()) && !/^[a-z-]+( [a-z-]+)?$/.test(text.trim());

function proseOf(source: string): string[] {
  const found: string[] = [];
  const file = ts.createSourceFile('x.ts', source, ts.ScriptTarget.Latest, true);
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isTypeNode(node)) return;
    // What is thrown reaches a log or a sentence of the contract.
    if (ts.isThrowStatement(node)) return;
    if (ts.isStringLiteralLike(node) && readsAsProse(node.text)) found.push(node.text);
    if (ts.isTemplateExpression(node)) {
      const text = [node.head.text, ...node.templateSpans.map((span) => span.literal.text)].join('x');
      if (readsAsProse(text)) found.push(text);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const files = DONE.flatMap((room) =>
  readdirSync(path.join(logic, room), { recursive: true, encoding: 'utf8' })
    .map((file) => `${room}/${file.replaceAll(path.sep, '/')}`)
    .filter((file) => file.endsWith('.ts') && !(file in ENGLISH)),
);

test.each(files)('%s takes its sentences from the catalogue', (file) => {
  expect(proseOf(readFileSync(path.join(logic, file), 'utf8'))).toEqual([]);
});

test('the check itself sees sentences in strings and templates, and no codes', () => {
  const source = "const a = 'Seat first.'; const b = `Raise it by ${n} mm.`; const c = 'set-up'; const d = 'row open';";
  expect(proseOf(source)).toEqual(['Seat first.', 'Raise it by x mm.']);
});
