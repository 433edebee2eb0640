/** Pages in the real window: family summary in two clicks, words changed on the page, PDF, issued pages that stay. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { readPdf } from '../logic/pages/pdf-lines.ts';
import { expect, showPart, test } from './app.ts';
import { pdfTags } from './seeds/pdf-tags.ts';
import { axe, call, idOf, openTab, seedClient } from './seeds/progress-seed.ts';

test('the family summary prints as one sheet with what the facts say, and stays as issued', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  const preview = page.getByRole('region', { name: 'Preview: the page as it prints' });
  await expect(preview).toContainText('read 18 of 24 words.');
  await expect(preview).toContainText('Last time it was 16 of 24.');

  await page.getByRole('button', { name: 'Change words' }).click();
  await preview.getByRole('textbox', { name: 'Title' }).fill('Ines, your writing');
  await preview.getByRole('textbox', { name: 'Title' }).press('Enter');
  await expect(preview.getByRole('heading', { level: 1 })).toHaveText('Ines, your writing');

  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  const [file] = readdirSync(app.saveFolder).filter((name) => name.endsWith('.pdf'));
  const bytes = readFileSync(path.join(app.saveFolder, file!));
  const sheets = await readPdf(bytes);
  expect(sheets).toHaveLength(1);
  // For screen readers (PDF 1.7, 14.7 and 14.8): title, language, headings, every figure with its text.
  const tags = await pdfTags(bytes);
  expect(tags).toMatchObject({ tagged: true, title: expect.stringMatching(/^Family summary, /), language: 'en' });
  expect(tags.roles).toEqual(expect.arrayContaining(['H1', 'H2', 'P', 'L', 'LI']));
  for (const figure of tags.figures) expect(figure).not.toBe('');
  // The window has its own title back.
  await expect(page).toHaveTitle(/, Pages - Fairhand$/);
  const text = sheets[0]!.texts.map((t) => t.text).join(' ');
  expect(text).toContain('Ines, your writing');
  expect(text).not.toContain('Fairhand');

  await page.getByRole('button', { name: 'Keep as issued' }).click();
  await expect(page.getByText('Kept as issued')).toBeVisible();
  await page.getByRole('button', { name: 'Undo my changes to the page' }).click();
  await expect(preview.getByRole('heading', { level: 1 })).toHaveText('Your writing visit');
  await page.getByRole('button', { name: /Family summary, / }).click();
  await expect(preview.getByRole('heading', { level: 1 })).toHaveText('Ines, your writing');
});

test('practice pages come out of the window true to scale', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  await page.getByRole('radio', { name: /Practice pages/ }).click();
  await page.getByLabel('Lines', { exact: true }).selectOption('ruled-8.7');
  await expect(page.getByText('Print at actual size (100 %)')).toBeVisible();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  const [file] = readdirSync(app.saveFolder).filter((name) => name.endsWith('.pdf'));
  const [sheet] = await readPdf(readFileSync(path.join(app.saveFolder, file!)));
  const ys = [...new Set(sheet!.lines.filter((l) => l.x2 - l.x1 > 50).map((l) => l.y1))].sort((a, b) => a - b);
  expect(ys.length).toBeGreaterThan(1);
  ys.forEach((y, i) => expect(Math.abs(y - ys[0]! - i * 8.7)).toBeLessThan(0.05));
  const bar = sheet!.boxes.find((box) => Math.abs(box.height - 1.2) < 0.05 && box.width > 50);
  expect(Math.abs(bar!.width - 100)).toBeLessThan(0.05);
});

test('every kind of page can be shown, and breaks no access rule in light and dark', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  for (const kind of [
    'Home program',
    'Practice pages',
    'Initial evaluation',
    'Visit note',
    'Progress report',
    'Letter',
    'Referral',
    'Discharge summary',
    'Family summary',
  ]) {
    await page.getByRole('radio', { name: new RegExp(`^${kind}`) }).click();
    await expect(page.locator('.preview .printed').first()).toBeVisible();
    // The window's own styles reach no page: nothing lies on the foot line, or on its neighbor.
    const spoiled = await page.locator('.preview .printed').evaluateAll((sheets) =>
      sheets.flatMap((sheet) => {
        const [doc, foot] = ['.doc', '.doc-foot'].map((name) => sheet.querySelector(name)?.getBoundingClientRect());
        const names = [...sheet.querySelectorAll('.doc dt')].map((name) => name.textContent);
        const narrow = names.filter((_, i) => {
          const [name, value] = ['dt', 'dd'].map((of) => sheet.querySelectorAll<HTMLElement>(`.doc ${of}`)[i]!);
          return name!.scrollWidth > name!.clientWidth + 1 || value!.scrollWidth > value!.clientWidth + 1;
        });
        return [...narrow, ...(doc && foot && doc.bottom > foot.top + 1 ? ['over its foot'] : [])];
      }),
    );
    expect(spoiled, kind).toEqual([]);
    expect(await axe(page), kind).toEqual([]);
    if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/${kind}.png` });
  }
  await page.keyboard.press('Alt+t');
  expect(await axe(page)).toEqual([]);
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/dark.png` });
});

test('words typed for a page and words changed on it are saved like every other edit', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  const preview = page.getByRole('region', { name: 'Preview: the page as it prints' });
  await page.getByRole('radio', { name: /^Letter/ }).click();
  await page.getByLabel('What you ask').fill('Is the time after the tablet right for writing?');
  await page.getByLabel('What you ask').blur();
  await expect(preview).toContainText('Is the time after the tablet right for writing?');
  await page.getByRole('radio', { name: /^Family summary/ }).click();
  await page.getByRole('button', { name: 'Change words' }).click();
  await preview.getByRole('textbox', { name: 'Title' }).fill('Ines, your writing');
  await preview.getByRole('textbox', { name: 'Title' }).press('Enter');
  await expect(page.getByText(/^Saved/)).toBeVisible();

  await openTab(app, 'Pages');
  await expect(preview.getByRole('heading', { level: 1 })).toHaveText('Ines, your writing');
  await page.getByRole('radio', { name: /^Letter/ }).click();
  await expect(page.getByLabel('What you ask')).toHaveValue('Is the time after the tablet right for writing?');
  await page.getByRole('radio', { name: /^Family summary/ }).click();
  await expect(page.getByText('has changed since you changed its words')).toHaveCount(0);
  await call(app, 'client.save', {
    ...((await call(app, 'client.open', { clientId: idOf('client') })) as { client: object }).client,
    at: undefined,
    by: undefined,
    callName: 'Jo',
    callNumber: '555-0100',
  });
  await openTab(app, 'Pages');
  await expect(page.getByText('has changed since you changed its words')).toBeVisible();
  await page.getByRole('button', { name: 'Undo my changes to the page' }).click();
  await expect(preview.getByRole('heading', { level: 1 })).toHaveText('Your writing visit');
  await expect(preview).toContainText('555-0100');
});

test('print size and language of the pages stay with the client', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  await page.getByRole('radio', { name: '16', exact: true }).click();
  await page.getByRole('radio', { name: 'Español', exact: true }).click();
  await openTab(app, 'Visit and record');
  await showPart(page, 'Whole record');
  await expect(page.getByRole('radio', { name: '16 pt' })).toBeChecked();
  await openTab(app, 'Pages');
  await expect(page.getByRole('radio', { name: '16', exact: true })).toBeChecked();
  await expect(page.getByRole('radio', { name: 'Español', exact: true })).toBeChecked();
  // The PDF is in Spanish, title and texts of pictures too; the English copy behind it says that it is English.
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  const [file] = readdirSync(app.saveFolder).filter((name) => name.endsWith('.pdf'));
  const tags = await pdfTags(readFileSync(path.join(app.saveFolder, file!)));
  expect(tags).toMatchObject({ title: expect.stringMatching(/^Su visita de escritura, /), language: 'es' });
  expect(tags.languages).toContain('Art en');
});

test('an issued page carries the fingerprint of the trail, and Backup tells whether it still fits', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  await page.getByRole('button', { name: 'Keep as issued' }).click();
  await expect(page.getByText('Kept as issued')).toBeVisible();
  const { issuedPages } = (await call(app, 'client.open', { clientId: idOf('client') })) as {
    issuedPages: { pdf: string; model: { fingerprint: string } }[];
  };
  const { pdf, model } = issuedPages[0]!;
  const bytes = await page.evaluate(
    async (id) => [...new Uint8Array(await (await fetch(`/blob/${id}`)).arrayBuffer())],
    pdf,
  );
  const [sheet] = await readPdf(Buffer.from(bytes));
  const printed = sheet!.texts
    .map(({ text }) => text)
    .join(' ')
    .match(/# ?(\d+(?:-[0-9A-Z]{4}){3})/)?.[1];
  expect(printed).toBe(model.fingerprint);
  // What was not issued carries none.
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText('The PDF was saved.')).toBeVisible();
  const [file] = readdirSync(app.saveFolder).filter((name) => name.endsWith('.pdf'));
  const [draft] = await readPdf(readFileSync(path.join(app.saveFolder, file!)));
  expect(draft!.texts.map(({ text }) => text).join(' ')).not.toContain(printed);

  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Backup', exact: true }).click();
  const field = page.getByLabel('Fingerprint on the page');
  await field.fill(printed!.toLowerCase().replaceAll('-', ' '));
  await page.getByRole('button', { name: 'Check it' }).click();
  await expect(page.getByText('It fits: the first')).toBeVisible();
  await field.fill(printed!.replace(/.$/, (last) => (last === 'Z' ? 'Y' : 'Z')));
  await page.getByRole('button', { name: 'Check it' }).click();
  await expect(page.getByText('It does not fit')).toBeVisible();
  expect(await axe(page)).toEqual([]);
});

test('what was copied is gone from the clipboard after the lock', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Pages');
  const { page } = app;
  await page.getByRole('radio', { name: /^Visit note/ }).click();
  await page.getByRole('button', { name: 'Copy text' }).click();
  await expect(page.getByText('The text is on the clipboard.')).toBeVisible();
  await page.keyboard.press('Control+l');
  const field = page.getByLabel('Passphrase', { exact: true });
  await field.focus();
  await page.keyboard.press('Control+v');
  await expect(field).toHaveValue('');
  // The looking works: what is copied now can be pasted.
  await field.fill('pasted');
  await page.evaluate(() => navigator.clipboard.writeText('from elsewhere'));
  await field.fill('');
  await page.keyboard.press('Control+v');
  await expect(field).toHaveValue('from elsewhere');
});
