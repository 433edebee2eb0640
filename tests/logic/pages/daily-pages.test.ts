import { describe, expect, it } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { OccasionCode, WritingOccasion } from '../../../db/types/occasions.ts';
import {
  dailyPages,
  mostPages,
  practiceDays,
  wordsToMend,
} from '../../../renderer/logic/pages/practice/daily-pages.ts';
import { practiceSheets } from '../../../renderer/logic/pages/practice/practice.ts';
import { practiceRequestOf } from '../../../renderer/logic/pages/practice/practice-request.ts';
import type { PageInput } from '../../../renderer/logic/pages/sheet/page-facts.ts';
import { itemOfOccasion } from '../../../renderer/logic/record/writing-occasions.ts';
import { sentenceKey } from '../../../renderer/logic/sample/fill-frame.ts';
import { languages } from '../../../renderer/logic/texts/languages.ts';
import { clientId, id, input, programLine, record, visitIds } from './record.ts';

const rules = rulesInUse(null);
const at = '2026-04-15T09:00:00.000Z';
const t = languages.en.texts;

const occasion = (code: OccasionCode, more: Partial<WritingOccasion> = {}): WritingOccasion => ({
  id: id(),
  at,
  by: 'JM',
  clientId,
  code,
  on: true,
  words: [],
  topics: ['cooking'],
  often: 'weekly',
  example: '',
  ...more,
});

/** A client who wants these occasions, with their lines in the approved program. */
function wanting(occasions: WritingOccasion[], nextOn: string | null): PageInput {
  return input({
    record: record((r) => {
      r.writingOccasions = occasions;
      r.visitPlans = [
        {
          id: id(),
          at,
          by: 'JM',
          clientId,
          visitId: visitIds[2],
          nextOn,
          hour: null,
          dose: '',
          retest: null,
          trialId: null,
          questions: '',
        },
      ];
      for (const program of r.programs)
        program.lines = [
          ...program.lines.filter((line) => line.kind !== 'content'),
          ...occasions.map((each) => programLine({ item: itemOfOccasion[each.code], kind: 'writing' })),
        ];
    }),
  });
}
const pagesOf = (from: PageInput) => dailyPages(from, rules, practiceRequestOf(from, rules, t), t, 'en');

describe('practice pages until the next visit', () => {
  it('one a practice day, twenty at most, a week where no visit is planned', () => {
    const days = (nextOn: string | null): number => pagesOf(wanting([occasion('list')], nextOn)).length;
    const week = practiceDays(wanting([occasion('list')], null));
    expect(days('2026-04-22')).toBe(week);
    expect(days(null)).toBe(week);
    expect(days('2026-07-15')).toBe(mostPages);
    expect(days('2026-04-16')).toBe(1);
  });

  it('occasions take turns, no line comes twice, and the title says which day', () => {
    const pages = pagesOf(wanting([occasion('list'), occasion('message')], '2026-05-06'));
    const lines = pages.flatMap((page) => page.models.map(sentenceKey));
    expect(new Set(lines).size).toBe(lines.length);
    expect(pages[0]!.title).toContain(`1 of ${pages.length}: list`);
    expect(pages[1]!.title).toContain('message');
    for (const page of pages) expect(page.models.length).toBeGreaterThanOrEqual(1);
  });

  it('a signature has its place and the client’s own name, a form its boxes', () => {
    const [signature, form] = pagesOf(wanting([occasion('signature'), occasion('form')], '2026-05-06'));
    expect(signature!.ruling).toBe('signature');
    // The program of tier 3 speaks of boxes of 6 mm.
    expect(form!.ruling).toBe('boxes-6');
    expect(Math.max(...form!.models.map((line) => line.length))).toBeLessThanOrEqual(25);
  });

  it('lines that were issued within the year do not come again', () => {
    const from = wanting([occasion('list')], '2026-04-29');
    const first = pagesOf(from);
    const sheets = first.flatMap(practiceSheets);
    expect(sheets.flatMap((sheet) => sheet.written ?? []).length).toBe(first.flatMap((page) => page.models).length);
    const issued = { ...from, record: { ...from.record } };
    issued.record.issuedPages = [
      {
        id: id(),
        at,
        by: 'JM',
        clientId,
        visitId: visitIds[2],
        kind: 'home-program',
        issuedAt: at,
        model: JSON.parse(JSON.stringify({ sheets })),
        pdf: null,
      },
    ];
    const again = pagesOf(issued).flatMap((page) => page.models.map(sentenceKey));
    const before = new Set(first.flatMap((page) => page.models.map(sentenceKey)));
    expect(again.filter((line) => before.has(line))).toEqual([]);
  });

  it('an occasion that the program does not have is not practiced', () => {
    const from = wanting([occasion('list')], '2026-04-29');
    for (const program of from.record.programs) program.lines = program.lines.filter((l) => l.item !== 'list-practice');
    const titles = pagesOf(from).map((page) => page.title);
    expect(titles.filter((title) => /: list/.test(title))).toEqual([]);
  });
});

describe('the client’s own words', () => {
  it('an occasion without words and a word longer than a line get a sentence', () => {
    const long = 'Happy birthday to all of you who were born in this very long month';
    const from = wanting([occasion('list'), occasion('card', { words: [{ kind: 'phrase', text: long }] })], null);
    const [none, tooLong] = wordsToMend(from, t, 44);
    expect(none).toContain('No words of the client’s own are noted for “list”');
    expect(tooLong).toContain('is longer than a line of this paper: it prints over two lines.');
  });
});
