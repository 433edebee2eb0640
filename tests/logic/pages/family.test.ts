import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { type FamilyOptions, familyPage } from '../../../renderer/logic/pages/kinds/family.ts';
import { countWords, textsOf } from '../../../renderer/logic/pages/sheet/fit-sheets.ts';
import { docHeight } from '../../../renderer/logic/pages/sheet/block-heights.ts';
import type { DocSheet, Packet } from '../../../renderer/logic/pages/sheet/packet.ts';
import SheetView from '../../../renderer/window/pages/SheetView.svelte';
import { texts } from '../../../renderer/logic/texts/en.ts';
import { chromiumPath, htmlOf, noChromium, type Printed, printHtml } from './html.ts';
import { readPdf } from './pdf-lines.ts';
import { input, programLine, record } from './record.ts';

const options: FamilyOptions = { pt: 14, pictures: [], when: '', bring: '', ownWords: '' };
const all = (packet: Packet) => packet.sheets.flatMap((sheet) => textsOf(sheet as DocSheet)).join(' | ');

/** More than fits: long names, seven practice lines, six cautions, a long goal. */
const crowded = () =>
  record((r) => {
    r.client.name = 'Maximiliana Theodora Featherstonehaugh-Kowalczyk';
    r.goals[0]!.output = 'a letter of two pages to an old friend who lives in another town and cannot use a screen';
    r.goals[0]!.because = 'I have written to her every month since we were both young, and I do not want to stop now.';
    const program = r.programs[0]!;
    program.lines = Array.from({ length: 7 }, (_, i) =>
      programLine({
        title: `Practice line number ${i + 1} with a rather long title that takes more than one line of print`,
        text: 'Write one line slowly. Look at it. Close each round part, then lift the pen and move on to the next.',
        cautions: i < 6 ? [`Caution ${i + 1}: look at the skin of thumb and fingers before and after.`] : [],
      }),
    );
  });

test('says what was read today, last time and at the start, in words', () => {
  const text = all(familyPage(input(), options, texts));
  expect(text).toContain('read 18 of 24 words. | Last time it was 15 of 24. At the start it was 12 of 24.');
});

test('two readers are not one: how many read, and about how many words', () => {
  const read = record((r) => {
    const last = r.readings.at(-1)!;
    r.readings.push({
      ...last,
      id: '00000000-0000-4000-8000-0000000000f9',
      readerInitials: 'LM',
      counted: { right: 19, of: 24 },
    });
  });
  const text = all(familyPage({ ...input(), record: read }, options, texts));
  expect(text).toMatch(/^.*2 people read about 1[89] of 24 words\./);
  expect(text).not.toContain('One person');
});

test('says the goal in the client’s words and in words that others read, never in percent', () => {
  const text = all(familyPage(input(), options, texts));
  expect(text).toContain(
    'A shopping list of five things. You said: “I want my sister to shop from my list.” Next step: a list of three things.',
  );
  expect(text).not.toContain('%');
});

test('names no diagnosis and no medicine', () => {
  const text = all(familyPage(input(), options, texts));
  expect(text).not.toMatch(/parkinson|levodopa/i);
});

test('carries this client’s cautions, the stop list, whom to call, and the deference sentence', () => {
  const text = all(familyPage(input(), options, texts));
  expect(text).toContain('Never force the fingers.');
  expect(text).toContain('Stop when a line gets hard to read. Stopping then is part of the plan.');
  expect(text).toContain('Questions? Call Jo at the clinic: 555 0100.');
  expect(text).toContain('If something is different from what you were told, ask us first.');
});

test('keeps cautions and the stop list even where little room is left', () => {
  for (const pt of [14, 16, 20] as const) {
    const packet = familyPage(input({ record: crowded() }), { ...options, pt }, texts);
    const text = all(packet);
    // In the largest print six long cautions do not fit: the page names the sheet that has them, and the therapist is told.
    if (text.includes(texts.family.careElsewhere))
      expect(packet.warnings.join(' ')).toContain('cautions are on the home program sheet only');
    else for (let i = 1; i <= 6; i++) expect(text).toContain(`Caution ${i}:`);
    if (pt === 14) expect(text).toContain('Caution 6:');
    expect(text).toContain(texts.stop.emergency);
    expect(packet.sheets).toHaveLength(1);
    expect(packet.warnings.length).toBeGreaterThan(0);
  }
});

test('a harder day is said kindly, and never as a number alone', () => {
  const worse = record((r) => {
    r.readings[2]!.counted = { right: 8, of: 24 };
  });
  expect(all(familyPage(input({ record: worse }), options, texts))).toContain('Today was harder. We changed the plan.');
});

test('all words or none at two visits are said with what comes next, not as a row of equal numbers', () => {
  for (const [right, next] of [
    [24, texts.family.allAgain],
    [0, texts.family.noneAgain],
  ] as const) {
    const same = record((r) => {
      for (const reading of r.readings) reading.counted = { right, of: 24 };
    });
    const text = all(familyPage(input({ record: same }), options, texts));
    expect(text).toContain(`read ${right} of 24 words. | ${next}`);
    expect(text).not.toContain('Last time');
  }
});

test('without a reader the page still prints and says so', () => {
  const unread = record((r) => {
    r.readings = [];
  });
  expect(all(familyPage(input({ record: unread }), options, texts))).toContain('Nobody has read it yet.');
});

test('without a sample, a program, a goal or a set-up there is still a page', () => {
  const bare = record((r) => {
    r.samples = [];
    r.readings = [];
    r.programs = [];
    r.goals = [];
    r.setups = [];
    r.practiceLogs = [];
    r.client.callName = '';
    r.client.callNumber = '';
  });
  const packet = familyPage(input({ record: bare }), options, texts);
  expect(packet.sheets).toHaveLength(1);
  expect(all(packet)).toContain('No home practice for now.');
  expect(packet.warnings.join(' ')).toContain('blank line');
});

test('the same facts make the same page', () => {
  expect(familyPage(input(), options, texts)).toEqual(familyPage(input(), options, texts));
});

test('missing consent and draft programs are named before printing', () => {
  const draft = record((r) => {
    r.client.familyConsent = false;
    r.programs[0]!.status = 'draft';
  });
  const { warnings } = familyPage(input({ record: draft }), options, texts);
  expect(warnings.join(' ')).toMatch(/consent/i);
  expect(warnings.join(' ')).toMatch(/draft/i);
});

describe.skipIf(!chromiumPath)(`the family page in the printed PDF${noChromium}`, () => {
  const cases = ([14, 16, 20] as const).flatMap((pt) =>
    (['A4', 'Letter'] as const).map((sheet) => familyPage(input({ sheet }), { ...options, pt }, texts)),
  );
  const crowdedCase = familyPage(input({ record: crowded() }), options, texts);
  const sheets = [...cases, crowdedCase].flatMap((packet) => packet.sheets) as DocSheet[];
  let printed: Printed;

  beforeAll(async () => {
    printed = await printHtml(htmlOf(SheetView, { sheets }));
  });

  test('is exactly one sheet at 14, 16 and 20 points on A4 and US Letter, at most 250 words', () => {
    for (const packet of cases) {
      expect(packet.sheets).toHaveLength(1);
      expect(countWords(packet.sheets[0] as DocSheet)).toBeLessThanOrEqual(250);
    }
  });

  test('nothing is cut off, and the room was foreseen within 6 %', async () => {
    expect(printed.overflow.every((px) => px === 0)).toBe(true);
    expect(await readPdf(printed.pdf)).toHaveLength(sheets.length);
    sheets.forEach((sheet, i) => {
      const foreseen = (docHeight(sheet) * sheet.pt * 25.4) / 72;
      expect(foreseen).toBeGreaterThan(printed.heights[i]! - 1);
      expect(foreseen).toBeLessThan(printed.heights[i]! * 1.06 + 2);
    });
  });

  test('running text has the chosen size', async () => {
    const pages = await readPdf(printed.pdf);
    for (const [i, pt] of [14, 14, 16, 16, 20, 20].entries()) {
      const sizes = pages[i]!.texts.map((t) => Math.round((t.sizeMm * 72) / 25.4));
      expect(sizes).toContain(pt);
      // Small print (dates' labels, the foot) never falls under 10 points.
      expect(Math.min(...sizes.filter((s) => s > 8))).toBeGreaterThanOrEqual(10);
    }
  });

  test.skipIf(!existsSync('/usr/bin/pdftotext'))('pdftotext finds what the facts say', () => {
    const folder = mkdtempSync(join(tmpdir(), 'family-page-'));
    try {
      writeFileSync(join(folder, 'page.pdf'), printed.pdf);
      const text = execFileSync('pdftotext', ['-layout', '-f', '1', '-l', '1', join(folder, 'page.pdf'), '-'], {
        encoding: 'utf8',
      }).replace(/\s+/g, ' ');
      for (const fact of [
        'Mara Lindqvist',
        'April 15, 2026',
        'April 22, 10:30',
        '18 of 24',
        '15 of 24',
        '555 0100',
        '45 cm',
        '74 cm',
      ])
        expect(text).toContain(fact);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
