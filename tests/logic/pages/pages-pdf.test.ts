import { beforeAll, describe, expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import type { PageKind } from '../../../db/types/page.ts';
import { buildPacket, type PacketChoices } from '../../../renderer/logic/pages/sheet/build-packet.ts';
import { repaginate, withText } from '../../../renderer/logic/pages/sheet/edit-words.ts';
import { paginate } from '../../../renderer/logic/pages/sheet/break-sheets.ts';
import { docHeight, sheetHeight } from '../../../renderer/logic/pages/sheet/block-heights.ts';
import type { PageInput } from '../../../renderer/logic/pages/sheet/page-facts.ts';
import { textsOf } from '../../../renderer/logic/pages/sheet/fit-sheets.ts';
import type { DocSheet, Packet } from '../../../renderer/logic/pages/sheet/packet.ts';
import { emptyWords, pageKinds, usualSheet } from '../../../renderer/logic/pages/sheet/page-choices.ts';
import { practiceRequestOf } from '../../../renderer/logic/pages/practice/practice-request.ts';
import SheetView from '../../../renderer/window/pages/SheetView.svelte';
import { texts } from '../../../renderer/logic/texts/en.ts';
import { textKey } from '../../../renderer/logic/texts/text-keys.ts';
import { packetText } from '../../../renderer/logic/pages/kinds/visit-note.ts';
import { chromiumPath, htmlOf, noChromium, type Printed, printHtml } from './html.ts';
import { clientId, id, input, programLine, record, visitIds } from './record.ts';

const rules = rulesInUse(null);

function build(kind: PageKind, from: PageInput = input(), more: Partial<PacketChoices> = {}): Packet {
  const choices: PacketChoices = {
    pt: 14,
    withPictures: false,
    withLog: true,
    withCard: true,
    withPractice: false,
    withDrawings: true,
    language: 'en',
    withEnglish: true,
    words: emptyWords(),
    practice: practiceRequestOf(from, rules, texts),
    withFurther: true,
    withDaily: false,
    ...more,
  };
  return buildPacket(kind, from, choices, rules);
}
const docs = (packet: Packet) => packet.sheets.filter((sheet): sheet is DocSheet => sheet.type === 'doc');
const words = (packet: Packet) => docs(packet).flatMap(textsOf).join(' | ');

const strokeSigns = () =>
  record((r) => {
    r.redFlags = [
      {
        id: id(),
        at: '2026-04-15T09:00:00.000Z',
        by: 'JM',
        clientId,
        visitId: visitIds[2],
        flag: 'stroke-signs',
        present: true,
        review: null,
        note: 'Face droops on the left since 9:00.',
      },
    ];
  });

test('a page is plain data: what is frozen is what was shown', () => {
  for (const { kind } of pageKinds) {
    const packet = build(kind);
    expect(JSON.parse(JSON.stringify(packet))).toEqual(packet);
  }
});

test('the home program has every line with its dose, its cautions, the stop list and the long deference wording', () => {
  const text = words(build('home-program'));
  for (const part of [
    'Open the hand slowly | Lay the hand flat on the table.',
    '5 minutes, 4 lines, rest 2 minutes',
    'Never force the fingers.',
    'Do these once a day, 5 days a week.',
    'All in all about 20 minutes on a practice day.',
    'It is not a diagnosis.',
    'In an emergency call your local emergency number.',
    'Approved April 15, 2026 by JM. Rules 2026.1.',
  ])
    expect(text).toContain(part);
});

test('what most lines warn of is said once for all, and what is done in the clinic is no riddle at home', () => {
  const from = input({
    record: record((r) => {
      const lines = r.programs[0]!.lines;
      r.programs[0]!.lines = [
        ...lines.map((line) =>
          line.dose.minutes !== null ? { ...line, cautions: [...line.cautions, 'Stop if it hurts.'] } : line,
        ),
        { ...lines[0]!, kind: 'tool' as const, item: 'pen-trial', title: 'Try three pens', cautions: [] },
      ];
    }),
  });
  const text = words(build('home-program', from));
  expect(text.split('Stop if it hurts.')).toHaveLength(2);
  expect(text).toContain('In all of these: Stop if it hurts.');
  expect(text).toContain('Never force the fingers.');
  expect(text).toContain('With us, at your visits | Try three pens');
});

test('the practice pages bring along the sheets that single lines speak of', () => {
  const from = input({
    record: record((r) => {
      const [line] = r.programs[0]!.lines;
      r.programs[0]!.lines.push(
        { ...line!, item: 'digits-and-money', title: 'Numbers and amounts' },
        { ...line!, item: 'signature-in-place', title: 'Your signature' },
        { ...line!, item: 'start-end-dots', title: 'Stay on the line' },
        { ...line!, item: 'text-picture-words-home', kind: 'content' as const, title: 'Pictures from home' },
      );
    }),
  });
  const sheets = build('practice-pages', from).sheets.flatMap((sheet) => (sheet.type === 'practice' ? [sheet] : []));
  expect(new Set(sheets.map(({ ruling }) => ruling))).toEqual(new Set(['dashed-10', 'boxes-8', 'signature']));
  expect(sheets[0]!.dots?.length).toBeGreaterThan(0);
  expect(sheets.flatMap(({ texts }) => texts.map(({ text }) => text)).join('')).toContain('407.96');
  expect(sheets.some(({ pictures }) => (pictures?.length ?? 0) > 0)).toBe(true);
  const main = build('practice-pages', from, { withFurther: false }).sheets;
  expect(main.every((sheet) => sheet.type === 'practice' && sheet.ruling === 'dashed-10')).toBe(true);
});

test('the stop box follows what is done, and what the check card says is not said on the program too', () => {
  const [advice] = rules.items.filter(({ code }) => code === 'self-check');
  const withAdvice = (text: string) =>
    input({
      record: record((r) => {
        const [line] = r.programs[0]!.lines;
        const own = text !== advice!.text;
        const line2 = {
          ...line!,
          item: 'self-check',
          kind: 'advice' as const,
          title: advice!.title,
          text,
          edited: own,
        };
        r.programs[0]!.lines.push(line2);
      }),
    });
  const [first] = docs(build('home-program', withAdvice(advice!.text), { withLog: false }));
  const keys = first!.sections.map(({ key }) => key);
  expect(keys.indexOf('stop')).toBe(keys.indexOf('do') + 1);
  expect(words(build('home-program', withAdvice(advice!.text)))).not.toContain(advice!.text);
  expect(words(build('home-program', withAdvice(advice!.text), { withCard: false }))).toContain(advice!.text);
  expect(words(build('home-program', withAdvice('Stop after each word.')))).toContain('Stop after each word.');
});

test('the name to copy is the own name, unless only the code is printed', () => {
  const named = (useCode: boolean) => {
    const from = {
      ...input({
        record: record((r) => {
          const [line] = r.programs[0]!.lines;
          r.programs[0]!.lines.push({ ...line!, item: 'text-name-and-address', kind: 'content' as const });
        }),
      }),
      useCode,
    };
    return practiceRequestOf(from, rules, texts).models;
  };
  expect(named(false)).toContain('Mara Lindqvist');
  expect(named(true)).toContain('My name');
});

test('a bout with its model rows is planned to stay on one sheet', () => {
  const from = input({
    record: record((r) => {
      const [line] = r.programs[0]!.lines;
      r.programs[0]!.lines = [
        { ...line!, kind: 'paper' as const, item: 'paper-dashed-8-7', title: 'Lines of 8.7 mm with a dashed middle' },
        { ...line!, kind: 'content' as const, item: 'text-name-and-address' },
        programLine({ dose: { ...line!.dose, minutes: 10, lines: 8 } }),
      ];
    }),
  });
  const sheets = build('practice-pages', from).sheets.flatMap((sheet) => (sheet.type === 'practice' ? [sheet] : []));
  expect(sheets).toHaveLength(1);
  expect(sheets[0]!.ruling).toBe('dashed-8.7');
});

test('a program prints wholly in the other language, the letters to practice among its words', () => {
  const lines = rules.items
    .filter(({ kind }) => kind === 'writing' || kind === 'setup' || kind === 'advice')
    .map((item) =>
      programLine({
        item: item.code,
        kind: item.kind,
        title: item.title,
        text: item.text.replace('{letters}', 'a, o'),
        keys: {
          text: [textKey(item.code, null)],
          letters: item.text.includes('{letters}') ? ['a', 'o'] : [],
          words: [],
          cautions: [],
        },
      }),
    );
  const from = input({
    record: record((r) => {
      r.programs[0]!.lines = lines;
    }),
  });
  const page = build('home-program', from, { language: 'es', withEnglish: false, withCard: false });
  expect(page.warnings.join(' ')).not.toContain('in English');
  const said = page.sheets.flatMap((sheet) => (sheet.type === 'doc' ? textsOf(sheet) : [])).join(' ');
  expect(said).toContain('Costó leer estas letras: a, o. Mire, escriba');
  expect(said).toContain('Primero, silla y mesa');
  for (const { text, title } of lines) {
    expect(said).not.toContain(text);
    expect(said, title).not.toMatch(new RegExp(`\\b${title.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\b`));
  }
});

test('the practice page has the letters that the program names, whatever was read since', () => {
  const keys = { text: [], letters: ['q', 'z'], words: [], cautions: [] };
  const from = input({
    record: record((r) => {
      r.programs[0]!.lines = [programLine({ item: 'failing-letters', keys })];
    }),
  });
  const { models } = practiceRequestOf(from, rules, texts);
  expect(models.join(' ')).toContain('q q q');
  expect(models.join(' ')).toContain('z z z');
});

test('the evaluation says a precaution once, and an answer with its question', () => {
  const helper = rules.vocabulary.cautions.find(({ code }) => code === 'helper')!.name;
  const from = input({
    record: record((r) => {
      r.client.precautions = [{ code: 'helper', text: helper }];
      r.intakeAnswers = [
        {
          ...{ id: id(), at: '2026-04-15T09:00:00.000Z', by: 'JM', clientId, visitId: visitIds[2] },
          ...{ item: 'arm-support', side: 'right', state: 'graded', grade: 1, reason: '', detail: 'no-trouble' },
          ...{ before: null, after: null, note: '' },
        },
      ];
    }),
  });
  const said = words(build('initial-evaluation', from));
  expect(said.split(helper)).toHaveLength(2);
  expect(said).toContain('Shoulder? No trouble.');
});

test('a draft program says DRAFT on the sheet', () => {
  const draft = input({
    record: record((r) => {
      r.programs[0]!.status = 'draft';
    }),
  });
  expect(words(build('home-program', draft))).toContain('DRAFT');
});

test('a long program breaks between lines and numbers its sheets; no line is lost', () => {
  const long = input({
    record: record((r) => {
      r.programs[0]!.lines = Array.from({ length: 14 }, (_, i) =>
        programLine({ title: `Line ${i + 1} of the program`, text: 'Write slowly and look at each word. '.repeat(3) }),
      );
    }),
  });
  const sheets = docs(build('home-program', long, { withLog: false, withCard: false }));
  expect(sheets.length).toBeGreaterThan(1);
  expect(sheets.map((s) => s.page)).toEqual(sheets.map((_, i) => i + 1));
  const text = sheets.flatMap(textsOf).join(' | ');
  for (let i = 1; i <= 14; i++) expect(text).toContain(`Line ${i} of the program`);
});

test('the visit note carries numbers with interval, reader and conditions, and the therapist’s own words', () => {
  const text = packetText(build('visit-note'));
  for (const part of [
    '18 of 24 words read (75 %, 95 % interval 55 to 88 %) by an unfamiliar reader, blind',
    '15 of 24 words read',
    'felt pen',
    'Graded line length and taught her to reset her hand.',
    'Shown back: Showed the warm-up and both lists without help.',
    'Next visit: April 22, 10:30',
  ])
    expect(text).toContain(part);
  expect(text).not.toMatch(/significant|NaN|undefined|null/);
});

test('a sentence of skilled judgement that repeats an earlier note is named', () => {
  const twice = input({
    record: record((r) => {
      r.visits[1]!.skilled = 'Graded line length and  taught her to reset her hand.';
    }),
  });
  expect(build('visit-note', twice).warnings.join(' ')).toContain('reads the same as on March 25, 2026');
});

test('the referral page says what was seen, what to do and whom to call', () => {
  const text = words(build('referral', input({ record: strokeSigns() })));
  expect(text).toContain('Emergency referral');
  expect(text).toContain('Face droops on the left since 9:00.');
  expect(text).toContain('Call the emergency number now.');
});

test('no page has a hole where a fact is missing', () => {
  const bare = input({
    record: record((r) => {
      r.samples = [];
      r.readings = [];
      r.programs = [];
      r.goals = [];
      r.setups = [];
      r.practiceLogs = [];
      r.visits = [];
    }),
    clinic: { name: '', therapist: '', credentials: '' },
  });
  for (const { kind } of pageKinds) expect(words(build(kind, bare))).not.toMatch(/NaN|undefined|null|Invalid/);
});

test('words changed on the page stay, and the page is broken anew', () => {
  const packet = build('home-program');
  const changed = repaginate(withText(packet, ['sheets', 0, 'title'], 'My program'));
  expect(docs(changed)[0]!.title).toBe('My program');
  expect(docs(changed).length).toBe(docs(packet).length);
  const list = withText({ items: ['a', 'b', 'c'] }, ['items', 1], '');
  expect(list).toEqual({ items: ['a', 'c'] });
});

test('signatures never stand on a sheet of their own', () => {
  const text = 'Words that fill a line of the page, so that the sheet is full sooner or later.';
  for (let lines = 10; lines < 60; lines++) {
    const sections = [
      {
        key: 'long',
        title: 'Outcome',
        blocks: [{ kind: 'list' as const, items: Array(lines).fill(text) as string[] }],
      },
      { key: 'short', title: 'Plan', blocks: [{ kind: 'text' as const, text }] },
      {
        key: 'sign',
        title: '',
        blocks: [{ kind: 'sign' as const, labels: ['Therapist, date', 'Certified by, date'] }],
      },
    ];
    const pages = paginate({ sheet: 'A4', pt: 11, title: 'Report', lead: [], foot: '', sections });
    const signed = pages.find((page) => page.sections.some((section) => section.key === 'sign'))!;
    expect(signed.sections.map((section) => section.key)).toContain('short');
    const height = docHeight({ ...signed, sections: signed.sections });
    expect(height).toBeLessThanOrEqual(sheetHeight(signed) + 1e-9);
  }
});

test('what is not there in the other language is named', () => {
  const { warnings } = build('home-program', input(), { language: 'es' });
  expect(warnings.join(' ')).toContain('How each line is done prints in English');
  expect(build('home-program').warnings.join(' ')).not.toContain('in English');
});

test('paper follows the region', () => {
  expect(usualSheet('en-US')).toBe('Letter');
  expect(usualSheet('en-GB')).toBe('A4');
  expect(usualSheet('de')).toBe('A4');
});

describe.skipIf(!chromiumPath)(`every kind of page in the printed PDF${noChromium}`, () => {
  const packets = (['A4', 'Letter'] as const).flatMap((sheet) =>
    pageKinds.map(({ kind }) => build(kind, input({ sheet, record: kind === 'referral' ? strokeSigns() : record() }))),
  );
  for (const language of ['es', 'de'] as const)
    for (const pt of [14, 16, 20] as const) packets.push(build('family-summary', input(), { language, pt }));
  // The small print at the end of a program once ran into the foot.
  for (const pt of [14, 20] as const)
    for (const language of ['en', 'es', 'de'] as const)
      packets.push(build('home-program', input({ sheet: 'Letter' }), { language, pt, withLog: false }));
  const sheets = packets.flatMap((packet) => packet.sheets);
  let printed: Printed;

  beforeAll(async () => {
    printed = await printHtml(htmlOf(SheetView, { sheets }));
  });

  test('nothing runs over its sheet', () => {
    expect(printed.overflow).toEqual(sheets.map(() => 0));
    printed.heights.forEach((height, i) => expect(height).toBeLessThan(sheets[i]!.sheet === 'A4' ? 262 : 244.5));
  });
});

test('hand drawings are turned for a left hand, letters never', () => {
  const left = input({
    record: record((r) => {
      r.client.handNow = 'left';
      for (const answer of r.intakeAnswers) if (answer.side === 'right') answer.side = 'left';
    }),
  });
  const steps = docs(build('home-program', left)).flatMap((sheet) =>
    sheet.sections.flatMap((section) => section.blocks.flatMap((b) => (b.kind === 'steps' ? b.items : []))),
  );
  expect(steps.find((s) => s.drawing?.name === 'open-hand-flat')?.drawing?.mirrored).toBe(true);
  expect(steps.find((s) => s.drawing?.name === 'close-then-lift')?.drawing?.mirrored).toBe(false);
});

test('in Spanish the page says the same, and the English page follows for checking', () => {
  const packet = build('family-summary', input(), { language: 'es' });
  const [spanish, english] = docs(packet);
  expect(spanish!.language).toBe('es');
  expect(textsOf(spanish!).join(' ')).toContain('leyó 18 de 24 palabras.');
  expect(textsOf(spanish!).join(' ')).toContain('La última vez fueron 15 de 24.');
  expect(textsOf(spanish!).join(' ')).toContain('15 abr 2026');
  expect(textsOf(english!).join(' ')).toContain('read 18 of 24 words.');
  expect(docs(build('family-summary', input(), { language: 'es', withEnglish: false }))).toHaveLength(1);
});

test('an open red flag takes all practice off the paper, whatever was approved before', () => {
  const from = input({ record: strokeSigns() });
  const program = build('home-program', from);
  expect(words(program)).not.toContain('Open the hand slowly');
  expect(words(program)).not.toContain('Shopping list');
  expect(program.warnings[0]).toContain('A red flag is open');
  expect(program.sheets.every((sheet) => sheet.type === 'doc' && sheet.title !== texts.log.title)).toBe(true);
  expect(build('practice-pages', from).sheets).toEqual([]);
  expect(words(build('family-summary', from))).toContain(texts.family.noProgram);
  expect(words(build('discharge', from))).not.toContain('Open the hand slowly');
});

test('a line that a later answer makes unsafe is left off, and says why', () => {
  const untested = input({
    record: record((r) => {
      r.intakeAnswers = r.intakeAnswers.filter((answer) => answer.item !== 'tone' && answer.item !== 'wrist');
    }),
  });
  const packet = build('home-program', untested);
  expect(words(packet)).not.toContain('Open the hand slowly');
  expect(words(packet)).toContain('Shopping list');
  expect(packet.warnings.join(' ')).toContain('“Open the hand slowly” was left off');
});
