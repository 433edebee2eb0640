/**
 * `npx node build/gates/translations.ts es`: texts of a language that are missing, or whose English has changed since,
 * with both. Named behind it (`… es item.lists.title`), a key is taken as checked against the English of today.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { rulesInUse } from '../../db/rules/in-use.ts';
import { textDigest } from '../../renderer/logic/texts/text-digest.ts';
import { englishTexts } from '../../renderer/logic/texts/text-keys.ts';

const [language = '', ...checked] = process.argv.slice(2);
const file = new URL(`../../db/rules/texts/${language}.json`, import.meta.url);
const rows = JSON.parse(readFileSync(file, 'utf8')) as Record<string, { english: string; text: string }>;
const rules = rulesInUse(null);
const ownLanguage = new Set(rules.items.filter(({ ref }) => ref?.kind === 'content').map(({ code }) => code));
// Sentences for every client's page are texts of the page itself (renderer/logic/texts).
const printed = (row: (typeof rules.cautionTexts)[number]): boolean =>
  row.on === 'item' || row.on === 'hand' || (row.on === 'page' && row.when !== null);
const unused = new Set(rules.cautionTexts.filter((row) => !printed(row)).map(({ code }) => code));
const english = englishTexts({
  items: rules.items.filter(({ code }) => !ownLanguage.has(code)),
  cautionTexts: rules.cautionTexts.filter(({ code }) => !unused.has(code)),
});

for (const key of checked) {
  const text = [...english].find(([each]) => each === key)?.[1];
  if (text === undefined || !rows[key]) throw new Error(`There is no text ${key} to check.`);
  rows[key].english = textDigest(text);
}
if (checked.length > 0) {
  const sorted = Object.entries(rows).sort(([a], [b]) => (a < b ? -1 : 1));
  writeFileSync(file, `${JSON.stringify(Object.fromEntries(sorted), null, 2)}\n`);
}
for (const [key, text] of english) {
  const row = rows[key];
  if (row?.english !== textDigest(text))
    console.log(`${key}\n  en: ${text}\n  ${language}: ${row?.text ?? '(missing)'}`);
}
for (const key of Object.keys(rows))
  if (![...english.keys()].some((each) => each === key)) console.log(`${key}: no such text`);
