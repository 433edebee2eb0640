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

/** What does not fit: the window that scrolls sideways, buttons with cut words or beyond the edge, tables without room. */
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
    for (const table of document.querySelectorAll('table'))
      if (table.checkVisibility() && table.offsetHeight > 20 && table.parentElement!.clientHeight < 20)
        found.push(`a table has no height: ${table.textContent.trim().slice(0, 60)}`);
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

/** Controls in sight whose middle lies under something else. What a pane or a closed part hides by itself is left out. */
export const covered = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const middle = (of: Element) => {
      const { left, right, top, bottom } = of.getBoundingClientRect();
      return { x: (left + right) / 2, y: (top + bottom) / 2, left, right, top, bottom };
    };
    const scrolledAway = (control: Element, x: number, y: number): boolean => {
      for (let at = control.parentElement; at; at = at.parentElement) {
        const box = middle(at);
        const clips = getComputedStyle(at).overflow !== 'visible';
        if (clips && (x < box.left || x > box.right || y < box.top || y > box.bottom)) return true;
      }
      return x < 0 || y < 0 || x > innerWidth || y > innerHeight;
    };
    return [...document.querySelectorAll<HTMLElement>('button, select, textarea, summary, input:not([type="file"])')]
      .filter((control) => control.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true }))
      .filter((control) => control.tagName === 'SUMMARY' || !control.closest('details:not([open])'))
      .flatMap((control) => {
        const { x, y } = middle(control);
        const top = document.elementFromPoint(x, y);
        const free = !top || control.contains(top) || top.contains(control) || top.closest('label')?.contains(control);
        if (free || scrolledAway(control, x, y)) return [];
        return [`${control.getAttribute('aria-label') ?? control.textContent.trim()} lies under ${top.tagName}`];
      });
  });

/** Controls smaller than a finger needs, once the pointer is coarse: 44 px (WCAG 2.2, 2.5.5). */
export async function tooSmallForFingers(page: Page): Promise<string[]> {
  const devtools = await page.context().newCDPSession(page);
  const touch = (enabled: boolean) => devtools.send('Emulation.setTouchEmulationEnabled', { enabled });
  await touch(true);
  await page.waitForFunction(() => matchMedia('(any-pointer: coarse)').matches);
  const small = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, select, textarea, summary, input:not([type="file"])')]
      .filter((control) => control.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true }))
      .filter((control) => control.tagName === 'SUMMARY' || !control.closest('details:not([open])'))
      .flatMap((control) => {
        const isTick = control.matches('[type="checkbox"], [type="radio"]');
        const { width, height } = ((isTick && control.closest('label')) || control).getBoundingClientRect();
        if (width < 3 || (width > 43.5 && height > 43.5)) return [];
        const name = control.getAttribute('aria-label') ?? control.textContent.trim();
        return [`${Math.round(width)} x ${Math.round(height)} for a finger: ${control.tagName} ${name}`];
      }),
  );
  await touch(false);
  await devtools.detach();
  return small;
}
