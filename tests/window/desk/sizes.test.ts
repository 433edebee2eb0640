/**
 * Every screen of the demo caseload at the sizes of windows and zooms: nothing cut, the main button in sight, no long pane;
 * and as a screen reader is told it.
 */
import type { Page } from '@playwright/test';
import { expect, openClient, test } from '../app.ts';
import { covered, misfits, shownAt, shownTitle, TABS, tooSmallForFingers } from './misfits.ts';
import { faultsOf, treeOf, writeTree } from './spoken-tree.ts';

const SIZES = [
  { width: 1920, height: 1080 },
  { width: 1280, height: 720 },
  { width: 1366, height: 640 },
  // 1366 x 768 at 200 %, and WCAG 2.2, 1.4.10 Reflow: 1280 x 1024 at 400 %.
  { width: 683, height: 384 },
  { width: 320, height: 256 },
  { width: 1366, height: 768 },
] as const;
const LAPTOP = SIZES.at(-1)!;
/** Panes are no longer than this many windows on a clinic laptop; previews of pages apart. */
const LONGEST = 2.5;

/** The main button, where there is one, outside the window or below something else. */
const hiddenPrimary = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('[data-primary]')].flatMap((button) => {
      const { left, right, top, bottom } = button.getBoundingClientRect();
      const there = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      return button.offsetParent && (top < 0 || bottom > innerHeight + 1 || !button.contains(there))
        ? [`the main button is out of sight: ${button.textContent}`]
        : [];
    }),
  );

/** Panes that scroll through more than so many windows. */
const longPanes = (page: Page, most: number): Promise<string[]> =>
  page.evaluate(
    (limit) =>
      [...document.querySelectorAll('.panes *')]
        .filter((each) => /auto|scroll/.test(getComputedStyle(each).overflowY) && !each.querySelector('.printed'))
        .filter((each) => each.scrollHeight > limit * innerHeight)
        .map((each) => `a pane of ${each.scrollHeight} px: ${each.getAttribute('aria-label') ?? each.className}`),
    most,
  );

test('every screen fits every window size, and a screen reader is told it in order', async ({ demoApp }) => {
  test.setTimeout(400_000);
  const { page } = demoApp;
  await page.setViewportSize(LAPTOP);
  const found: string[] = [];
  const look = async (where: string): Promise<void> => {
    for (const size of SIZES) {
      await page.setViewportSize(size);
      const wrongNow = async (): Promise<string[]> => [
        ...(await misfits(page)),
        ...(await covered(page)),
        ...(size.width > 320 ? await hiddenPrimary(page) : []),
        ...(size === LAPTOP ? await longPanes(page, LONGEST) : []),
      ];
      await page.waitForTimeout(100);
      let wrong = await wrongNow();
      // Charts are drawn anew a moment after the window's size.
      for (let look = 0; wrong.length > 0 && look < 20; look++) {
        await page.waitForTimeout(150);
        wrong = await wrongNow();
      }
      found.push(...wrong.map((what) => `${where}, ${size.width} x ${size.height}: ${what}`));
    }
    found.push(...(await tooSmallForFingers(page)).map((what) => `${where}: ${what}`));
    const tree = await treeOf(page);
    writeTree(where, tree);
    found.push(...faultsOf(where, tree).map((what) => `${where}, screen reader: ${what}`));
  };
  /** Parts that a screen shows in turn. */
  const lookAtParts = async (where: string): Promise<void> => {
    const parts = page.locator('.head .segments button').filter({ visible: true });
    for (let at = 0; at < (await parts.count()); at++) {
      await parts.nth(at).click();
      await page.waitForTimeout(300);
      const wrong = [...(await misfits(page)), ...(await covered(page)), ...(await longPanes(page, LONGEST))];
      const part = await parts.nth(at).innerText();
      found.push(...wrong.map((what) => `${where}, ${part}: ${what}`));
    }
  };
  await look(await shownTitle(page));
  await openClient(page, 'Edmund Varley');
  for (const key of TABS) {
    await page.keyboard.press(key);
    const title = await shownAt(page, key);
    await page.waitForTimeout(400);
    await look(title);
    await lookAtParts(title);
  }
  const places = page.locator('.places button');
  for (let at = 0; at < (await places.count()); at++) {
    await places.nth(at).click();
    await expect(places.nth(at)).toHaveAttribute('aria-current', 'page');
    await page.waitForTimeout(300);
    await look(await shownTitle(page));
    await lookAtParts(await shownTitle(page));
  }
  expect(found).toEqual([]);
});
