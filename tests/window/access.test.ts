/** Every screen against WCAG 2.2 AA (axe), in each theme, at 200 % zoom on a small laptop. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openClient, test } from './app.ts';

const tabs = ['Visit and record', 'Screen', 'Sample', 'Read back', 'Program', 'Goal', 'Progress', 'Pages'];
const places = ['Backup', 'Rules', 'Figures', 'Hand over', 'Settings'];

// Legacy mode: axe would open a second page for its report, and the window opens none.
async function check(page: Page, where: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  const found = violations.map(
    (v) =>
      `${v.id}: ${v.nodes
        .map((n) => n.target.join(' '))
        .slice(0, 3)
        .join(' | ')}`,
  );
  expect(found, where).toEqual([]);
}

/** The colors of the system in place of ours: words and marks still stand out. */
async function checkForced(page: Page, where: string): Promise<void> {
  await page.emulateMedia({ forcedColors: 'active' });
  const { violations } = await new AxeBuilder({ page }).setLegacyMode().withRules(['color-contrast']).analyze();
  await page.emulateMedia({ forcedColors: 'none' });
  expect(
    violations.flatMap((v) => v.nodes.map((n) => n.target.join(' '))),
    `${where}, forced colors`,
  ).toEqual([]);
}

/** Nothing may need sideways scrolling of the whole window (1280 px at 200 % is 640 CSS px). */
async function fits(page: Page, where: string): Promise<void> {
  const overflow = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overflow, `${where} scrolls sideways`).toBeLessThanOrEqual(1);
}

for (const theme of ['light', 'dark', 'contrast'] as const) {
  test(`every screen passes axe and reflows at 200 %: ${theme} theme`, async ({ demoApp }) => {
    test.setTimeout(300_000);
    const { page } = demoApp;
    await page.setViewportSize({ width: 640, height: 360 });
    for (let n = 0; n < { light: 0, dark: 1, contrast: 2 }[theme]; n++) await page.keyboard.press('Alt+t');
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
    await check(page, 'Caseload');
    await fits(page, 'Caseload');
    await openClient(page, 'Edmund Varley');
    for (const tab of tabs) {
      await page.getByRole('banner').getByRole('button', { expanded: false }).click();
      await page
        .getByRole('navigation', { name: 'Client', exact: true })
        .getByRole('button', { name: tab, exact: true })
        .click();
      await page.waitForTimeout(700);
      await check(page, tab);
      if (theme === 'contrast') await checkForced(page, tab);
      await fits(page, tab);
    }
    for (const place of places) {
      await page.getByRole('banner').getByRole('button', { expanded: false }).click();
      await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: place, exact: true }).click();
      await page.waitForTimeout(400);
      await check(page, place);
      await fits(page, place);
    }
    await page.keyboard.press('Control+k');
    await check(page, 'Palette');
    await page.keyboard.press('Escape');
    await page.keyboard.press('F1');
    await check(page, 'Keys');
  });
}

test('the start screen passes axe and can be used at 200 %', async ({ app }) => {
  await app.page.setViewportSize({ width: 640, height: 360 });
  await check(app.page, 'Start');
  await fits(app.page, 'Start');
});
