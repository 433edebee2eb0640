/** The language of the screens: chosen in Settings, kept; longer words clip nothing. */
import type { ScreenLanguage } from '../../../db/types/common.ts';
import { expect, openClient, test, type LaunchedApp } from '../app.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { shownWords } from './shown-words.ts';
import { misfits, shownAt, TABS } from './misfits.ts';

const SIZES = [
  { width: 1366, height: 768 },
  { width: 683, height: 384 },
];

/** The shell knows which client is open: a start leads back there. */
const placeIsKept = ({ ask }: LaunchedApp): Promise<void> =>
  expect
    .poll(async () => ((await ask('about.lastPlace')) as { at: { clientId: string | null } | null }).at?.clientId)
    .toBeTruthy();

/** Shows the screens in a language, as after a start that leads back to the open client. */
async function inLanguage(app: LaunchedApp, language: ScreenLanguage): Promise<void> {
  const { page, ask } = app;
  await placeIsKept(app);
  const { preferences } = (await ask('app.status')) as { preferences: object };
  await ask('app.prefer', { ...preferences, language });
  await page.reload();
  // The client comes back a moment after the first screen: a key pressed before leads nowhere.
  await expect(page.locator('#step-readback')).toBeVisible();
}

for (const size of SIZES)
  test(`words 40 % longer clip nothing at ${size.width} x ${size.height}`, async ({ demoApp }) => {
    test.setTimeout(300_000);
    const { page } = demoApp;
    await openClient(page, 'Edmund Varley');
    await inLanguage(demoApp, 'long');
    await page.setViewportSize(size);
    const found: string[] = [];
    const look = async (where: string) => {
      await page.waitForTimeout(400);
      found.push(...(await misfits(page)).map((what) => `${where}: ${what}`));
    };
    for (const key of TABS) {
      await page.keyboard.press(key);
      await look(await shownAt(page, key));
    }
    const places = page.locator('.places button');
    for (let at = 0; at < (await places.count()); at++) {
      if (size.width < 900) await page.getByRole('banner').getByRole('button', { expanded: false }).click();
      await places.nth(at).click();
      await expect(places.nth(at)).toHaveAttribute('aria-current', 'page');
      await look(`place ${at}`);
    }
    expect(found).toEqual([]);
  });

test('the language of the screens is chosen in Settings, holds at once, and is kept', async ({ demoApp }) => {
  const { page, ask } = demoApp;
  await openClient(page, 'Edmund Varley');
  const clients = (await ask('caseload.list')) as { id: string; name: string }[];
  const { id: clientId } = clients.find(({ name }) => name === 'Edmund Varley')!;
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Settings' }).click();
  await page.getByLabel('Language of the screens').selectOption('de');
  await expect(page.locator('html')).toHaveAttribute('lang', 'de');
  // Two readers: the mean of 29 and 28 words, with a decimal comma.
  await expect(page.locator('#step-readback')).toHaveText('28,5 von 33 Wörtern');
  await expect(page.locator('[data-screen-title]:focus')).toHaveCount(1);
  await expect
    .poll(async () => ((await ask('app.status')) as { preferences: { language: string } }).preferences.language)
    .toBe('de');
  await placeIsKept(demoApp);
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('lang', 'de');
  // A number is typed with a comma, kept as a number, and shown with a comma again.
  for (const [language, typed] of [
    ['de', '251,5'],
    ['es', '248,5'],
  ] as const) {
    const { page: words, places } = screensIn(language);
    if (language === 'es') {
      await page.locator('.places button').last().click();
      await page.getByLabel(screensIn('de').places.languageOfScreens).selectOption('es');
      await expect(page.getByLabel(places.languageOfScreens)).toBeVisible();
    }
    await expect(page.locator('#step-readback')).toBeVisible();
    await page.keyboard.press('Alt+2');
    await page.getByRole('tab', { name: words.conditions }).click();
    const time = page.getByLabel(words.writingTime);
    await time.fill(typed);
    await time.press('Tab');
    const seconds = Number(typed.replace(',', '.'));
    await expect
      .poll(async () => JSON.stringify(await ask('client.open', { clientId })))
      .toContain(`"seconds":${seconds},`);
    await page.reload();
    await expect(page.locator('#step-readback')).toBeVisible();
    await page.keyboard.press('Alt+2');
    await page.getByRole('tab', { name: words.conditions }).click();
    await expect(page.getByLabel(words.writingTime)).toHaveValue(typed);
  }
});

/** Ways through the screens Pages and Rules: the buttons of each part in turn, by their place. */
const ways: readonly { where: string; key: string | null; parts: string }[] = [
  { where: 'Pages', key: 'Alt+6', parts: '.kinds [role="radio"]' },
  { where: 'Rules', key: null, parts: '.head .segments button' },
];

test('nothing of Pages and Rules stays English in Spanish and German', async ({ demoApp }) => {
  test.setTimeout(300_000);
  const { page, ask } = demoApp;
  await openClient(page, 'Edmund Varley');
  const clients = (await ask('caseload.list')) as { id: string; name: string }[];
  const { id: clientId } = clients.find(({ name }) => name === 'Edmund Varley')!;
  // What the record says in the therapist's own words; what a draft keeps is told anew.
  const record = (await ask('client.open', { clientId })) as Record<string, unknown>;
  // Texts to write are in their own language, whatever the screens speak.
  const { contents, texts } = rulesInUse(null);
  const own = JSON.stringify({ ...record, programs: [], contents, texts });
  const walk = async (language: ScreenLanguage): Promise<Map<string, Set<string>>> => {
    await inLanguage(demoApp, language);
    const seen = new Map<string, Set<string>>();
    for (const { where, key, parts } of ways) {
      const words = new Set<string>();
      // Screens that were open stay behind the one that is shown.
      const buttons = page.locator(parts).filter({ visible: true });
      if (key) await page.keyboard.press(key);
      else await page.locator('.places button').nth(1).click();
      await expect(buttons.first()).toBeVisible();
      const count = await buttons.count();
      for (let at = 0; at < count; at++) {
        await buttons.nth(at).click();
        await page.waitForTimeout(100);
        for (const text of await shownWords(page, own)) words.add(text);
      }
      seen.set(where, words);
    }
    return seen;
  };
  const english = await walk('en');
  for (const language of ['es', 'de'] as const) {
    const other = await walk(language);
    const same = [...other].flatMap(([where, words]) =>
      [...words].filter((text) => english.get(where)!.has(text)).map((text) => `${where}: ${text}`),
    );
    expect.soft(same, language).toEqual([]);
  }
});
