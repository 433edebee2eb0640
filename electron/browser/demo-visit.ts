/**
 * The demo visit: walks the demo caseload through every screen of the real window, as a therapist would, and leaves
 * a picture of each screen and the printed pages. Used by `npm start` without a display and by `fairhand demo`.
 */
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { liveVisit, overEveryScreen } from './demo-live.ts';
import { penVisit } from './demo-pen.ts';
import { openClient, openTab, savePage, still } from './walk.ts';

/** Screens of a client, by the names on their tabs, with the file name of their picture. */
const clientScreens = [
  ['Visit and record', 'visit-and-record'],
  ['Screen', 'screen'],
  ['Sample', 'sample'],
  ['Read back', 'read-back'],
  ['Program', 'program'],
  ['Goal', 'goal'],
  ['Progress', 'progress'],
  ['Pages', 'pages'],
] as const;

/** Views of a screen: the screen, the words on the view's button, the picture. */
const views = [
  ['Visit and record', 'Whole record', 'record'],
  ['Visit and record', 'Timeline', 'timeline'],
  ['Progress', 'Then and now', 'then-and-now'],
  ['Program', 'Practice log', 'practice-log'],
] as const;

/** Pages that are printed, by the names on their buttons. */
const printedPages = [
  ['Family summary', 'page-family-summary'],
  ['Home program', 'page-home-program'],
  ['Practice pages', 'page-practice'],
] as const;

/** Screens beside the caseload, by the names on their buttons. */
const otherScreens = [
  ['Backup', 'backup'],
  ['Rules', 'rules'],
  ['Settings', 'settings'],
] as const;

/** The client whose record has everything: measured pages, readings, a program, goals, a log. */
const CLIENT = 'Q-101';

export interface DemoResult {
  /** File names that were written into the folder. */
  files: string[];
  /** Steps that could not be done, each as a sentence. */
  problems: string[];
}

/** The visit in one window; each step is tried, and a step that fails is named instead of ending the visit. */
export class DemoVisit {
  readonly page: Page;
  readonly folder: string;
  readonly result: DemoResult = { files: [], problems: [] };
  readonly #tell: (line: string) => void;

  constructor(page: Page, folder: string, tell: (line: string) => void) {
    this.page = page;
    this.folder = folder;
    this.#tell = tell;
    mkdirSync(folder, { recursive: true });
  }

  async run(): Promise<DemoResult> {
    await this.step('Opening the demo caseload', async () => {
      await this.picture('start');
      await this.page.getByRole('button', { name: 'Open the demo caseload' }).click();
      await this.page.getByRole('navigation', { name: 'Lists' }).waitFor({ timeout: 60_000 });
      // The chosen client comes a moment after the list.
      await this.page.getByRole('region', { name: 'Chosen client' }).getByRole('heading').waitFor();
      await this.picture('caseload');
    });
    await this.step('Opening a client', async () => {
      await openClient(this.page, CLIENT);
    });
    for (const [name, file] of clientScreens) {
      await this.step(`Screen: ${name}`, async () => {
        await openTab(this.page, name);
        await this.picture(file);
      });
    }
    for (const [screen, view, file] of views) {
      await this.step(`View: ${view}`, async () => {
        await openTab(this.page, screen);
        const show = this.page.getByRole('main').getByRole('button', { name: view, exact: true });
        await show.click();
        await this.picture(file);
      });
    }
    for (const [kind, file] of printedPages) {
      await this.step(`Page: ${kind}`, async () => {
        await savePage(this.page, kind);
        await this.picture(file);
      });
    }
    await liveVisit(this);
    await penVisit(this);
    for (const [name, file] of otherScreens) {
      await this.step(`Screen: ${name}`, async () => {
        await this.page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name, exact: true }).click();
        await this.picture(file);
      });
    }
    await overEveryScreen(this);
    return this.result;
  }

  async step(name: string, work: () => Promise<void>): Promise<void> {
    this.#tell(name);
    try {
      await work();
    } catch (error) {
      const why = error instanceof Error ? (error.message.split('\n')[0] ?? '') : '';
      this.result.problems.push(`${name} did not work: ${why}`);
    }
  }

  /** A picture of the window as it stands. */
  async picture(name: string): Promise<void> {
    await still(this.page);
    const file = `screen-${name}.png`;
    await this.page.screenshot({ path: path.join(this.folder, file) });
    this.result.files.push(file);
  }
}
