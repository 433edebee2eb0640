/** The screens of the window in the order of a visit, each with the way to it and what is typed there. */
import type { Page } from 'playwright-core';
import { openClient } from '../../../electron/browser/walk.ts';
import { crawl } from './crawl.ts';
import { hiddenFields } from './hidden.ts';
import type { Ask } from './losing-client.ts';
import { addTo, nothingTyped, typeEverywhere, type Typed } from './fields.ts';

/**
 * 'few': the short walk; 'all': a caseload of one's own; 'demo': the demo's clients, where every form is filled;
 * 'hidden': what takes several steps to come up.
 */
export type Walk = 'few' | 'all' | 'demo' | 'hidden';

export interface Screen {
  name: string;
  walks: readonly Walk[];
  /** In every share: the way to all others. */
  always?: true;
  /** Goes on from the one before: both are in the same share. */
  goesOn?: true;
  go(): Promise<void>;
  typed?(): Promise<Typed>;
}

export function screensOf(page: Page, ask: Ask, marker: string, walk: Walk): Screen[] {
  const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
  const everywhere = () => typeEverywhere(page, marker);
  const passphrase = `${marker} calm river lantern`;
  const press = async (key: string) => {
    await page.keyboard.press('Escape');
    await page.keyboard.press(key);
    await page.waitForTimeout(300);
  };
  /** The demo's screens are full: what their buttons open is typed into as well, and then the screen itself. */
  const typedAt = (go: () => Promise<void>) => async () => {
    const typed = nothingTyped();
    if (walk === 'demo') addTo(typed, await crawl(page, marker, go));
    else addTo(typed, await everywhere());
    return typed;
  };
  const screen = (name: string, walks: readonly Walk[], go: () => Promise<void>): Screen => ({
    name,
    walks,
    go,
    typed: typedAt(go),
  });
  const maybe = async (name: RegExp) => {
    const there = page.locator('main').getByRole('button', { name }).first();
    if (await there.isVisible().catch(() => false)) await there.click();
  };
  const tab = (n: number, name: string, walks: readonly Walk[], part?: RegExp): Screen =>
    screen(name, walks, async () => {
      await press(`Alt+${n}`);
      if (part) await maybe(part);
    });
  const place = (name: string, part?: RegExp): Screen =>
    screen(part ? `${name}, ${part.source}` : name, ['all', 'demo'], async () => {
      await page.keyboard.press('Escape');
      await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name, exact: true }).click();
      await page.waitForTimeout(300);
      if (part) await maybe(part);
    });
  const both = ['all', 'demo'] as const;
  return [
    {
      name: 'First start',
      walks: ['few', 'all'],
      go: async () => undefined,
      // There is no caseload yet to keep anything in.
      typed: async () => ({ ...(await everywhere()), unkept: [] }),
    },
    {
      name: 'Create',
      always: true,
      walks: ['few', 'all'],
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
      name: 'Open the demo',
      always: true,
      walks: ['demo', 'hidden'],
      async go() {
        await button('Open the demo caseload').click();
        await page.getByRole('navigation', { name: 'Places' }).waitFor();
        await openClient(page, 'Q-101');
      },
    },
    {
      name: 'Add a client',
      always: true,
      walks: ['few', 'all'],
      go: () => button(/^Add a client/).click(),
      async typed() {
        const typed = await everywhere();
        await button('Add and open').click();
        await button('Start a visit today').click();
        return typed;
      },
    },
    tab(7, 'Visit', ['few', 'all', 'demo'], /^This visit/),
    tab(7, 'Whole record', ['few', 'all', 'demo'], /^Whole record/),
    {
      ...tab(1, 'Screen', ['few', 'all', 'demo']),
      // The red-flag questions, the items, seat and table, the findings: each is a page of its own.
      async typed() {
        const typed = nothingTyped();
        const sections = page.getByRole('navigation', { name: 'Intake' }).getByRole('button');
        for (let n = 0; n < (await sections.count()); n++) {
          const go = async () => {
            await press('Alt+1');
            await sections.nth(n).click();
          };
          await go();
          addTo(typed, await typedAt(go)());
        }
        return typed;
      },
    },
    tab(2, 'Sample', both, /^Start this sample/),
    tab(2, 'Sample, a new one', ['demo'], /^(New sample|Another sample|Start)/),
    tab(3, 'Read back', both),
    tab(4, 'Program', both, /^(Draft|Start|Add )/),
    tab(4, 'Practice log', both, /^Practice log/),
    tab(5, 'Goal', both, /^(Build a goal|New goal|Another goal)/),
    tab(8, 'Progress', both),
    tab(6, 'Pages', both, /^Change words/),
    {
      name: 'Pages, saved',
      walks: both,
      async go() {
        await press('Alt+6');
        for (const name of [/^Save as PDF/, /^Save text/, /^Copy text/, /^Keep as issued/]) {
          await maybe(name);
          await page.waitForTimeout(1500);
        }
      },
    },
    {
      name: 'Find',
      walks: ['few', 'all', 'demo'],
      go: () => press('Control+k'),
      typed: everywhere,
    },
    place('Backup'),
    place('Rules'),
    place('Rules', /^Texts/),
    screen('Rules, words of texts', ['all', 'demo'], async () => {
      await page.keyboard.press('Escape');
      await page
        .getByRole('navigation', { name: 'Places' })
        .getByRole('button', { name: 'Rules', exact: true })
        .click();
      await page.getByLabel('Rule table').getByRole('button', { name: 'Texts' }).click();
      await page.getByRole('radio', { name: 'Word lists' }).click();
      // A client's own folded parts lie hidden under this place.
      await page.locator('main details summary:visible').first().click();
    }),
    place('Figures'),
    place('Hand over'),
    place('Settings'),
    screen('People', ['all'], async () => {
      const nav = (name: string) => page.getByRole('navigation', { name });
      await nav('Places').getByRole('button', { name: 'Settings' }).click();
      await nav('Settings').getByRole('button', { name: 'People' }).click();
      await button(/^Add a person/).click();
    }),
    screen('Caseload', both, () => press('Alt+0')),
    ...hiddenFields(page, ask).map((each): Screen => ({
      ...each,
      walks: ['hidden'],
      async typed() {
        const typed = await typeEverywhere(page, marker, new Set(), each.within);
        return each.confirms ? { ...typed, unkept: [] } : typed;
      },
    })),
  ];
}
