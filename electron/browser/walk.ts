/** Prints the family page as a therapist does: find the client, ask for the summary, save it as PDF. */
import type { Page } from 'playwright-core';

/** Longest wait for one step, in milliseconds. */
const PATIENCE = 30_000;

/** Opens a client by code, on whatever screen of the caseload the window is. */
export async function openClient(page: Page, code: string): Promise<void> {
  await page.getByRole('searchbox', { name: 'Find' }).fill(code, { timeout: PATIENCE });
  await page.getByRole('cell', { name: code, exact: true }).waitFor({ timeout: PATIENCE });
  await page.keyboard.press('Enter');
  await page.getByRole('navigation', { name: 'Client' }).waitFor({ timeout: PATIENCE });
}

/** Waits until the screen has nothing more to load and its fonts are there. */
export async function still(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle', { timeout: PATIENCE });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

/** Saves the family page of a client; the shell's port takes the bytes. */
export async function printSummary(page: Page, code: string): Promise<void> {
  await openClient(page, code);
  await page.getByRole('button', { name: 'Print a summary' }).click({ timeout: PATIENCE });
  await still(page);
  await page.getByRole('button', { name: /^Save as PDF/ }).click({ timeout: PATIENCE });
  await still(page);
}
