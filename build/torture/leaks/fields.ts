/** Types a word of its own into every field that is on the screen. */
import type { Locator, Page } from 'playwright-core';

const FIELDS = 'input, textarea, [contenteditable]:not([contenteditable="false"])';
/** Not typed into: what holds no words, and the window's own way elsewhere. */
const WORDLESS = ['checkbox', 'radio', 'range', 'color', 'file', 'button', 'submit', 'hidden', 'date', 'time', 'month'];

interface About {
  type: string;
  mode: string;
  longest: number;
  label: string;
  /** Nothing keeps what is typed here while it is typed. */
  unkept: boolean;
  /** Lines of the source that made it: its own, and those of the components around it. */
  places: string[];
}

/** What Svelte's development build notes at each element. */
interface Made {
  loc: { file: string; line: number };
  parent: Stacked | null;
}
interface Stacked {
  file: string;
  line: number;
  parent: Stacked | null;
}

/**
 * In the page: what each field is; null where it cannot be typed into. It is kept where it saves on a pause or when it
 * is left, or lies in a form that keeps its words; secrets are never kept, and a search holds no words of a record.
 */
function aboutFields(elements: Element[]): (About | null)[] {
  return elements.map((element) => {
    const field = element as HTMLInputElement;
    if (!field.checkVisibility() || field.disabled || field.readOnly) return null;
    const label = field.labels?.[0]?.textContent ?? field.getAttribute('aria-label') ?? field.id;
    const { dataset } = field;
    const made = (element as { __svelte_meta?: Made }).__svelte_meta;
    const places = made ? [`${made.loc.file}:${made.loc.line}`] : [];
    for (let each = made?.parent; each; each = each.parent) places.push(`${each.file}:${each.line}`);
    const kept =
      'pause' in dataset || 'left' in dataset || field.isContentEditable || field.closest('[data-kept]') !== null;
    return {
      type: field.type || 'text',
      mode: field.inputMode,
      longest: field.maxLength ?? -1,
      label: label.replace(/\s+/g, ' ').trim(),
      // Find is a search too.
      unkept: !kept && !['password', 'search'].includes(field.type) && field.getAttribute('role') !== 'combobox',
      places,
    };
  });
}

export interface Typed {
  /** Fields that took a whole marker. */
  words: number;
  /** Fields that take a number or less than a marker. */
  short: number;
  /** Labels of fields whose words nothing keeps while they are typed. */
  unkept: string[];
  /** Labels of all fields that were typed into. */
  labels: string[];
  /** Lines of the source that made them. */
  places: string[];
}

export const nothingTyped = (): Typed => ({ words: 0, short: 0, unkept: [], labels: [], places: [] });

export function addTo(sum: Typed, more: Typed): void {
  sum.words += more.words;
  sum.short += more.short;
  sum.unkept.push(...more.unkept);
  sum.labels.push(...more.labels);
  sum.places.push(...more.places);
}

/** Fields of one label and one line of the source are alike. */
const kindOf = ({ label, places }: About): string => `${label} ${places.join(' ')}`;

/** What a field takes: its marker, as much of it as fits, or a digit where only numbers fit. */
function wordFor({ type, mode, longest, label }: About, marker: string): string {
  // Not so few minutes that the window locks itself while it stays open.
  if (label.startsWith('Lock after')) return '60';
  if (type === 'number' || /numeric|decimal/.test(mode)) return '1';
  return longest >= 0 && longest < marker.length ? marker.slice(0, longest) : marker;
}

/** @param atOnce as a paste would: key by key takes long where each pause has a rich record saved */
async function typeInto(page: Page, field: Locator, word: string, atOnce: boolean): Promise<void> {
  await field.focus({ timeout: 2000 });
  await page.keyboard.press('Control+A');
  if (atOnce) await page.keyboard.insertText(word);
  else await page.keyboard.type(word);
}

/**
 * Opens what is folded, then goes through all fields from top to bottom. The last one is left in the middle of typing.
 * @param within only what lies in this part, by a CSS selector
 * @param known fields that were typed into already are passed over, and new ones added
 */
export async function typeEverywhere(page: Page, marker: string, known?: Set<string>, within?: string): Promise<Typed> {
  const typed = nothingTyped();
  await page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
  });
  const dialog = (await page.locator('dialog[open]').count()) > 0 ? page.locator('dialog[open]').last() : page;
  const scope = within === undefined ? dialog : page.locator(within);
  const here = new Set<string>();
  /** Types into all fields from the top, or into those only that are not yet in `but`. Answers how many. */
  const goThrough = async (but: ReadonlySet<string> | undefined): Promise<number> => {
    let count = 0;
    // A field may bring others up: looked at anew each time.
    for (let n = 0; n < 300; n++) {
      const all = await scope.locator(FIELDS).evaluateAll(aboutFields);
      while (n < all.length && (!all[n] || WORDLESS.includes(all[n]!.type) || but?.has(kindOf(all[n]!)))) n++;
      const about = all[n];
      if (!about) break;
      here.add(kindOf(about));
      count++;
      const word = wordFor(about, marker);
      try {
        await typeInto(page, scope.locator(FIELDS).nth(n), word, known !== undefined);
        typed.labels.push(about.label);
        typed.places.push(...about.places);
        if (word === marker) typed.words++;
        else typed.short++;
        if (about.unkept && word !== '1') typed.unkept.push(about.label);
      } catch {
        // Gone meanwhile: what stands at its place comes next.
      }
    }
    return count;
  };
  if ((await goThrough(known)) > 0) {
    // What was typed is saved after half a second, and may bring up a field above the last one.
    await page.waitForTimeout(900);
    await goThrough(new Set([...here, ...(known ?? [])]));
  }
  for (const kind of here) known?.add(kind);
  return typed;
}
