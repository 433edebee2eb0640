/** The form of how long records are kept, and the number that is typed before one is erased: of a client of years ago. */
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { newClient } from '../../../renderer/logic/caseload/new-client.ts';
import { type Ask, words } from './losing-client.ts';

export interface Hidden {
  name: string;
  /** Only the fields in this part: a search above it would empty it. */
  within?: string;
  /** Goes on from the one before: both are in the same share. */
  goesOn?: true;
  /** What is typed here confirms an erasing: on purpose nothing keeps it. */
  confirms?: true;
  go(): Promise<void>;
}

async function addOldClient(ask: Ask): Promise<void> {
  const clientId = randomUUID();
  await ask('client.save', newClient(clientId, 'Odo Old (invented)', 'L-002'));
  const date = new Date(Date.now() - 4 * 365 * 86_400_000).toISOString().slice(0, 10);
  await ask('visit.save', { id: randomUUID(), clientId, date, kind: 'first', minutes: 45, ...words });
}

export function keptYears(page: Page, ask: Ask): Hidden[] {
  const dialog = page.getByRole('dialog');
  return [
    {
      name: 'Kept years',
      within: 'dialog',
      async go() {
        await addOldClient(ask);
        await page.reload();
        await page.keyboard.press('Alt+0');
        await page
          .getByRole('button', { name: /^All clients/ })
          .first()
          .click();
        await page.getByRole('button', { name: 'How long records are kept' }).first().click();
        await dialog.getByLabel(/^Kept for/).waitFor();
      },
    },
    {
      name: 'Records whose years are over',
      within: 'dialog',
      goesOn: true,
      confirms: true,
      async go() {
        await dialog.getByLabel(/^Kept for/).fill('2');
        await page.keyboard.press('Tab');
        await dialog.getByRole('checkbox', { name: 'Choose all' }).check();
        await dialog.getByRole('button', { name: 'Erase …' }).click();
        await dialog.getByLabel(/^To erase, type/).waitFor();
      },
    },
  ];
}
