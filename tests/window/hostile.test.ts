/**
 * Names, notes, file names and imported texts that try to become script or markup: on every screen and printed page
 * they stay the letters that they are. A rich demo client leaves as a file, every text in it is spoiled, and comes back.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from '@playwright/test';
import type { z } from 'zod';
import { factKinds } from '../../db/types/record.ts';
import { readTar, tarOf, type TarMember } from '../../electron/files/backup/tar.ts';
import { expect, test, type LaunchedApp } from './app.ts';
import { readPdf } from '../logic/pages/pdf-lines.ts';
import { openTab, openClient } from '../../electron/browser/walk.ts';

const MARKUP = [
  '<img src=x onerror="globalThis.ran=1">',
  '<script>globalThis.ran=1</script>',
  '"><svg onload=globalThis.ran=1>',
  '</textarea><iframe src="javascript:parent.ran=1"></iframe>',
  "'-globalThis.ran=1-'{globalThis.ran=1}",
  '<a href="javascript:globalThis.ran=1">javascript:globalThis.ran=1</a>',
];

/** Every text of a fact that its schema lets be anything becomes markup; codes, dates and choices stay. */
function spoiled<T>(fact: T, schema: z.ZodType, count: { n: number }): T {
  const copy = structuredClone(fact);
  const walk = (at: unknown): void => {
    if (typeof at !== 'object' || at === null) return;
    const holder = at as Record<string, unknown>;
    for (const [key, value] of Object.entries(holder)) {
      if (typeof value !== 'string') walk(value);
      // What is one word without space is a code of the rule table: another test's business.
      else if (value === '' || /\s/.test(value) || key === 'name') {
        holder[key] = MARKUP[count.n % MARKUP.length];
        if (schema.safeParse(copy).success) count.n++;
        else holder[key] = value;
      }
    }
  };
  walk(copy);
  return copy;
}

/** Lists of a record and the kinds in them. */
const kindOf: Record<string, keyof typeof factKinds> = {
  visits: 'visit',
  intakeAnswers: 'intakeAnswer',
  redFlags: 'redFlag',
  setups: 'setup',
  samples: 'sample',
  samplePages: 'samplePage',
  pageMeasurements: 'pageMeasurement',
  readings: 'reading',
  programs: 'program',
  practiceLogs: 'practiceLog',
  goals: 'goal',
  goalRatings: 'goalRating',
  issuedPages: 'issuedPage',
};

/** The client file with other ids, another code, and markup in place of its texts. Answers how many texts. */
async function spoilFile(file: string, target: string): Promise<number> {
  const other = (text: string) =>
    text.replace(/\b[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}\b/g, (id) => {
      const hex = createHash('sha256').update(id).digest('hex');
      return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
    });
  const count = { n: 0 };
  const members: TarMember[] = [];
  async function* bytes() {
    yield readFileSync(file);
  }
  for await (const { name, data } of readTar(bytes(), 1e9)) {
    let out = data;
    if (name === 'client.json') {
      const exported = JSON.parse(other(data.toString('utf8'))) as { record: Record<string, unknown> };
      const { record } = exported;
      record['client'] = { ...spoiled(record['client'] as object, factKinds.client, count), code: '<b>X</b>' };
      for (const [list, kind] of Object.entries(kindOf)) {
        record[list] = (record[list] as unknown[]).map((fact) => spoiled(fact, factKinds[kind], count));
      }
      out = Buffer.from(JSON.stringify(exported));
    }
    members.push({ name: other(name), data: out });
  }
  writeFileSync(target, await tarOf(members, 0));
  return count.n;
}

/** What would show that a text became more than letters. */
async function traces(page: Page): Promise<unknown> {
  return page.evaluate(() => {
    const seen = globalThis as { ran?: unknown; refused?: string[] };
    return {
      ran: seen.ran ?? null,
      refused: seen.refused ?? [],
      elements: [
        ...document.querySelectorAll('iframe, object, embed, [onerror], [onload], img[src="x"], [href^="javascript:"]'),
      ].map((node) => node.outerHTML.slice(0, 80)),
      scripts: [...document.scripts].filter((script) => !script.src).length,
    };
  });
}
const NOTHING = { ran: null, refused: [], elements: [], scripts: 0 };

/** The content security policy would stop an inline script, and say so: then a text had become markup. */
async function watchPolicy(page: Page): Promise<void> {
  await page.evaluate(() => {
    const seen = globalThis as { refused?: string[] };
    seen.refused = [];
    document.addEventListener('securitypolicyviolation', (event) => seen.refused!.push(event.violatedDirective));
  });
}

async function bring(app: LaunchedApp): Promise<void> {
  const { page } = app;
  const list = (await app.ask('caseload.list')) as { id: string; code: string }[];
  const rich = list.find((row) => row.code === 'Q-101')!;
  const { file } = (await app.ask('client.export', { clientId: rich.id })) as { file: string };
  const hostile = path.join(path.dirname(file), 'hostile.tar');
  expect(await spoilFile(file, hostile)).toBeGreaterThan(100);
  await page.getByRole('button', { name: 'Backup', exact: true }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Add a client from a file' }).click();
  await (await chooser).setFiles(hostile);
  await expect(page.getByRole('navigation', { name: 'Client' })).toBeVisible();
}

test('no text of a client, a colleague’s file or a file name becomes script or markup, on any screen or page', async ({
  demoApp: app,
}) => {
  test.setTimeout(300_000);
  const { page } = app;
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('dialog', (dialog) => {
    errors.push(`a dialog opened: ${dialog.message()}`);
    void dialog.dismiss();
  });
  // The looking itself works: markup that really is markup is seen.
  await watchPolicy(page);
  await page.evaluate((html) => document.body.insertAdjacentHTML('beforeend', html), MARKUP[0]!);
  await expect.poll(async () => JSON.stringify(await traces(page))).toMatch(/script-src.*onerror/);
  await page.reload();
  await watchPolicy(page);
  await app.ask('app.therapist', { initials: 'Q<b>', clinic: MARKUP[0], credentials: MARKUP[1] });
  await bring(app);

  for (const tab of ['Visit and record', 'Screen', 'Sample', 'Read back', 'Program', 'Goal', 'Progress']) {
    await openTab(page, tab);
    await page.waitForLoadState('networkidle');
    await expect(page.getByRole('main')).not.toBeEmpty();
    expect(await traces(page), tab).toEqual(NOTHING);
  }
  await openTab(page, 'Screen');
  for (const section of await page.getByRole('navigation', { name: 'Intake' }).getByRole('button').all()) {
    await section.click();
    expect(await traces(page), 'intake').toEqual(NOTHING);
  }

  // A picture whose name is markup.
  await openTab(page, 'Sample');
  const dropped = await page.evaluate(async (name) => {
    const canvas = new OffscreenCanvas(400, 300);
    canvas.getContext('2d')!.fillRect(40, 100, 200, 4);
    const files = new DataTransfer();
    files.items.add(new File([await canvas.convertToBlob()], name, { type: 'image/png' }));
    const place = document.querySelector('[role=group][aria-label="Add a page"], [aria-label="Add a page"]');
    place?.dispatchEvent(new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }));
    return place !== null;
  }, `${MARKUP[0]}.png`);
  if (dropped) await page.waitForLoadState('networkidle');
  expect(await traces(page), 'file name').toEqual(NOTHING);

  // Printed pages: on the screen, and in the PDF as the letters that were typed.
  await openTab(page, 'Pages');
  for (const radio of await page.getByRole('radio').all()) {
    await radio.click({ timeout: 5000 }).catch(() => undefined);
    await page.waitForLoadState('networkidle');
    expect(await traces(page), 'pages').toEqual(NOTHING);
  }
  await page.getByRole('radio', { name: /^Visit note/ }).click();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  const pdf = readFileSync(
    path.join(
      app.saveFolder,
      readdirSync(app.saveFolder).find((name) => name.endsWith('.pdf'))!,
    ),
  );
  const printed = (await readPdf(pdf)).flatMap((sheet) => sheet.texts.map(({ text }) => text)).join(' ');
  expect(printed.replaceAll(/\s+/g, ' ')).toMatch(/globalThis\.ran=1/);

  // Palette, trail, caseload, and the other screens.
  await page.keyboard.press('Control+k');
  await page.keyboard.type('globalThis');
  await expect(page.getByRole('listbox', { name: 'Found' }).getByRole('option').first()).toContainText('globalThis');
  expect(await traces(page), 'palette').toEqual(NOTHING);
  await page.keyboard.press('Escape');
  for (const name of ['Caseload', 'Backup', 'Rules', 'Settings']) {
    await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name, exact: true }).click();
    await page.waitForLoadState('networkidle');
    expect(await traces(page), name).toEqual(NOTHING);
  }

  // A colleague's rule file whose words are markup, taken into use.
  const { rules } = (await app.ask('rules.current')) as { rules: { items: { kind: string }[]; rules: object[] } };
  const own = { ...rules.items.find((item) => item.kind === 'exercise')!, code: 'own-markup' };
  const changes = {
    format: 'fairhand-clinic-rules',
    formatVersion: 2,
    revision: 1,
    basedOn: '2026.1',
    items: [{ ...own, title: MARKUP[0], text: MARKUP[1], source: 'clinic' }],
    rules: [{ ...rules.rules[0], id: 'C01', gives: ['own-markup'], because: MARKUP[2], source: 'clinic' }],
    thresholds: {},
    off: [],
  };
  await app.ask('rules.saveChanges', { changes });
  await page.reload();
  await watchPolicy(page);
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Rules', exact: true }).click();
  await expect(page.getByText(MARKUP[0]!).first()).toBeAttached();
  expect(await traces(page), 'own rules').toEqual(NOTHING);
  await page.getByRole('banner').getByRole('button', { name: 'Fairhand', exact: true }).click();
  await openClient(page, 'Q-101');
  await openTab(page, 'Program');
  await page.waitForLoadState('networkidle');
  expect(await traces(page), 'program with own rules').toEqual(NOTHING);
  expect(errors).toEqual([]);
});
