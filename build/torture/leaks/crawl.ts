/** Opens what a screen can open, so that the fields behind its buttons are typed into as well. */
import type { Page } from 'playwright-core';
import { addTo, nothingTyped, typeEverywhere, type Typed } from './fields.ts';

/**
 * Not pressed: what leaves the window or the caseload, waits for a file or a print dialog of the system, takes something
 * away for good, or goes to a screen that has its own turn.
 */
const PASSED =
  /\b(lock|unlock|print|save|export|scan|picture|camera|file|folder|paste|copy|erase|delete|remove|archive|restore this|bring|back up|check|cancel|close|back|undo|redo|drop|discard|keep as issued|approve|open the demo|unlock by|full screen|merge|clear|go on|go to|help|start here|use this|all as before|leave|take off|lend)\b|^(\d|[-+−]|[A-Z]$|×|✕)/i;
/** Rows of a long list open the same form each: so many of them are enough. */
const ALIKE = 1;
const MOST = 20;

interface Opener {
  name: string;
  /** Which of the buttons of that name. */
  nth: number;
}

/** The buttons of the screen's own part, in their order; names that differ in digits only are alike. */
async function openers(page: Page): Promise<Opener[]> {
  const names = await page
    .locator('main button:visible:enabled')
    .evaluateAll((buttons) => buttons.map((button) => (button.textContent ?? '').replace(/\s+/g, ' ').trim()));
  const counted = new Map<string, number>();
  const alike = new Map<string, number>();
  const found: Opener[] = [];
  for (const name of names) {
    const nth = counted.get(name) ?? 0;
    counted.set(name, nth + 1);
    const kind = name.replace(/\d+/g, '#').slice(0, 40);
    const before = alike.get(kind) ?? 0;
    alike.set(kind, before + 1);
    if (name !== '' && !PASSED.test(name) && before < ALIKE) found.push({ name, nth });
  }
  return found.slice(0, MOST);
}

const where = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      `${document.querySelectorAll('dialog[open]').length} ${document.querySelector('main h1, main h2')?.textContent}`,
  );

/** Presses each opener of a screen once, typing into the fields that it brings up, and comes back by `go`. */
export async function crawl(page: Page, marker: string, go: () => Promise<unknown>): Promise<Typed> {
  const all = nothingTyped();
  const known = new Set<string>();
  addTo(all, await typeEverywhere(page, marker, known));
  for (const { name, nth } of await openers(page)) {
    try {
      const button = page.locator('main button:visible:enabled').filter({ hasText: name }).nth(nth);
      if ((await button.count()) === 0) continue;
      const before = await where(page);
      await button.click({ timeout: 1500 });
      await page.waitForTimeout(150);
      addTo(all, await typeEverywhere(page, marker, known));
      if ((await where(page)) !== before || (await page.locator('dialog[open]').count()) > 0) {
        await page.keyboard.press('Escape');
        await go();
      }
    } catch {
      // Covered or gone meanwhile: its screen is come back to.
      await page.keyboard.press('Escape');
      await go().catch(() => undefined);
    }
  }
  await go().catch(() => undefined);
  return all;
}
