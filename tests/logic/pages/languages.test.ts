/** Pages in other languages: no shipped caution or title stays English, and what is unsafe is known in any of them. */
import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { stopItems } from '../../../renderer/logic/pages/kinds/family-sections.ts';
import { practiceRequestOf } from '../../../renderer/logic/pages/practice/practice-request.ts';
import { rulingLabel, rulings } from '../../../renderer/logic/pages/practice/ruling-drawings.ts';
import { buildPacket } from '../../../renderer/logic/pages/sheet/build-packet.ts';
import { textsOf } from '../../../renderer/logic/pages/sheet/fit-sheets.ts';
import type { DocSheet, Packet } from '../../../renderer/logic/pages/sheet/packet.ts';
import { emptyWords } from '../../../renderer/logic/pages/sheet/page-choices.ts';
import { printedPractice } from '../../../renderer/logic/pages/sheet/printed-practice.ts';
import { added } from '../../../renderer/logic/program/clinic/edit-lines.ts';
import { compose } from '../../../renderer/logic/program/draft/compose.ts';
import { refusedByGate } from '../../../renderer/logic/program/print-gate.ts';
import { decimalsIn } from '../../../renderer/logic/texts/decimals.ts';
import { doseHows } from '../../../renderer/logic/texts/dose-hows.ts';
import { type Language, languages } from '../../../renderer/logic/texts/languages.ts';
import { speakerOf } from '../../../renderer/logic/texts/said-line.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';
import { textDigest } from '../../../renderer/logic/texts/text-digest.ts';
import {
  additionKey,
  cautionKey,
  englishTexts,
  howKey,
  type TextKey,
  textKey,
  titleKey,
} from '../../../renderer/logic/texts/text-keys.ts';
import DocPage from '../../../renderer/window/pages/DocPage.svelte';
import { speak } from '../../../renderer/window/parts/say.svelte.ts';
import { client } from '../program/support.ts';
import { input as pageInput, programLine, record } from './record.ts';

// The window's own words come with its desk; here there is none.
await speak('en');

const rules = rulesInUse(null);
const english = englishTexts(rules);
const others = Object.keys(languages).filter((code) => code !== 'en');

/** Keys of what a program line can carry. What to write has its own language. */
function carriedKeys(): TextKey[] {
  const items = rules.items.filter(({ ref }) => ref?.kind !== 'content');
  return [
    'phrase.letters-on-sheet',
    ...items.flatMap(({ code, versions, additions }) => [
      titleKey(code),
      textKey(code, null),
      ...versions.map((each) => textKey(code, each.code)),
      ...additions.map((each) => additionKey(code, each.code)),
    ]),
    ...new Set(
      items
        .flatMap(({ cautions, versions }) => [...cautions, ...versions.flatMap((each) => each.cautions)])
        .map(cautionKey),
    ),
    ...rules.cautionTexts
      .filter(({ on, when }) => on === 'hand' || (on === 'page' && when !== null))
      .map(({ code }) => cautionKey(code)),
    ...Object.keys(doseHows).map(howKey),
  ];
}

test.each(others)(
  'every text that a program can carry is there, made from the English as it is now: %s',
  (language) => {
    const rows = rules.translations[language]!;
    const stale = carriedKeys().filter((key) => rows[key]?.english !== textDigest(english.get(key)!));
    // See `node build/gates/translations.ts`.
    expect(stale).toEqual([]);
    expect(Object.keys(rows).filter((key) => !english.has(key as TextKey))).toEqual([]);
    // No two English texts become one.
    const from = new Map<string, Set<string>>();
    for (const [key, { text }] of Object.entries(rows))
      from.set(text, (from.get(text) ?? new Set()).add(english.get(key as TextKey)!));
    expect([...from].filter(([, texts]) => texts.size > 1)).toEqual([]);
  },
);

const input = { ...client({ 'finger-isolation': 2, 'legibility-unfamiliar': 2 }), canWrite: 'yes' as const };
const drafted = compose(input, rules).lines;

const choices = {
  pt: 16 as const,
  withPictures: false,
  withLog: false,
  withCard: false,
  withPractice: false,
  withDrawings: true,
  language: 'es' as const,
  withEnglish: false,
  words: emptyWords(),
  withDaily: false,
  withFurther: false,
};

/** The home program of the drafted lines in another language. */
function inOther(language: Language, inUse: RulesInUse, lines = drafted): Packet {
  const from = pageInput({ record: record((r) => void (r.programs[0]!.lines = [...lines])) });
  const practice = practiceRequestOf(from, inUse, languages[language].texts);
  return buildPacket('home-program', from, { ...choices, practice, language }, inUse);
}
const spanish = (inUse: RulesInUse, lines = drafted): Packet => inOther('es', inUse, lines);
const htmlOfSheets = (packet: Packet): string =>
  packet.sheets
    .flatMap((model) => (model.type === 'doc' ? [model] : []))
    .map((model) => render(DocPage, { props: { model, index: 0, blobUrl: String } }).body)
    .join('');

test.each(others)('a draft prints whole: titles, texts, cautions and doses: %s', (language) => {
  expect(drafted.length).toBeGreaterThan(5);
  const packet = inOther(language as Language, rules);
  const printed = packet.sheets.flatMap((sheet) => (sheet.type === 'doc' ? textsOf(sheet) : [])).join('\n');
  for (const { title, cautions } of drafted.filter(({ kind }) => kind !== 'content'))
    for (const words of [title, ...cautions]) expect(printed).not.toContain(words);
  expect(packet.sheets.some((sheet) => sheet.type === 'doc' && sheet.english !== undefined)).toBe(false);
  // Only what stands in the record in English is marked as of another language.
  const typed = ['Copy one line at a time.', 'Only twice.', 'Jo at the clinic, 555 0100.'];
  for (const [, words] of htmlOfSheets(packet).matchAll(/<mark lang="en">([^<]*)/g)) expect(typed).toContain(words);
  expect(packet.warnings.join(' ')).not.toContain('In English');
});

test.each(['en', ...others])('every sheet of a program that nobody co-signed says so: %s', (language) => {
  const waits = { recordedBy: 'AS', signedBy: null, signedAt: null };
  const of = (coSign: { recordedBy: string; signedBy: string | null; signedAt: null }) => {
    const from = pageInput({
      record: record((r) => void Object.assign(r.programs[0]!, { status: 'draft', approvedAt: null, coSign })),
    });
    const { texts } = languages[language as Language];
    const all = { ...choices, withPractice: true, withLog: true, withCard: true, language: language as Language };
    const practice = practiceRequestOf(from, rules, texts);
    return buildPacket('home-program', from, { ...all, practice }, rules);
  };
  const { texts } = languages[language as Language];
  const states = (packet: Packet) =>
    packet.sheets.map((sheet) => (sheet.type === 'practice' ? sheet.state : 'foot' in sheet ? sheet.foot : ''));
  expect(new Set(of(waits).sheets.map(({ type }) => type))).toEqual(new Set(['doc', 'log', 'practice']));
  for (const state of states(of(waits))) expect(state).toContain(texts.program.notCoSigned);
  expect(of(waits).warnings.join(' ')).toContain('nobody has co-signed it');
  expect(JSON.stringify(of(waits).sheets)).toContain(texts.program.preparedBy('AS', null));
  const signed = of({ ...waits, signedBy: 'QM' });
  for (const state of states(signed)) expect(state ?? '').not.toContain(texts.program.notCoSigned);
  expect(JSON.stringify(signed.sheets)).toContain(texts.program.preparedBy('AS', 'QM'));
});

test('an English text that changed after its Spanish was written prints in English, marked as English, and is told', () => {
  const [line] = drafted.filter(({ keys, kind }) => keys?.text.length === 1 && kind === 'writing');
  const changed = {
    ...rules,
    items: rules.items.map((item) =>
      item.code === line!.item ? { ...item, title: 'Now do it slowly', text: 'Only twice.' } : item,
    ),
  };
  const packet = spanish(changed, compose(input, changed).lines);
  expect(packet.warnings).toContainEqual(
    'In English, because the words were changed after the Spanish was written: “Now do it slowly”, “Only twice.”.',
  );
  expect(htmlOfSheets(packet)).toContain('<mark lang="en">Now do it slowly</mark>');
  // Nothing else falls back with it.
  const others = packet.sheets.flatMap((sheet) => (sheet.type === 'doc' ? (sheet.english ?? []) : []));
  expect(new Set(others)).toEqual(new Set(['Now do it slowly', 'Only twice.']));
});

test('a text that the language has no words for prints in English and is told', () => {
  const { [titleKey(drafted[0]!.item!)]: _, ...rest } = rules.translations['es']!;
  const packet = spanish({ ...rules, translations: { es: rest } });
  expect(packet.warnings).toContainEqual(`In English, because Fairhand has no Spanish for it: “${drafted[0]!.title}”.`);
});

test('what the therapist worded anew stays as it is, without a word of another version', () => {
  const own = drafted.map((line, i) =>
    i === 0 ? { ...line, title: 'Mi título', text: 'My own words.', edited: true } : line,
  );
  const said = speakerOf(rules, 'es').line(own[0]!);
  expect([said.title, said.text]).toEqual(['Mi título', 'My own words.']);
  expect(spanish(rules, own).warnings.join(' ')).not.toContain('In English');
});

test('letters that were not known are said in the page’s language too', () => {
  const item = rules.items.find(({ text }) => text.includes('{letters}'))!;
  const line = added([], item.code, { ...input, confusions: [] }, rules, '00000000-0000-4000-8000-000000000001')[0]!;
  expect(line.text).toContain('those on your sheet');
  const { text } = speakerOf(rules, 'es').line(line);
  expect(text).toContain('las de su hoja');
  const known = { ...input, confusions: [{ intended: 'a', read: 'o', count: 3 }] };
  const named = added([], item.code, known, rules, '00000000-0000-4000-8000-000000000001')[0]!;
  expect(speakerOf(rules, 'es').line(named).text).toMatch(/letras: a\./);
});

test('the practice on a page is known by its line, whatever the language or the wording', () => {
  const step = { lineId: 'a', title: 'Abrir la mano', text: '', dose: '', cautions: [], drawing: null };
  const sheet = { type: 'doc', sections: [{ key: 'practice', title: '', blocks: [{ kind: 'steps', items: [step] }] }] };
  const printed = printedPractice({ sheets: [sheet as unknown as DocSheet] });
  expect(printed).toEqual([{ lineIds: ['a'], title: 'Abrir la mano', kind: 'step' }]);
  const safe = (id: string) => ({ stopped: false, hasProgram: true, allowed: new Map([[id, '']]) });
  expect(refusedByGate(printed, safe('a'))).toBeNull();
  expect(refusedByGate(printed, safe('b'))).toBe('Abrir la mano');
  expect(refusedByGate([{ ...printed[0]!, lineIds: null }], safe('a'))).toBe('Abrir la mano');
  expect(refusedByGate(printed, { ...safe('a'), stopped: true })).toBe('a red flag is open');
  // A sheet to write on names the lines it is for; without a program it is paper, and only red flags stop it.
  const lined = (lineIds: string[] | null) => [{ lineIds, title: 'Practice page', kind: 'sheet' as const }];
  expect(refusedByGate(lined(['a']), safe('a'))).toBeNull();
  expect(refusedByGate(lined(['a', 'b']), safe('a'))).toBe('Practice page');
  expect(refusedByGate(lined([]), safe('a'))).toBe('Practice page');
  expect(refusedByGate(lined([]), { ...safe('a'), hasProgram: false })).toBeNull();
  expect(refusedByGate(lined(null), { ...safe('a'), hasProgram: false })).toBe('Practice page');
});

test('cautions that the general signs say stronger are not said twice, in no language', () => {
  const general = rules.cautionTexts.find(({ code }) => code === 'stop-tingle')!.text;
  const keys = { text: [], letters: [], words: [], cautions: ['stop-tingle', ''] };
  for (const [language, { texts }] of Object.entries(languages)) {
    const line = programLine({ item: 'neck-turns', keys, cautions: [general, 'Own caution.'] });
    const lines = [language === 'en' ? line : speakerOf(rules, language).line(line)];
    const [program] = record((r) => void (r.programs[0]!.lines = lines)).programs;
    expect(stopItems(program!, texts)).toEqual([
      texts.stop.line,
      'Own caution.',
      texts.stop.signs,
      texts.stop.emergency,
    ]);
    // Whoever hurts already would never write if mild pain were the end.
    const hurting = {
      ...program!,
      lines: [programLine({ item: 'neck-turns', keys: { ...keys, cautions: ['stop-pain-more', 'own'] } })],
    };
    expect(stopItems(hurting, texts)).toContain(texts.stop.signsSore);
    expect(stopItems(hurting, texts)).not.toContain(texts.stop.signs);
  }
});

test('every paper has its own name in every language', () => {
  const rulingCodes = Object.keys(rulings) as (keyof typeof rulings)[];
  const namesIn = (language: Language): string[] =>
    rulingCodes.map((code) => rulingLabel(code, screensIn(language).told.paper, decimalsIn(language)));
  const all = (Object.keys(languages) as Language[]).map(namesIn);
  for (const names of all) expect(new Set(names).size).toBe(rulingCodes.length);
  for (const [i] of rulingCodes.entries()) expect(new Set(all.map((names) => names[i])).size).toBe(all.length);
  expect(all.flat().filter((name) => /undefined|^\s*$/.test(name))).toEqual([]);
});

test.each(Object.entries(languages))(
  'sudden dizziness is for the emergency number, and this client’s own sentences print, on every page: %s',
  (language, { texts }) => {
    const from = pageInput({
      record: record((r) => {
        const codes = ['dizziness', 'heat-sensitive', 'unstable-shoulder'];
        r.client.precautions = codes.map((code) => ({ code, text: '' }));
      }),
    });
    const practice = practiceRequestOf(from, rules, texts);
    const own = ['page-dizzy', 'page-heat', 'page-shoulder'].map((code) =>
      language === 'en' ? english.get(cautionKey(code))! : rules.translations[language]![cautionKey(code)]!.text,
    );
    for (const kind of ['family-summary', 'home-program', 'caregiver'] as const) {
      const packet = buildPacket(kind, from, { ...choices, practice, language: language as Language }, rules);
      const printed = packet.sheets.flatMap((sheet) => (sheet.type === 'doc' ? textsOf(sheet) : []));
      for (const words of [...own, texts.stop.emergency]) expect(printed.join('\n'), kind).toContain(words);
      const called = printed.find((words) => words.includes(texts.stop.emergency))!;
      expect(called).toMatch(/sudden or new dizziness|mareo súbito o nuevo|plötzlicher oder neuer Schwindel/);
      // The signs for a call to the clinic name no dizziness.
      expect(texts.stop.signs).not.toMatch(/dizz|mareo|Schwindel/i);
      expect(packet.warnings.join(' ')).not.toContain('In English');
    }
  },
);
