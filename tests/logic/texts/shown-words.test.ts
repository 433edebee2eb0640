/** Words of the rule table on the screens: each has its Spanish and German; what is kept in English is told anew. */
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import printedDe from '../../../db/rules/texts/de.json' with { type: 'json' };
import printedEs from '../../../db/rules/texts/es.json' with { type: 'json' };
import rowsDe from '../../../db/rules/texts/screens/de.json' with { type: 'json' };
import rowsEs from '../../../db/rules/texts/screens/es.json' with { type: 'json' };
import { decimalsIn } from '../../../renderer/logic/texts/decimals.ts';
import { retold } from '../../../renderer/logic/texts/retold.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { inWords, tableWordsIn, type TableWords } from '../../../renderer/logic/texts/table-words.ts';
import { textDigest } from '../../../renderer/logic/texts/text-digest.ts';

const rules = rulesInUse(null);
const files = { es: { rows: rowsEs, printed: printedEs }, de: { rows: rowsDe, printed: printedDe } };

/** Texts that a screen shows of the table: with a space, or a word with a capital; texts to write are in their own language. */
const shown = new Set<string>();
inWords(
  {
    intake: rules.intake,
    flags: [rules.redFlagTable, rules.redFlags, rules.flagsFromAnswers, rules.flagRules],
    vocabulary: rules.vocabulary,
    ladder: [rules.goalLadder, rules.occasionRungs],
    rules: rules.rules.map(({ because, advance, stepBack, sourceNote }) => [because, advance, stepBack, sourceNote]),
    vetoes: rules.vetoes.map(({ because, sourceNote }) => [because, sourceNote]),
    tiers: rules.tiers.map(({ name, entry, exit }) => [name, entry, exit]),
    clashes: rules.clashes.map(({ name }) => name),
    items: rules.items.filter(({ ref }) => ref?.kind !== 'content'),
    cautions: rules.cautionTexts.map(({ text }) => text),
    thresholds: rules.thresholds.filter(({ min, max }) => min < max).map(({ name, sourceNote }) => [name, sourceNote]),
  },
  (text) => {
    if (/\s/.test(text) || /^[A-Z][a-z]/.test(text)) shown.add(text);
    return text;
  },
);

test.each(['es', 'de'] as const)('%s: every text of the table that a screen shows is told', (language) => {
  const { rows, printed } = files[language];
  const digests = new Set(Object.values(printed).map(({ english }) => english));
  expect([...shown].filter((text) => !Object.hasOwn(rows, text) && !digests.has(textDigest(text)))).toEqual([]);
});

const tell = (language: 'es' | 'de'): TableWords => {
  const { told } = screensIn(language);
  return retold(
    { ...toldEnglish.draft, ...toldEnglish.printed },
    { ...told.draft, ...told.printed },
    tableWordsIn(files[language].rows, files[language].printed),
  );
};

test('what a program keeps in English is told in other words, its names too', () => {
  const { draft } = toldEnglish;
  expect(tell('es')(draft.notTested('"Pen grasp", "Skin and swelling"'))).toBe(
    'No probado no es seguro: "Agarre del bolígrafo", "Piel e hinchazón".',
  );
  expect(tell('de')(draft.upAndBack('Measure again.', 'Slower.'))).toBe('Vor: Noch einmal messen. Zurück: Langsamer.');
  // Reasons of two rules, one behind the other.
  const [a, b] = [rules.rules[0]!.because, rules.rules[2]!.because];
  expect(tell('de')(`${a} ${b}`)).toBe(`${tell('de')(a)} ${tell('de')(b)}`);
  expect(tell('de')(a)).not.toBe(a);
});

test('own words stay as they are, also between sentences that are told', () => {
  expect(tell('es')('Our own words. And more of them.')).toBe('Our own words. And more of them.');
});

test.each(['es', 'de'] as const)('%s: every reason and veto that a draft can keep is told', (language) => {
  const left = [...rules.rules, ...rules.vetoes]
    .map(({ because }) => because)
    .filter((text) => tell(language)(text) === text);
  expect(left).toEqual([]);
});

test('numbers are written with the decimal mark of the language', () => {
  expect([2.5, 3, 0.125].map((value) => decimalsIn('de')(value, 2, 0))).toEqual(['2,5', '3', '0,13']);
  expect(decimalsIn('es')(1234.5, 1)).toBe('1234,5');
  expect(decimalsIn('en')(2, 1)).toBe('2.0');
});
