/** The practice log that came back on paper, typed in by keyboard alone in the real window. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { decodePage } from '../../electron/files/decode/decode.ts';
import { type LogField, logLayout, readPrintedPage } from '../../renderer/measure/index.ts';
import { type Drawn, markSvg } from '../measure/printed/log-picture.ts';
import { texts } from '../../renderer/logic/texts/en.ts';
import type { ClientRecord } from '../../db/types/record.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import type { PracticeSheet } from '../../renderer/logic/pages/practice/practice.ts';
import { expect, showPart, test } from './app.ts';
import { axe, call, idOf, openTab, seedClient } from './seeds/progress-seed.ts';

test('two days are typed in without a mouse; slips get a sentence; the progress page draws them', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Program');
  const { page } = app;
  await page.getByRole('button', { name: 'Practice log' }).click();
  const log = page.getByRole('region', { name: 'Practice log' });
  await expect(log).toBeVisible();
  const type = async (...cells: string[]) => {
    for (const cell of cells) {
      await page.keyboard.press('Tab');
      await page.keyboard.type(cell);
    }
  };
  // A whole log is typed in the order of its printed columns, so that nobody looks for the place of a number.
  await log.getByText('Type a whole log').click();
  const [, , ...numbers] = texts.log.head;
  const order = ['day', ...numbers.slice(0, -1), texts.log.circles.felt.join('/')].join(', ').toLowerCase();
  await expect(log.getByLabel(`One day a line: ${order}`)).toBeVisible();
  await log.getByText('Type a whole log').click();
  const day = log.getByLabel('Day', { exact: true });
  const first = new Date(Date.now() - 6 * 86_400_000).toISOString().slice(0, 10);
  await day.fill(first);
  await log.getByLabel('Minutes', { exact: true }).focus();
  await page.keyboard.type('15');
  await type('8', '3', '5', '0', '2', 'ruled, 8 mm', 'wide pen', 'a good day');
  await page.keyboard.press('Enter');
  await expect(log.getByRole('status')).toContainText('is saved');
  await expect(day).toBeFocused();
  // The next day is there already, paper and grip carried over.
  await expect(day).toHaveValue(new Date(Date.parse(first) + 86_400_000).toISOString().slice(0, 10));
  await expect(log.getByLabel('Grip', { exact: true })).toHaveValue('wide pen');
  await log.getByLabel('Pain', { exact: true }).focus();
  await page.keyboard.type('12');
  await page.keyboard.press('Tab');
  await expect(log.getByRole('alert')).toContainText('from 0 to 10');
  await log.getByLabel('Pain', { exact: true }).fill('2');
  await page.keyboard.press('Tab');
  await log.getByLabel('Minutes', { exact: true }).fill('10');
  await page.keyboard.press('Enter');
  await expect(log.locator('tbody tr', { hasText: 'wide pen' })).toHaveCount(2);
  expect(await axe(page)).toEqual([]);

  const { practiceLogs } = (await call(app, 'client.open', { clientId: idOf('client') })) as {
    practiceLogs: Record<string, unknown>[];
  };
  expect(practiceLogs.find((one) => one['date'] === first)).toMatchObject({
    minutes: 15,
    lines: 8,
    fatigueBefore: 3,
    fatigueAfter: 5,
    pain: 0,
    breaks: 2,
    paper: 'ruled, 8 mm',
    grip: 'wide pen',
    note: 'a good day',
  });
  await page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name: 'Progress', exact: true }).click();
  await showPart(page, /^Table/);
  await expect(
    page.getByRole('group', { name: 'Table of progress' }).locator('tr', { hasText: 'Home practice' }),
  ).toHaveCount(3);
});

/** The printed sheet of this kind in the PDF as a scanner gives it, with what is drawn on it. */
async function scanned(pdf: Uint8Array, kind: 'log' | 'practice', drawn: string): Promise<Buffer> {
  for (let page = 1; ; page += 1) {
    const { gray } = await decodePage(pdf, { page });
    const read = readPrintedPage({ ...gray, data: gray.data.slice() }, null, {});
    if (read.kind !== kind) continue;
    const { width, height, data } = gray;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 210 297">${drawn}</svg>`;
    const scan = await sharp(data, { raw: { width, height, channels: 1 } })
      .composite([{ input: Buffer.from(svg) }])
      .png()
      .toBuffer();
    if (process.env['SHOTS']) writeFileSync(`${process.env['SHOTS']}/scan-${kind}.png`, scan);
    return scan;
  }
}

const shot = async (page: Page, name: string) => {
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/${name}.png` });
};

test('a printed log comes back marked, is read, looked at and kept; practice stays apart', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  await page.getByRole('radio', { name: /^Home program/ }).click();
  await page.getByRole('radio', { name: 'A4' }).click();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  const saved = readdirSync(app.saveFolder).find((name) => name.endsWith('.pdf'))!;
  const layout = logLayout(210, 297, false);
  const mark = (row: number, field: LogField, value: number, how: Drawn['mark'] = 'cross'): string => {
    const circle = layout.circles.find((each) => each.row === row && each.field === field && each.value === value)!;
    return markSvg({ circle, mark: how, gray: 70, pen: 0.6 }, row * 31 + value);
  };
  const drawn = [
    mark(1, 'done', 1, 'filled'),
    mark(1, 'minutes', 15),
    mark(1, 'before', 2),
    mark(1, 'after', 4, 'filled'),
    mark(1, 'pain', 0),
    mark(1, 'felt', 0),
    mark(3, 'minutes', 20),
    // One stroke only: nobody knows whether it was meant.
    mark(3, 'pain', 2, 'slash'),
  ].join('');
  const scan = await scanned(readFileSync(path.join(app.saveFolder, saved)), 'log', drawn);

  await openTab(app, 'Program');
  await page.getByRole('button', { name: 'Practice log' }).click();
  const log = page.getByRole('region', { name: 'Practice log' });
  const file = log.getByLabel('Picture or PDF of a log or practice page that came back');
  const blank = await sharp({ create: { width: 900, height: 1200, channels: 3, background: 'white' } })
    .png()
    .toBuffer();
  await file.setInputFiles({ name: 'blank.png', mimeType: 'image/png', buffer: blank });
  await expect(log.getByRole('alert')).toContainText('four corner marks of our sheets were not seen');
  await file.setInputFiles({ name: 'log.png', mimeType: 'image/png', buffer: scan });
  const read = log.getByRole('region', { name: 'Read from the log' });
  await expect(read.locator('tbody tr')).toHaveCount(2);
  await expect(read.getByRole('status')).toContainText('One mark is doubtful');
  await shot(page, 'returned-log');
  const rows = read.locator('tbody tr');
  await expect(rows.nth(0).getByRole('combobox', { name: /^Minutes/ })).toHaveValue('15');
  await expect(rows.nth(0).getByRole('combobox', { name: /^Tired after/ })).toHaveValue('4');
  await expect(rows.nth(1).getByRole('combobox', { name: /^Minutes/ })).toHaveValue('20');
  const doubtful = rows.nth(1).getByRole('combobox', { name: /^Pain.*doubtful/ });
  await expect(doubtful).toHaveValue('?');
  await expect(read.getByRole('button', { name: 'Save 1 day' })).toBeEnabled();
  await doubtful.selectOption('2');
  expect(await axe(page)).toEqual([]);
  await read.getByRole('button', { name: 'Save 2 days' }).click();
  await expect(log.locator('tbody tr')).toHaveCount(2);
  await expect(log.locator('tbody tr').first()).toContainText('20');
  await shot(page, 'kept-log');

  // The same log again, with another record open: told by its code, nothing kept.
  await call(app, 'client.save', newClient(idOf('another'), 'Somebody Else', 'C-77'));
  const other = { clientId: idOf('another'), token: await app.stage(scan), pdfPage: 1 };
  expect(await call(app, 'practice.recognize', other)).toEqual({ kind: 'of-another', code: 'C-01' });

  // A practice page that was kept as issued: what is written on it is measured, apart from its print and from samples.
  await openTab(app, 'Pages');
  await page.getByRole('radio', { name: /^Practice pages/ }).click();
  await page.getByRole('radio', { name: 'A4' }).click();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  await page.getByRole('button', { name: 'Keep as issued' }).click();
  await expect(page.getByText(/^Kept as issued/)).toBeVisible();
  const record = (await call(app, 'client.open', { clientId: idOf('client') })) as ClientRecord;
  const issued = record.issuedPages.at(-1)!.model as unknown as { sheets: PracticeSheet[] };
  const sheet = issued.sheets.find(({ type }) => type === 'practice')!;
  const printed = new Set(sheet.texts.map(({ y }) => Math.round(y)));
  const ruled = sheet.lines.filter((l) => l.y1 === l.y2 && (l.ink === 'baseline' || l.ink === 'ruled'));
  const free = [...new Set(ruled.map((l) => l.y1))].filter((y) => !printed.has(Math.round(y))).slice(0, 2);
  const pdf = readdirSync(app.saveFolder).find((name) => name.endsWith('.pdf') && /practice/i.test(name))!;
  const page2 = await scanned(readFileSync(path.join(app.saveFolder, pdf)), 'practice', free.map(writtenLine).join(''));
  await openTab(app, 'Program');
  await page.getByRole('button', { name: 'Practice log' }).click();
  await file.setInputFiles({ name: 'page.png', mimeType: 'image/png', buffer: page2 });
  const lines = log.getByRole('region', { name: 'Read from the practice page' });
  // Ten words were drawn: the ends of dashed rows are none.
  await expect(lines).toContainText('2 lines and about 10 words');
  await shot(page, 'returned-page');
  await lines.getByRole('button', { name: 'Keep as practice' }).click();
  await expect(log.getByRole('region', { name: 'Practice pages read back' }).locator('tbody tr')).toHaveCount(1);
  await shot(page, 'kept-page');
  const after = (await call(app, 'client.open', { clientId: idOf('client') })) as ClientRecord;
  expect(after.practicePages).toHaveLength(1);
  expect([after.samples, after.samplePages, after.pageMeasurements, after.readings]).toEqual([
    record.samples,
    record.samplePages,
    record.pageMeasurements,
    record.readings,
  ]);
  // It is not kept twice.
  await file.setInputFiles({ name: 'page.png', mimeType: 'image/png', buffer: page2 });
  await expect(lines).toContainText('This very page was kept before');
});

/** Five words of looped letters on a row: joined writing as far as lines are concerned. */
const writtenLine = (y: number): string =>
  Array.from({ length: 5 }, (_, word) => {
    const letters = 'q1.6 -0.6 1.6 -2.2 q0 -0.8 -0.7 -0.8 q-0.7 0 -0.7 1.4 q0 1.6 1.6 1.6 '.repeat(4);
    return `<path d="M${40 + word * 22} ${y}${letters}" fill="none" stroke="rgb(40,40,60)" stroke-width="0.5"/>`;
  }).join('');
