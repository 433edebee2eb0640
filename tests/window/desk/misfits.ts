import { expect, type Page } from '@playwright/test';

/** Keys of the screens of a client, in the order of the rail. */
export const TABS = ['Alt+7', 'Alt+1', 'Alt+2', 'Alt+3', 'Alt+4', 'Alt+5', 'Alt+6', 'Alt+8'];

/** The title of the screen that a key led to, once it is shown: screens that were open stay behind it. */
export async function shownAt(page: Page, key: string): Promise<string> {
  await expect(page.locator(`#rail [aria-keyshortcuts="${key}"]`)).toHaveAttribute('aria-current', 'page');
  return shownTitle(page);
}

export const shownTitle = (page: Page): Promise<string> =>
  page.locator('[data-screen-title]').filter({ visible: true }).first().innerText();

/** What does not fit: the window that scrolls sideways, buttons with cut words or beyond the edge. */
export const misfits = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth - clientWidth > 1) found.push(`the window scrolls sideways by ${scrollWidth - clientWidth}`);
    /** A table or box that scrolls sideways by itself shows everything in turn. */
    const scrolls = (from: Element): boolean => {
      for (let at = from.parentElement; at; at = at.parentElement)
        if (/auto|scroll/.test(getComputedStyle(at).overflowX) && at.scrollWidth > at.clientWidth + 1) return true;
      return false;
    };
    for (const button of document.querySelectorAll<HTMLElement>('button, [role="tab"], [role="radio"]')) {
      const { left, right, width } = button.getBoundingClientRect();
      if (!button.offsetParent || width < 2 || getComputedStyle(button).visibility === 'hidden') continue;
      const name = button.textContent.trim().slice(0, 60);
      const cut = getComputedStyle(button).overflowX !== 'visible' && button.scrollWidth > button.clientWidth + 1;
      if (cut) found.push(`cut: ${name}`);
      if ((right > clientWidth + 1 || left < -1) && !scrolls(button)) found.push(`beyond the edge: ${name}`);
    }
    return found;
  });
