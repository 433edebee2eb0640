/** Saves that fail, and texts that are too long: nothing typed is lost, and each is a sentence, on every screen. */
import { expect, launchApp, openClient, test } from '../app.ts';

test('a folder gone read-only: said on every screen, what was typed stays and is saved later', async () => {
  // One window walks many screens: the limit tells what hangs, not how busy the machine is.
  test.setTimeout(300_000);
  let code: string | null = null;
  const app = await launchApp({ demo: true, refuseSaves: () => code });
  try {
    const { page } = app;
    await openClient(page, 'Edmund Varley');
    const plan = page.getByRole('textbox', { name: 'Plan', exact: true });
    code = 'folder-not-writable';
    await plan.fill('Ask for a thicker pen');
    await page.keyboard.press('Tab');
    const said = page.getByRole('alert').filter({ hasText: 'Not saved.' });
    for (const screen of [
      'Screen',
      'Sample',
      'Read back',
      'Program',
      'Goal',
      'Pages',
      'Progress',
      'Visit and record',
    ]) {
      await page.getByRole('navigation', { name: 'Client' }).getByRole('button', { name: screen, exact: true }).click();
      await expect(page.getByRole('heading', { level: 1, name: screen, exact: true })).toBeFocused();
      // What happened, what is safe, what to do.
      await expect(said).toContainText('cannot write into this folder');
      await expect(said).toContainText('What you typed stays in this window');
      await expect(said.getByRole('button', { name: 'Try again' })).toBeVisible();
      await expect(page.getByRole('contentinfo')).toContainText('Not saved');
    }
    for (const place of ['Caseload', 'Rules', 'Backup', 'Settings']) {
      await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: place, exact: true }).click();
      await expect(said).toBeVisible();
    }
    // A dialog that waits for its save says so itself: what lies under it is out of reach.
    await page.keyboard.press('Alt+0');
    await page.getByRole('button', { name: 'Add a client' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('textbox', { name: 'Name', exact: true }).fill('Ada Invented');
    await expect(dialog.getByRole('alert')).toContainText('Not saved.');
    await dialog.getByRole('button', { name: 'Close' }).click();
    await page.keyboard.press('Escape');
    await expect(plan).toHaveValue('Ask for a thicker pen');
    // Another client is looked at meanwhile, and this one opened again.
    await openClient(page, 'Rosalind Achter');
    await openClient(page, 'Edmund Varley');
    await expect(plan).toHaveValue('Ask for a thicker pen');
    code = null;
    // It may be tried by itself before the click.
    const retry = page.getByRole('contentinfo').getByRole('button', { name: 'Retry' });
    await retry.click({ timeout: 3000 }).catch(() => undefined);
    await expect(page.getByRole('contentinfo')).toContainText(/^Saved \d/);
    await expect(said).toHaveCount(0);

    // A note of 20,000 characters is kept whole; of a longer one it is said what did not go in.
    const told = page.getByLabel('What the client told');
    await told.fill('');
    await told.evaluate((field: HTMLTextAreaElement) => {
      field.focus();
      const data = new DataTransfer();
      data.setData('text', 'word '.repeat(4400));
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
    });
    await expect(page.getByRole('alert')).toContainText(
      'This field holds 20,000 characters. The last 2,000 did not go in',
    );
    await told.fill('word '.repeat(4000).trimEnd());
    await page.keyboard.press('Tab');
    await expect(page.getByText('This field holds')).toHaveCount(0);
    await page.reload();
    await openClient(page, 'Edmund Varley');
    expect((await told.inputValue()).length).toBe(19_999);
    const box = (await told.boundingBox())!;
    expect(box.height).toBeLessThan(400);
  } finally {
    await app.close();
  }
});
