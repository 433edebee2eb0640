/** What the parts of the demo visit share: the page, a named step that may fail, a picture of the screen. */
import type { Page } from 'playwright-core';

export interface DemoSteps {
  readonly page: Page;
  step(name: string, work: () => Promise<void>): Promise<void>;
  picture(name: string): Promise<void>;
}
