/** Help, look, lock and keys of the window itself. */
import type { Page } from '@playwright/test';
import { expect, openClient, test } from '../app.ts';

/** Where the focus is, and whether it can be seen: under nothing, and never on the page as a whole. */
const focusNow = (page: Page): Promise<{ name: string; lost: boolean; covered: boolean }> =>
  page.evaluate(() => {
    const at = document.activeElement!;
    const box = at.getBoundingClientRect();
    const top = document.elementFromPoint(box.left + box.width / 2, box.top + Math.min(box.height / 2, 12));
    return {
      name: `${at.tagName} ${(at.getAttribute('aria-label') ?? at.textContent ?? '').trim().slice(0, 40)}`,
      lost: at === document.body || at === document.documentElement,
      covered: box.width > 2 && top !== null && !at.contains(top) && !top.contains(at) && !top.closest('label'),
    };
  });

test('every screen takes and gives back the focus; F1 tells what it is for and what is next', async ({ demoApp }) => {
  // One window walks many screens: the limit tells what hangs, not how busy the machine is.
  test.setTimeout(300_000);
  const { page } = demoApp;
  await page.getByRole('heading', { level: 1, name: 'Due' }).waitFor();
  await page.keyboard.press('F1');
  await expect(page.getByRole('dialog', { name: 'Help: Caseload' })).toContainText('what is due today');
  await page.keyboard.press('Escape');
  await openClient(page, 'Edmund Varley');
  for (const [key, name] of [
    ['1', 'Screen'],
    ['2', 'Sample'],
    ['3', 'Read back'],
    ['4', 'Program'],
    ['5', 'Goal'],
    ['6', 'Pages'],
    ['7', 'Visit and record'],
    ['8', 'Progress'],
  ] as const) {
    await page.keyboard.press(`Alt+${key}`);
    const title = page.getByRole('heading', { level: 1, name, exact: true });
    await expect(title).toBeFocused();
    await page.keyboard.press('F1');
    const help = page.getByRole('dialog', { name: `Help: ${name}` });
    await expect(help.getByRole('listitem').first()).toBeVisible();
    await expect(help.getByRole('table', { name: 'Keys on this screen' })).toContainText('Ctrl+K');
    await page.keyboard.press('Escape');
    await expect(help).toHaveCount(0);
    await expect(title).toBeFocused();
    // Tab, forward and back: the focus is never lost and never under something.
    for (const tab of [...Array<string>(24).fill('Tab'), ...Array<string>(6).fill('Shift+Tab')]) {
      await page.keyboard.press(tab);
      const { name: where, lost, covered } = await focusNow(page);
      expect(lost || covered, `${name}: ${where}`).toBe(false);
    }
  }
  // Each dialog gives the focus back to what opened it.
  for (const [key, opener] of [
    ['Alt+4', page.getByRole('button', { name: 'Add a line …' })],
    ['Alt+2', page.getByRole('button', { name: 'New sample …' })],
    ['Alt+2', page.getByRole('button', { name: '1 precaution' })],
    ['Alt+2', page.getByRole('button', { name: 'Help', exact: true })],
    ['Alt+2', page.getByRole('button', { name: 'Find a client or command' })],
  ] as const) {
    await page.keyboard.press(key);
    await opener.press('Enter');
    await expect(page.getByRole('dialog')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(opener).toBeFocused();
  }
  // Space does only what the focused control does: a recorded writing time stands.
  await page.getByRole('tab', { name: 'Conditions' }).press('Enter');
  const time = page.getByLabel('Writing time');
  const stands = await time.inputValue();
  expect(Number(stands)).toBeGreaterThan(5);
  for (const control of await page.locator('.bar button, [role=tab], main summary, main h1').all()) {
    if (!(await control.isVisible()) || (await control.isDisabled())) continue;
    if (/New sample|Remove|Undo|Read back|stopwatch/.test((await control.textContent()) ?? '')) continue;
    await control.focus();
    await page.keyboard.press('Space');
    await page.keyboard.press('w');
  }
  await page.getByRole('tab', { name: 'Conditions' }).press('Enter');
  await expect(time).toHaveValue(stands);
  // A word is corrected by keys alone: arrows walk the page, Enter leads to the word's own field.
  await page.getByRole('region', { name: /^The page/ }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('What this word says')).toBeFocused();
});

test('keys are changed and taken away, look and lock are kept over a restart', async ({ demoApp }) => {
  const { page } = demoApp;
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Settings' }).click();
  await page.getByText('Change keys').click();
  await page.getByRole('button', { name: 'Change the key of: Find a client or command' }).click();
  // A key that would act while somebody types is refused, one that is taken too.
  await page.keyboard.press('j');
  await expect(page.getByText('needs Ctrl, Alt or F1 to F12')).toBeVisible();
  await page.keyboard.press('Control+l');
  await expect(page.getByText('Ctrl+L is taken: Lock the caseload')).toBeVisible();
  await page.keyboard.press('Control+j');
  await page.getByRole('button', { name: 'No key for: Lock the caseload' }).click();
  await page.getByRole('radio', { name: 'Dark' }).check();
  await page.getByLabel('Lock after').fill('25');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('contentinfo')).toContainText('Locks after 25 min without use');
  const find = page.getByRole('combobox', { name: 'Name, code or command' });
  await page.keyboard.press('Control+k');
  await expect(find).toHaveCount(0);
  await page.keyboard.press('Control+j');
  await expect(find).toBeVisible();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+l');
  await expect(page.getByRole('heading', { level: 1, name: 'Settings' })).toBeVisible();
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await expect(page.getByRole('contentinfo')).toContainText('Locks after 25 min without use');
});

test('the look follows the system until another one is chosen', async ({ demoApp }) => {
  const { page } = demoApp;
  const html = page.locator('html');
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect(html).toHaveAttribute('data-theme', 'dark');
  await page.emulateMedia({ colorScheme: 'light', contrast: 'more' });
  await expect(html).toHaveAttribute('data-theme', 'contrast');
  await page.keyboard.press('Alt+t');
  await expect(html).toHaveAttribute('data-theme', 'light');
});
