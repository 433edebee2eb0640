/** The window's own state: where the user is, what the shell said, which messages stand. No client data survives a lock. */
import { ask, onShellEvent } from '../../../electron/contract/ask.ts';
import type { AppStatus } from '../../../electron/contract/app.ts';
import type { ClinicRules } from '../../../db/types/rules.ts';
import type { PageKind } from '../../../db/types/page.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { OpenRecord } from './open-record.svelte.ts';
import type { SaveHost, Theme } from './save-host.ts';
import { Saving, sentenceOf } from './saving.svelte.ts';
import type { CommandOf } from './command-of.ts';
import type { Tab } from '../../logic/caseload/tabs.ts';
import { flushTyping } from '../parts/typing-pause.ts';
import { lookBack, whereTheEyeIs, type Place } from './return-place.ts';

export type { Tab };

export class App implements SaveHost {
  status = $state.raw<AppStatus>() as AppStatus;
  place = $state<'caseload' | 'client' | 'records' | 'rules' | 'settings'>('caseload');
  tab = $state<Tab>('client');
  open = $state.raw<OpenRecord | null>(null);
  rules = $state.raw<RulesInUse>() as RulesInUse;
  /** The clinic's own changes to the shipped rule table. */
  ruleChanges = $state.raw<ClinicRules | null>(null);
  saving = new Saving();
  message = $state('');
  theme = $state<Theme>('light');
  /** Commands of the view on screen; the frame adds its own. */
  viewCommands = $state.raw<readonly CommandOf<App>[]>([]);
  paletteOpen = $state(false);
  keysOpen = $state(false);
  /** A recovery key that was just made: shown once, on whichever screen stands, until it is kept. */
  recoveryKey = $state('');
  /** Long work that goes on while the caseload is locked; '' = none. */
  working = $state('');

  async start(): Promise<void> {
    onShellEvent((event) => {
      // Nobody is there to keep the sheet; Settings can print a new one.
      if (event.kind === 'locked' && event.why !== 'asked') this.recoveryKey = '';
      if (event.kind === 'locked' || event.kind === 'damage') void this.refresh();
    });
    await this.refresh();
  }

  /** Where the therapist was when the caseload locked. */
  #left: Place | null = null;
  #remember(): void {
    if (this.status?.state !== 'open') return;
    const { place, tab, open } = this;
    const ids = { clientId: open?.clientId ?? null, visitId: open?.visitId ?? '' };
    this.#left = { folder: this.status.folder, place, tab, ...ids, ...whereTheEyeIs() };
  }

  /** Back to where the lock came: screen, visit, scroll and field. */
  async #return(): Promise<void> {
    const left = this.#left;
    this.#left = null;
    if (!left || left.folder !== this.status.folder) return;
    if (left.clientId !== null) {
      await this.openClient(left.clientId, left.tab);
      // Erased or merged elsewhere meanwhile: the caseload is a place as good.
      if (!this.open) return void (this.message = '');
      if (this.open.record.visits.some(({ id }) => id === left.visitId)) this.open.visitId = left.visitId;
    } else if (left.place !== 'caseload' && left.place !== 'client') this.visitPlace(left.place);
    lookBack(left);
  }

  async refresh(): Promise<void> {
    await this.took(await ask('app.status', {}));
  }

  /** Takes the shell's word on what is open; the rules are there before any screen shows. */
  async took(status: AppStatus): Promise<void> {
    if (status.state !== 'open') this.#remember();
    const unlocked = status.state === 'open' && this.status?.state !== 'open';
    if (status.state !== 'open' || status.demo !== this.status?.demo) this.leaveClient();
    if (status.state !== 'open') this.paletteOpen = this.keysOpen = false;
    if (status.state === 'open') await this.loadRules();
    this.status = status;
    if (unlocked) await this.#return();
  }

  async loadRules(): Promise<void> {
    this.tookRules(await ask('rules.current', {}));
  }

  tookRules({ rules, changes }: { rules: RulesInUse; changes: ClinicRules | null }): void {
    this.rules = rules;
    this.ruleChanges = changes;
  }

  async openClient(clientId: string, tab: Tab = 'client'): Promise<void> {
    try {
      this.open = new OpenRecord(this, await ask('client.open', { clientId }));
      this.place = 'client';
      this.go(tab);
    } catch (error) {
      this.complain(error);
    }
  }

  /** Page that Pages opens with, when another screen sent the therapist there; taken once. */
  #pageWanted: PageKind | null = null;
  goToPage(kind: PageKind): void {
    this.#pageWanted = kind;
    this.go('pages');
  }
  takePageWanted(): PageKind | null {
    const kind = this.#pageWanted;
    this.#pageWanted = null;
    return kind;
  }

  go(tab: Tab): void {
    this.tab = tab;
    this.message = '';
  }

  leaveClient(): void {
    this.open = null;
    this.place = 'caseload';
    this.tab = 'client';
    this.message = '';
  }

  visitPlace(place: 'records' | 'rules' | 'settings'): void {
    this.open = null;
    this.place = place;
    this.message = '';
  }

  async lock(): Promise<void> {
    flushTyping();
    await this.saving.quiet();
    await this.took(await ask('app.lock', {}));
  }

  /** Shows why something was refused, until the next step. */
  complain = (error: unknown): void => {
    this.message = sentenceOf(error);
  };
}
