/** Prints pages the way the app does: the same components and style sheet, in the installed Chromium. */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';
import type { Component } from 'svelte';
import { render } from 'svelte/server';
import { speak } from '../../../renderer/window/parts/say.svelte.ts';

// The window's own words come with its desk; here there is none.
await speak('en');

export const chromiumPath = ['/usr/bin/chromium', '/usr/lib/chromium/chromium', '/usr/bin/google-chrome'].find(
  existsSync,
);
export const noChromium = chromiumPath ? '' : ' (skipped: no Chromium is installed to print with)';

const require = createRequire(import.meta.url);

function fontFace(family: string, weight: number, file: string): string {
  const bytes = readFileSync(require.resolve(file)).toString('base64');
  return `@font-face { font-family: '${family}'; font-weight: ${weight}; src: url(data:font/${file.split('.').at(-1)};base64,${bytes}); }`;
}

function fonts(): string {
  return [
    fontFace(
      'Atkinson Hyperlegible Next',
      400,
      '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff2',
    ),
    fontFace(
      'Atkinson Hyperlegible Next',
      700,
      '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff2',
    ),
    fontFace('Fairhand Print', 400, '../../../renderer/window/pages/fonts/fairhand-print.otf'),
    fontFace('Playwrite US Trad', 400, '@fontsource/playwrite-us-trad/files/playwrite-us-trad-latin-400-normal.woff2'),
  ].join('\n');
}

export function htmlOf<Props extends Record<string, unknown>>(component: Component<Props>, props: Props): string {
  const { body } = render(component as Component<Record<string, unknown>>, { props });
  const css = readFileSync(new URL('../../../renderer/window/parts/sheet.css', import.meta.url), 'utf8');
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Page</title><style>${fonts()}\n${css}</style></head><body>${body}</body></html>`;
}

export interface Printed {
  pdf: Uint8Array;
  /** Pixels by which each sheet's content is taller than the sheet; 0 fits. */
  overflow: number[];
  /** Height of each text page's content, mm; 0 for drawings. */
  heights: number[];
}

export async function printHtml(html: string): Promise<Printed> {
  const browser = await chromium.launch({ executablePath: chromiumPath, headless: true, args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    await page.setContent(html);
    await page.evaluate(() => document.fonts.ready);
    await page.emulateMedia({ media: 'print' });
    const overflow = await page.evaluate(() =>
      [...document.querySelectorAll('.printed')].map((sheet) => Math.max(0, sheet.scrollHeight - sheet.clientHeight)),
    );
    const heights = await page.evaluate(() =>
      [...document.querySelectorAll('.printed')].map(
        (sheet) => ((sheet.querySelector('.doc')?.getBoundingClientRect().height ?? 0) * 25.4) / 96,
      ),
    );
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
    return { pdf, overflow, heights };
  } finally {
    await browser.close();
  }
}
