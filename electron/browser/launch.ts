/** Starts an installed Chromium as an app window over the CDP pipe: no port is opened, nothing can be fetched. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { engineEnvironment, makeEngineFolders, wipeEngineFolders, type EngineFolders } from '../window-profile.ts';
import type { WindowSize } from '../window-size.ts';
import { PREFERENCES, switches } from './switches.ts';

export interface LaunchOptions {
  executable: string;
  /** The caseload folder: the browser's own files lie in a folder inside it that is wiped. No client data enters it. */
  dataFolder: string;
  /** Outer size of the window in CSS pixels. */
  size: WindowSize;
  /** True where no display can be had: Chromium's own windowless mode, same engine. */
  headless?: boolean;
}

/** The browser would only open a window that writes what is typed to the disk. */
export class NoPrivateWindow extends Error {}

/**
 * The browser's options. As root the operating system's sandbox cannot be used; the page's own limits stay.
 * @param uid numeric user id, or null where the system has none (Windows)
 */
export function launchOptions(
  options: LaunchOptions,
  folders: EngineFolders,
  uid: number | null,
  env: NodeJS.ProcessEnv = process.env,
) {
  return {
    executablePath: options.executable,
    headless: options.headless ?? false,
    viewport: null,
    serviceWorkers: 'block' as const,
    acceptDownloads: false,
    chromiumSandbox: uid !== 0,
    // The second would put the memory that the browser's processes share, so what is on the screen, into files on disk.
    ignoreDefaultArgs: ['--enable-automation', ...(folders.temporary === null ? [] : ['--disable-dev-shm-usage'])],
    args: switches(options.size),
    env: { ...env, ...engineEnvironment(folders) } as Record<string, string>,
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
  };
}

export interface Launched {
  context: BrowserContext;
  page: Page;
  /** Removes what the browser wrote about itself; after its window was closed. */
  wipe(): Promise<void>;
}

/**
 * Opens the empty window. The caller serves it (serve.ts), binds it (bind.ts) and goes to the page.
 * @param prepare what else the empty page needs: runs while it is made sure that the window is private
 * @throws NoPrivateWindow where the browser's administrator forbids private windows; what `prepare` throws. No window
 *   is left behind then.
 */
export async function launch(
  options: LaunchOptions,
  prepare: (context: BrowserContext, page: Page) => Promise<void> = async () => {},
): Promise<Launched> {
  const folders = makeEngineFolders(options.dataFolder);
  const wipe = () => wipeEngineFolders(folders);
  mkdirSync(path.join(folders.profile, 'Default'), { mode: 0o700 });
  writeFileSync(path.join(folders.profile, 'Default', 'Preferences'), JSON.stringify(PREFERENCES));
  const context = await chromium.launchPersistentContext(
    folders.profile,
    launchOptions(options, folders, process.getuid?.() ?? null),
  );
  const page = context.pages()[0] ?? (await context.newPage());
  const failed = (await Promise.allSettled([guard(context.browser()), prepare(context, page)])).find(
    (one) => one.status === 'rejected',
  );
  if (failed) {
    await context.close();
    await wipe();
    throw failed.reason;
  }
  return { context, page, wipe };
}

async function guard(browser: Browser | null): Promise<void> {
  if (!browser || !(await isPrivate(browser))) throw new NoPrivateWindow();
  await keepAlone(browser);
}

/** True when every page belongs to a session in memory, not to the profile on disk. */
async function isPrivate(browser: Browser): Promise<boolean> {
  const session = await browser.newBrowserCDPSession();
  const { targetInfos } = await session.send('Target.getTargets');
  const { defaultBrowserContextId } = (await session.send('Target.getBrowserContexts')) as {
    defaultBrowserContextId?: string;
  };
  await session.detach();
  const pages = targetInfos.filter(({ type }) => type === 'page');
  return pages.length > 0 && pages.every(({ browserContextId }) => browserContextId !== defaultBrowserContextId);
}

/** Developer tools are closed as they open, whichever key, menu or switch opened them. */
async function keepAlone(browser: Browser): Promise<void> {
  const session = await browser.newBrowserCDPSession();
  const closeTools = ({ targetInfo }: { targetInfo: { targetId: string; url: string } }) => {
    if (!/^(devtools|chrome-devtools):/.test(targetInfo.url)) return;
    void session.send('Target.closeTarget', { targetId: targetInfo.targetId }).catch(() => undefined);
  };
  session.on('Target.targetCreated', closeTools);
  session.on('Target.targetInfoChanged', closeTools);
  await session.send('Target.setDiscoverTargets', { discover: true, filter: [{}] } as { discover: boolean });
}
