/** Fields that no button of a screen brings up by itself: the steps to each, on the demo's clients. */
import { generateX25519Identity, identityToRecipient } from 'age-encryption';
import type { Page } from 'playwright-core';
import { openClient } from '../../../electron/browser/walk.ts';
import { type Hidden, keptYears } from './kept-years.ts';
import { addLosingClient, type Ask } from './losing-client.ts';

/** @param ask asks the caseload as the window does */
export function hiddenFields(page: Page, ask: Ask): Hidden[] {
  const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
  const place = (name: string) =>
    page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name, exact: true }).click();
  const client = async (code: string, tab: number) => {
    await page.keyboard.press('Escape');
    await openClient(page, code);
    await page.keyboard.press(`Alt+${tab}`);
    await page.waitForTimeout(400);
  };
  const unfold = () =>
    page.evaluate(() => {
      for (const folded of document.querySelectorAll('details')) folded.open = true;
    });
  const thresholds = async () => {
    await page.keyboard.press('Escape');
    await place('Rules');
    await page.getByLabel('Rule table').getByRole('button', { name: 'Thresholds' }).click();
  };
  const ifThere = async (name: string | RegExp) => {
    await page.waitForTimeout(400);
    if (await button(name).isVisible()) await button(name).click();
  };
  const answer = async (group: string | RegExp, value: string) =>
    page.getByRole('radiogroup', { name: group }).first().getByRole('radio', { name: value, exact: true }).click();
  /** The items of the screen, with today's visit. */
  const toThePain = async () => {
    await client('Q-101', 7);
    await ifThere('Start a visit today');
    await page.keyboard.press('Alt+1');
    await page
      .getByRole('navigation', { name: 'Intake' })
      .getByRole('button', { name: /^Hand and body/ })
      .click();
    const pain = page.getByRole('heading', { name: 'Pain in hand or thumb' });
    await button(/^Pain in hand or thumb/).click();
    await pain.waitFor();
  };
  const program = async () => {
    await client('Q-104', 7);
    await ifThere('Start a visit today');
    await page.keyboard.press('Alt+4');
    await ifThere('Change it in a new draft');
    await page.waitForTimeout(600);
  };
  return [
    {
      name: 'Merge',
      async go() {
        await client('Q-101', 7);
        await page.getByRole('group', { name: 'Show' }).getByRole('button', { name: 'What changed' }).click();
        await unfold();
        await button(/^Merge another record/).click();
      },
    },
    {
      name: 'Restore a backup',
      async go() {
        await page.keyboard.press('Escape');
        await place('Backup');
        await button(/^Back up now/).click();
        await button(/^Restore …/).click();
      },
    },
    {
      name: 'Not tested',
      async go() {
        await toThePain();
        await page.keyboard.press('n');
        await page.getByRole('heading', { name: 'Why was it not tested?' }).waitFor();
      },
    },
    {
      name: 'Item with an answer',
      goesOn: true,
      async go() {
        await page.getByRole('region', { name: 'Why was it not tested?' }).getByRole('button').first().click();
        await button(/^Pain in hand or thumb/).click();
        await page.getByLabel('Note').first().waitFor();
      },
    },
    {
      name: 'Review of a stop',
      async go() {
        await toThePain();
        await answer('Pain now, 0 to 10: before', '6');
        await button(/^Red flags/).click();
        await button('Known and medically reviewed').click();
      },
    },
    {
      name: 'Red flag with an answer',
      goesOn: true,
      async go() {
        await page.keyboard.press('Escape');
        await button(/^Red flags/).click();
        await page.keyboard.press('y');
        await page.getByLabel('Note').first().waitFor();
      },
    },
    {
      name: 'Size of a tablet',
      async go() {
        await client('Q-101', 2);
        await ifThere('Start this sample');
        await page.getByRole('tab', { name: 'Pen' }).click();
        await page.getByLabel('Surface').selectOption('tablet-paper');
        await button(/^Set the (true size|size again)/).click();
      },
    },
    {
      name: 'Scale by two points',
      async go() {
        await client('Q-103', 2);
        await page.locator('details.scale summary').first().click();
        await button('Mark two points').click();
      },
    },
    {
      name: 'A word of the page',
      async go() {
        await client('Q-103', 2);
        await page.getByRole('tab', { name: /^Words/ }).click();
        await page.getByRole('region', { name: 'Written page' }).locator('[tabindex="0"], svg, canvas').first().focus();
        await page.keyboard.press('ArrowRight');
        await page.getByLabel('What this word says').waitFor();
      },
    },
    {
      name: 'A line read blind',
      async go() {
        await client('Q-103', 3);
        await page.getByLabel('Reader’s initials', { exact: true }).fill('ZZ');
        await page.keyboard.press('Tab');
        await button(/^Start reading/).click();
        const size = page.getByRole('dialog', { name: 'True size of this screen' });
        await size.or(page.getByLabel('Type what you read')).first().waitFor();
        for (const name of ['It fits', 'It fits again']) {
          if (!(await size.isVisible())) break;
          await size.getByLabel('Across, px').fill('324');
          await size.getByLabel('Down, px').fill('204');
          await size.getByRole('button', { name, exact: true }).click();
        }
        await page.getByLabel('Type what you read').waitFor();
      },
    },
    {
      name: 'Words of the home program',
      async go() {
        await client('Q-103', 6);
        await page.getByRole('radio', { name: /^Home program/ }).click();
        await page.getByLabel('Your own words at the top').waitFor();
      },
    },
    {
      name: 'Goal of a signature',
      async go() {
        await client('Q-102', 7);
        await ifThere('Start a visit today');
        await page.keyboard.press('Alt+5');
        await page.getByRole('region', { name: 'Steps of the writing occasions' }).getByRole('button').first().click();
      },
    },
    {
      name: 'Signature, two people',
      goesOn: true,
      async go() {
        const region = page.getByRole('region', { name: 'Signature' });
        await region.getByRole('button').first().click();
        await page.getByLabel('Who looks at the pairs').waitFor();
      },
    },
    {
      name: 'Goal by tries',
      async go() {
        await client('Q-103', 7);
        await ifThere('Start a visit today');
        await page.keyboard.press('Alt+5');
        const steps = page.getByRole('region', { name: 'Steps of the writing occasions' });
        await steps.getByRole('button', { name: /check/ }).click();
        await page.getByLabel('On how many tries').waitFor();
      },
    },
    {
      name: 'Explanation of a loss',
      async go() {
        const code = await addLosingClient(ask);
        await page.reload();
        await client(code, 7);
        await ifThere('Start a visit today');
        await page.keyboard.press('Alt+1');
        await button(/^Red flags/).click();
        await button(/^Note what explains it/).click();
        await page.getByLabel('Explanation').waitFor();
      },
    },
    {
      name: 'A colleague’s clients',
      async go() {
        await page.keyboard.press('Escape');
        await place('Hand over');
        await page.getByLabel('Name or initials').fill('QX');
        await page.getByLabel('Their key').fill(await identityToRecipient(await generateX25519Identity()));
        await button('Add this colleague').click();
        await page.getByLabel('Filter').waitFor();
      },
    },
    {
      name: 'Search over the thresholds',
      within: 'main .find',
      async go() {
        await thresholds();
        await page.getByLabel('Find a threshold').waitFor();
      },
    },
    {
      name: 'Thresholds',
      within: 'main table',
      async go() {
        await thresholds();
        await page.getByLabel('Find a threshold').fill('table above elbow for writing');
      },
    },
    {
      name: 'A trial that runs',
      async go() {
        await program();
        await button('Trials').click();
        await page.getByLabel('Option 1').fill('thin pen');
        await page.getByLabel('Option 2').fill('thick pen');
        await page.keyboard.press('Tab');
        await button('Draw the order and begin').click();
        await page.getByLabel('Seconds, line 1', { exact: true }).waitFor();
      },
    },
    {
      name: 'A line of the program',
      async go() {
        await program();
        const rows = page.locator('table.program tbody tr button.link');
        // Not every line counts minutes and lines.
        for (let n = 0; n < (await rows.count()); n++) {
          await rows.nth(n).click();
          await page.getByRole('article').first().getByRole('button', { name: /^Edit/ }).click();
          await page.waitForTimeout(200);
          if (await page.getByLabel('Minutes each time').isVisible()) return;
          await button('Done').click();
        }
        throw new Error('no line counts minutes');
      },
    },
    {
      name: 'Seen while writing',
      async go() {
        await program();
        const sides = page.getByRole('group', { name: 'Beside the lines' });
        await sides.getByRole('button', { name: 'Findings' }).click();
        await page.getByText(/^Seen while writing/).waitFor();
      },
    },
    {
      name: 'A line against a caution',
      async go() {
        await program();
        await page.keyboard.press('Alt+a');
        await button(/^Add, with a reason/).click();
        await page.keyboard.press('Escape');
        await ifThere('Review, then approve');
        await page
          .getByLabel(/Reason for keeping it/)
          .first()
          .waitFor();
      },
    },
    ...keptYears(page, ask),
  ];
}
