/** What a screen shows in words, so that two languages can be compared. */
import type { Page } from '@playwright/test';

/** Same in each language on purpose: names, codes, words of both languages, the program's own texts in English. */
const COGNATES =
  /^(Fairhand|airhand|.*%\/min.?|Program|Original|Bluetooth|Version.*|No|Normal|Total|Formal|Name|Position|Tablet|Extra|Minute|Start|Test|Person|Hand|Finger|Idea|Papel|Ataxia|Osteoporosis|Amputation|Screening|US Letter|Deutsch|Español|English|Ulnar|Final|Control|Manual|Digital)$/;

/**
 * Texts, names and hints of what is on the screen, without pages (they print in the client's language), tables of keys
 * and what the therapist wrote.
 * @param own everything that the record holds in somebody's own words
 */
export async function shownWords(page: Page, own: string): Promise<Set<string>> {
  const all = await page.evaluate(() => {
    const out: string[] = [];
    const hidden = (element: Element): boolean =>
      element.closest('.preview, .print-root, .printed, script, style, kbd') !== null ||
      !element.checkVisibility({ visibilityProperty: true });
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode())
      if (node.parentElement && !hidden(node.parentElement)) out.push(node.nodeValue ?? '');
    for (const element of document.querySelectorAll('[aria-label], [title], [placeholder], [aria-description]'))
      if (!hidden(element))
        for (const name of ['aria-label', 'title', 'placeholder', 'aria-description'])
          out.push(element.getAttribute(name) ?? '');
    return out
      .map((text) => text.replace(/\s+/g, ' ').replace(/^ ?: /, '').trim())
      .filter((text) => /\p{L}{3}/u.test(text));
  });
  return new Set(all.filter((text) => !COGNATES.test(text.replace(/[.,:;]$/, '')) && !own.includes(text)));
}
