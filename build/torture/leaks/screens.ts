/** The screens of the window in the order of a visit, each with the way to it and what is typed there. */
import type { Page } from 'playwright-core';
import { typeEverywhere, type Typed } from './fields.ts';

export interface Screen {
  name: string;
  /** Part of the short walk. */
  few: boolean;
  go(): Promise<void>;
  typed?(): Promise<Typed>;
}

export function screensOf(page: Page, marker: string): Screen[] {
  const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
  const everywhere = () => typeEverywhere(page, marker);
  const passphrase = `${marker} calm river lantern`;
  const tab = (
    n: number,
    name: string,
    few: boolean,
    more: () => Promise<unknown> = async () => undefined,
  ): Screen => ({
    name,
    few,
    async go() {
      await page.keyboard.press('Escape');
      await page.keyboard.press(`Alt+${n}`);
      await page.waitForTimeout(300);
      await more();
    },
    typed: everywhere,
  });
  const place = (name: string): Screen => ({
    name,
    few: false,
    go: () => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name, exact: true }).click(),
    typed: everywhere,
  });
  const maybe = async (name: RegExp) => {
    const there = page.locator('main').getByRole('button', { name }).first();
    if (await there.isVisible().catch(() => false)) await there.click();
  };
  return [
    {
      name: 'Create',
      few: true,
      async go() {
        await page.getByLabel(/^Your initials/).fill('QM');
        await page.getByLabel(/^Clinic/).fill(marker);
        await page.getByLabel(/^Passphrase(?! again)/).fill(passphrase);
        await page.getByLabel(/^Passphrase again/).fill(passphrase);
        await button('Create the caseload').click();
        await button(/^I have kept it/).click();
      },
    },
    {
      name: 'Add a client',
      few: true,
      go: () => button(/^Add a client/).click(),
      async typed() {
        const typed = await everywhere();
        await button('Add and open').click();
        await button('Start a visit today').click();
        return typed;
      },
    },
    tab(7, 'Visit and record', true),
    {
      ...tab(1, 'Screen', true),
      // The red-flag questions, the items, seat and table, the findings: each is a page of its own.
      async typed() {
        const typed: Typed = { words: 0, short: 0 };
        const sections = page.getByRole('navigation', { name: 'Intake' }).getByRole('button');
        for (let n = 0; n < (await sections.count()); n++) {
          await sections.nth(n).click();
          const here = await everywhere();
          typed.words += here.words;
          typed.short += here.short;
        }
        return typed;
      },
    },
    tab(2, 'Sample', false, () => maybe(/^Start this sample/)),
    tab(3, 'Read back', false),
    tab(4, 'Program', false, () => maybe(/^Add /)),
    tab(5, 'Goal', false, () => maybe(/^Build a goal/)),
    tab(8, 'Progress', false),
    tab(6, 'Pages', false, async () => {
      await maybe(/^Save as PDF/);
      await page.waitForTimeout(1500);
    }),
    place('Backup'),
    place('Rules'),
    place('Settings'),
    {
      name: 'Caseload',
      few: false,
      go: () => page.keyboard.press('Alt+0'),
      typed: everywhere,
    },
  ];
}
