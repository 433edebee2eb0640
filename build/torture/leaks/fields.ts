/** Types a word of its own into every field that is on the screen. */
import type { Locator, Page } from 'playwright-core';

const FIELDS = 'input, textarea, [contenteditable="true"]';
/** Not typed into: what holds no words, and the window's own way elsewhere. */
const WORDLESS = ['checkbox', 'radio', 'range', 'color', 'file', 'button', 'submit', 'hidden', 'date', 'time', 'month'];

/** What a field takes: its marker, or a digit where only numbers fit. Null: no field for words, or not reachable. */
async function wordFor(field: Locator, marker: string): Promise<string | null> {
  const about = await field
    .evaluate((element) => {
      const input = element as HTMLInputElement;
      const seen = input.checkVisibility() && !input.disabled && !input.readOnly;
      return seen ? { type: input.type || 'text', mode: input.inputMode, longest: input.maxLength } : null;
    })
    .catch(() => null);
  if (!about || WORDLESS.includes(about.type)) return null;
  if (about.type === 'number' || /numeric|decimal/.test(about.mode)) return '1';
  return about.longest >= 0 && about.longest < marker.length ? marker.slice(0, about.longest) : marker;
}

export interface Typed {
  /** Fields that took a whole marker. */
  words: number;
  /** Fields that take a number or less than a marker. */
  short: number;
}

/** Opens what is folded, then goes through all fields from top to bottom. The last one is left in the middle of typing. */
export async function typeEverywhere(page: Page, marker: string): Promise<Typed> {
  const typed: Typed = { words: 0, short: 0 };
  await page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
  });
  const scope = (await page.getByRole('dialog').count()) > 0 ? page.getByRole('dialog').last() : page;
  // A field may bring others up: counted anew each time.
  for (let n = 0; n < (await scope.locator(FIELDS).count()) && n < 150; n++) {
    const field = scope.locator(FIELDS).nth(n);
    const word = await wordFor(field, marker);
    if (word === null) continue;
    try {
      await field.focus({ timeout: 2000 });
      await page.keyboard.press('Control+A');
      await page.keyboard.type(word);
      if (word === marker) typed.words++;
      else typed.short++;
    } catch {
      // Gone meanwhile: what stands at its place comes next.
    }
  }
  return typed;
}
