/** Progress in the real window: the sentence, the chart, its values by keyboard and as a table. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { readPdf } from '../logic/pages/pdf-lines.ts';
import { expect, showPart, test } from './app.ts';
import { longestTask, watchLongTasks } from '../../build/bench/demo-window.ts';
import { addPage, axe, call, DAYS, openTab, RIGHTS, seedClient, seedWeeksBefore, TEXT } from './seeds/progress-seed.ts';

test('the chart, the table and the sentence say what the caseload holds', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Progress');
  const { page } = app;
  await expect(page.locator('.sentence')).toContainText(/^Four visits: from about 1[12] to about 1[56] words in 24; /);
  await expect(page.locator('.sentence')).toContainText(
    'Compared: four written with medicine on. Left out: one written with medicine off.',
  );
  await expect(
    page.getByText('Not the same: pen (gel pen, then felt pen), medicine (medicine on, then medicine off).').first(),
  ).toBeVisible();

  const chart = page.getByRole('slider', { name: /Chart of words read/ });
  await chart.focus();
  await page.keyboard.press('Home');
  await expect(chart).toHaveAttribute('aria-valuetext', /11 of 24 words, unfamiliar reader; interval 28 to 65\s%/);
  await page.keyboard.press('End');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await expect(chart).toHaveAttribute('aria-valuetext', /18 of 24 words/);

  // Read back from where the points stand in the picture.
  const drawn = JSON.parse((await page.locator('canvas').getAttribute('data-drawn'))!) as {
    label: string;
    values: number[];
  }[];
  const percents = RIGHTS.map((right) => (right / 24) * 100);
  const legibility = drawn.find((set) => set.label === 'Words read, unfamiliar reader')!.values;
  expect(legibility).toHaveLength(percents.length);
  legibility.forEach((value, i) => expect(Math.abs(value - percents[i]!)).toBeLessThan(0.3));
  expect(drawn.find((set) => set.label === 'Fatigue after writing, visit')!.values).toEqual([6, 6, 5, 4, 3]);

  await showPart(page, /^Table/);
  const rows = page.getByRole('group', { name: 'Table of progress' }).locator('tbody tr');
  await expect(rows).toHaveCount(DAYS.length + 1);
  for (const [i, right] of RIGHTS.entries()) {
    const row = rows.filter({ hasText: i < 3 ? 'Baseline sample' : /^.*Sample/ }).nth(i < 3 ? i : i - 3);
    await expect(row.locator('td').nth(2)).toHaveText(String(right));
    await expect(row.locator('td').nth(4)).toHaveText(String(Math.round((right / 24) * 1000) / 10));
  }
  await page.getByRole('button', { name: 'Save as CSV' }).click();
});

test('the page of progress passes axe in both themes', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Progress');
  const { page } = app;
  await expect(page.locator('.sentence')).toBeVisible();
  await page.getByText('The numbers behind this').click();
  for (let theme = 0; theme < 2; theme++) {
    const found = await axe(page);
    expect(found).toEqual([]);
    await page.keyboard.press('Alt+t');
  }
});

test('a shorter span says what lies in it', async ({ app }) => {
  await seedClient(app);
  const { page } = app;
  await openTab(app, 'Progress');
  await page.getByLabel('Span').selectOption('30');
  await expect(page.locator('.sentence')).toContainText('Three visits');
});

test('lines with the same words stand beside each other at one scale, and one over the other, by keyboard', async ({
  app,
}) => {
  await seedClient(app);
  await addPage(app, 0);
  await addPage(app, 4);
  await openTab(app, 'Progress');
  const { page } = app;
  await showPart(page, 'Then and now');
  const section = page.getByRole('region', { name: 'Then and now' });
  await expect(section.locator('figcaption')).toHaveText(TEXT.split('\n'));
  const strips = section.getByRole('img', { name: /Please call me back before half past eight/ });
  await expect(strips).toHaveCount(2);
  const [then, now] = [(await strips.first().boundingBox())!, (await strips.last().boundingBox())!];
  expect(Math.abs(then.width - now.width)).toBeLessThan(2);
  expect(await axe(page)).toEqual([]);
  await section.getByRole('radio', { name: 'One over the other' }).focus();
  await page.keyboard.press('Space');
  const slider = section.getByRole('slider');
  await slider.focus();
  await page.keyboard.press('Home');
  await expect(section.locator('.top').first()).toHaveCSS('clip-path', 'inset(0px 100% 0px 0px)');
  await section.getByRole('radio', { name: 'Whole pages' }).focus();
  await page.keyboard.press('Space');
  await expect(section.getByRole('img', { name: /Written page of/ })).toHaveCount(2);
});

test('the page prints in black on white from a dark screen, and the screen comes back', async ({ app }) => {
  await seedClient(app);
  await openTab(app, 'Progress');
  const { page } = app;
  await expect(page.locator('.sentence')).toBeVisible();
  await page.keyboard.press('Alt+t');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.evaluate(() => {
    const seen = ((globalThis as unknown as { seen: unknown[] }).seen = [] as unknown[]);
    window.addEventListener('beforeprint', () => {
      const drawn = [...document.querySelectorAll('.paper svg path')].map((one) => getComputedStyle(one).stroke);
      const lines = [...document.querySelectorAll('.paper svg path')]
        .map((one) => one.getAttribute('d') ?? '')
        .filter((d) => d.split('L').length >= 5 && !/[AZ]/.test(d)).length;
      seen.push({ theme: document.documentElement.dataset['theme'], drawn, lines });
    });
  });
  await call(app, 'pages.savePdf', { name: 'progress', paper: 'A4', page: null });
  const [seen] = (await page.evaluate(() => (globalThis as unknown as { seen: unknown[] }).seen)) as {
    theme: string;
    drawn: string[];
    lines: number;
  }[];
  // Lines of series are dark: the darkest channel tells them from the screen's light lines on dark.
  expect(seen!.theme).toBe('contrast');
  const strokes = seen!.drawn.filter((stroke) => stroke !== 'none');
  const dark = strokes.filter((stroke) => Math.min(...stroke.match(/\d+/g)!.slice(0, 3).map(Number)) < 40);
  expect(dark.length).toBeGreaterThan(10);
  // Words read, fatigue before and after, each in one line through its five points.
  expect(seen!.lines).toBe(3);
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  const [file] = readdirSync(app.saveFolder);
  const bytes = readFileSync(path.join(app.saveFolder, file!));
  // The chart is drawn, not a picture of dots: sharp at any size.
  expect(bytes.includes('/Subtype /Image')).toBe(false);
  const text = (await readPdf(bytes)).flatMap((sheet) => sheet.texts.map((t) => t.text)).join(' ');
  expect(text).toContain('Four visits: from about');
  expect(text).not.toContain('Print this page');
});

test('what could be said after each of 156 visits is asked in a worker: the window has no long task', async ({
  app,
}) => {
  test.setTimeout(240_000);
  await seedClient(app);
  await seedWeeksBefore(app, 151);
  await openTab(app, 'Progress');
  const { page } = app;
  await showPart(page, /^What changed/);
  const past = page.locator('details', { hasText: 'What could be said after each visit (156)' });
  await expect(past).toBeVisible();
  const worker = page.waitForEvent('worker');
  await watchLongTasks(page);
  await past.locator('summary').focus();
  await page.keyboard.press('Enter');
  expect((await worker).url()).toContain('past-verdicts-worker');
  await expect(past.locator('li')).toHaveCount(156, { timeout: 60_000 });
  await expect(past.locator('li').last()).toContainText('Cannot tell yet');
  // The verdicts take half a second and more together. A long task is one of 50 ms (W3C, Long Tasks); four times that
  // on a busy machine, which also draws the list.
  expect((await longestTask(page)) ?? 0).toBeLessThan(200);
});
