/** What an open record and its views need of the window: the rules, how it stands, saving, and where to go. */
import type { AppStatus } from '../../../electron/contract/app.ts';
import type { Tab } from '../../logic/caseload/tabs.ts';
import type { PageKind } from '../../../db/types/page.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import type { Saving } from './saving.svelte.ts';

export type Theme = 'system' | 'light' | 'dark' | 'contrast';

export interface SaveHost {
  readonly rules: RulesInUse;
  readonly status: AppStatus;
  readonly saving: Saving;
  theme: Theme;
  /** The sentence that stands above the screen; '' = none. */
  message: string;
  /** Shows a screen of the open client. */
  go(tab: Tab): void;
  goToPage(kind: PageKind): void;
  /** The page that another screen asked for, once. */
  takePageWanted(): PageKind | null;
  /** Says what was taken out, with Undo. */
  tookOut(words: string, undo: () => void): void;
  /** Shows the sentence of an error. */
  complain(error: unknown): void;
}
