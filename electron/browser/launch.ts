/** Starts an installed Chromium as an app window over the CDP pipe: no port is opened, nothing can be fetched. */
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';
import type { BrowserContext, Page } from 'playwright-core';
import type { WindowSize } from '../window-size.ts';

export interface LaunchOptions {
  executable: string;
  /** Folder for the browser's own files; made new here and wiped by `wipeProfile`. No client data enters it. */
  profile: string;
  /** Outer size of the window in CSS pixels. */
  size: WindowSize;
  /** True where no display can be had: Chromium's own windowless mode, same engine. */
  headless?: boolean;
}

/**
 * Switches of the window. Names never resolve and no proxy is asked, so that even a mistake cannot reach a network;
 * the caches are off, so that no page or scan is kept in the profile.
 */
export function switches(size: WindowSize): string[] {
  return [
    '--app=data:text/html,<title>Fairhand</title>',
    '--test-type',
    `--window-size=${size.width},${size.height}`,
    '--window-position=0,0',
    '--host-resolver-rules=MAP * ~NOTFOUND',
    '--no-proxy-server',
    '--disable-quic',
    '--disable-domain-reliability',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-breakpad',
    '--disable-crash-reporter',
    '--disable-extensions',
    '--disable-logging',
    '--no-default-browser-check',
    '--no-first-run',
    '--no-pings',
    '--metrics-recording-only',
    '--disk-cache-size=1',
    '--media-cache-size=1',
    '--disable-gpu-shader-disk-cache',
    '--disable-spell-checking',
    '--password-store=basic',
    '--disable-features=Translate,MediaRouter,OptimizationHints,AutofillServerCommunication,InterestFeedContentSuggestions,GlobalMediaControls',
  ];
}

/**
 * The browser's options. As root the operating system's sandbox cannot be used; the page's own limits stay.
 * @param uid numeric user id, or null where the system has none (Windows)
 */
export function launchOptions(options: LaunchOptions, uid: number | null) {
  return {
    executablePath: options.executable,
    headless: options.headless ?? false,
    viewport: null,
    serviceWorkers: 'block' as const,
    acceptDownloads: false,
    chromiumSandbox: uid !== 0,
    ignoreDefaultArgs: ['--enable-automation'],
    args: switches(options.size),
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
  };
}

/** Removes what the browser wrote about itself. Also run before a start, for what a killed one left. */
export function wipeProfile(profile: string): void {
  rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
}

/** How often and how long a closing browser is watched for what it still writes, in milliseconds. */
const WATCH = { every: 150, atMost: 6000 };

/**
 * Wipes after the window was closed. The browser's own processes end a little later than its window and write once
 * more, so the folder is gone only when it stays gone. What then remains is wiped by the next start.
 */
export async function wipeAfterClose(profile: string): Promise<void> {
  let gone = 0;
  for (let waited = 0; waited < WATCH.atMost && gone < 2; waited += WATCH.every) {
    gone = existsSync(profile) ? 0 : gone + 1;
    try {
      wipeProfile(profile);
    } catch {
      // Written to while it was being removed: the next round removes it.
    }
    if (gone < 2) await new Promise((resolve) => setTimeout(resolve, WATCH.every));
  }
}

/** The folder inside a caseload folder that holds the browser's own files while the window is open. */
export function profileFolder(dataFolder: string): string {
  return path.join(dataFolder, 'window-profile');
}

/**
 * Chromium's own settings for the profile: it fills in no forms, keeps no passwords, offers no translation and looks
 * nothing up, so that nothing a therapist types is kept outside the caseload.
 */
export const PREFERENCES = {
  autofill: { enabled: false, profile_enabled: false, credit_card_enabled: false },
  credentials_enable_service: false,
  credentials_enable_autosignin: false,
  profile: { password_manager_enabled: false },
  translate: { enabled: false },
  search: { suggest_enabled: false },
  browser: { enable_spellchecking: false, show_update_promotion_info_bar: false },
  spellcheck: { dictionaries: [], use_spelling_service: false },
  safebrowsing: { enabled: false },
  alternate_error_pages: { enabled: false },
  net: { network_prediction_options: 2 },
} as const;

/** Opens the empty window. The caller serves it (serve.ts), binds it (bind.ts) and goes to the page. */
export async function launch(options: LaunchOptions): Promise<{ context: BrowserContext; page: Page }> {
  wipeProfile(options.profile);
  mkdirSync(path.join(options.profile, 'Default'), { recursive: true, mode: 0o700 });
  writeFileSync(path.join(options.profile, 'Default', 'Preferences'), JSON.stringify(PREFERENCES));
  const context = await chromium.launchPersistentContext(
    options.profile,
    launchOptions(options, process.getuid?.() ?? null),
  );
  const page = context.pages()[0] ?? (await context.newPage());
  return { context, page };
}
