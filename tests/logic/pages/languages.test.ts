/** Pages in other languages: no shipped caution or title stays English, and what is unsafe is known in any of them. */
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { stopItems } from '../../../renderer/logic/pages/kinds/family-sections.ts';
import { languages } from '../../../renderer/logic/texts/languages.ts';
import { rulings } from '../../../renderer/logic/pages/practice/ruling-drawings.ts';
import { printedPractice } from '../../../renderer/logic/pages/sheet/printed-practice.ts';
import { refusedByGate } from '../../../renderer/logic/program/print-gate.ts';
import type { DocSheet } from '../../../renderer/logic/pages/sheet/packet.ts';
import { programLine, record } from './record.ts';

const rules = rulesInUse(null);
const others = Object.entries(languages).filter(([code]) => code !== 'en');

test.each(others)('every caution and title that a program can carry is there: %s', (_, { shipped }) => {
  const carried = new Set(
    [...rules.items]
      .flatMap((item) => item.cautions)
      .map((code) => rules.cautionTexts.find((c) => c.code === code)!.text),
  );
  for (const text of carried) expect(shipped, text).toHaveProperty([text]);
  // What to write has its own language.
  for (const { title, text, kind, code, versions, additions } of rules.items) {
    if (kind === 'content' && code !== 'picture-sheet') continue;
    expect(shipped, title).toHaveProperty([title]);
    expect(shipped, text).toHaveProperty([text]);
    for (const each of [...versions, ...additions]) expect(shipped, each.text).toHaveProperty([each.text]);
  }
  for (const { title, text } of rules.papers) {
    expect(shipped, title).toHaveProperty([title]);
    expect(shipped, text).toHaveProperty([text]);
  }
  // Nothing is translated that no rule says any more, and no two titles become one.
  const said = new Set([
    ...rules.cautionTexts.map((c) => c.text),
    ...rules.items.flatMap((i) => [i.title, i.text, ...[...i.versions, ...i.additions].map((each) => each.text)]),
    ...rules.papers.flatMap((p) => [p.title, p.text]),
  ]);
  for (const text of Object.keys(shipped)) expect(said, text).toContain(text);
  expect(new Set(Object.values(shipped)).size).toBe(Object.keys(shipped).length);
});

test('the practice on a page is known by its line, whatever the language or the wording', () => {
  const step = { lineId: 'a', title: 'Abrir la mano', text: '', dose: '', cautions: [], drawing: null };
  const sheet = { type: 'doc', sections: [{ key: 'practice', title: '', blocks: [{ kind: 'steps', items: [step] }] }] };
  const printed = printedPractice({ sheets: [sheet as unknown as DocSheet] });
  expect(printed).toEqual([{ lineId: 'a', title: 'Abrir la mano', kind: 'step' }]);
  const safe = (id: string) => ({ stopped: false, allowed: new Map([[id, '']]) });
  expect(refusedByGate(printed, safe('a'))).toBeNull();
  expect(refusedByGate(printed, safe('b'))).toBe('Abrir la mano');
  expect(refusedByGate([{ ...printed[0]!, lineId: null }], safe('a'))).toBe('Abrir la mano');
  expect(refusedByGate(printed, { ...safe('a'), stopped: true })).toBe('a red flag is open');
});

test('cautions that the general signs say stronger are not said twice, in no language', () => {
  const general = 'Stop if you feel dizzy, or if your arm tingles.';
  expect(rules.cautionTexts.map((c) => c.text)).toContain(general);
  for (const { shipped, texts } of Object.values(languages)) {
    const [program] = record((r) => {
      r.programs[0]!.lines = [programLine({ cautions: [shipped[general] ?? general, 'Own caution.'] })];
    }).programs;
    expect(stopItems(program!, texts)).toEqual([
      texts.stop.line,
      'Own caution.',
      texts.stop.signs,
      texts.stop.emergency,
    ]);
  }
});

test('every paper has its name in every language but the table’s own', () => {
  const kinds = new Set(Object.values(rulings).map(({ kind }) => kind));
  for (const [language, { texts }] of Object.entries(languages))
    if (language !== 'en') expect([...kinds].filter((kind) => texts.practice.papers[kind] === undefined)).toEqual([]);
});
