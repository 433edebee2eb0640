import { expect, openClient, test } from './app.ts';
test('shots', async ({ demoApp }) => {
  test.setTimeout(200_000);
  const { page, ask } = demoApp;
  await page.setViewportSize({ width: 1366, height: 768 });
  await openClient(page, 'Edmund Varley');
  for (const language of ['de', 'es']) {
    const { preferences } = (await ask('app.status')) as { preferences: object };
    await ask('app.prefer', { ...preferences, language });
    await page.reload();
    await expect(page.locator('[data-screen-title]').first()).toBeVisible();
    const shot = (name: string) => page.waitForTimeout(500).then(() => page.screenshot({ path: `/tmp/wt/shots-wa/${language}-${name}.png` }));
    await page.keyboard.press('Alt+1');
    await shot('screen');
    const steps = page.locator('.steps button');
    for (const at of [1, 3, 4]) { await steps.nth(at).click(); await shot(`screen-${at}`); }
    await page.keyboard.press('Alt+4');
    await shot('program');
    await page.locator('.detail .segments button').nth(1).click(); await shot('program-findings');
    await page.locator('.detail .segments button').nth(2).click(); await shot('program-kept');
    await page.keyboard.press('Alt+5'); await shot('goals');
    await page.keyboard.press('Alt+6'); await shot('pages');
    await page.locator('.places button').nth(1).click(); await shot('rules');
    await page.locator('.head .segments button').nth(1).click(); await shot('thresholds');
  }
});
