/** Help, look, lock and keys of the window itself. */
import { expect, openClient, test } from '../app.ts';

test('F1 tells what each screen is for and what is next; Esc closes it', async ({ demoApp }) => {
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
  }
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
  await page.keyboard.press('Control+k');
  await expect(page.getByRole('combobox')).toHaveCount(0);
  await page.keyboard.press('Control+j');
  await expect(page.getByRole('combobox')).toBeVisible();
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
