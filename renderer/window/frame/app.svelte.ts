/** The window's own state: where the user is, what the shell said, which messages stand. No client data survives a lock. */
import { MediaQuery } from 'svelte/reactivity';
import { ask, firstStatus, onShellEvent } from '../../../electron/contract/ask.ts';
import type { AppStatus, Preferences } from '../../../electron/contract/app.ts';
import type { ClinicRules } from '../../../db/types/rules.ts';
import type { PageKind } from '../../../db/types/page.ts';
import type { RulesNow } from '../../../electron/contract/rules.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { OpenRecord } from './open-record.svelte.ts';
import type { SaveHost, Theme } from './save-host.ts';
import { Saving, sentenceOf } from './saving.svelte.ts';
import type { CommandOf } from './command-of.ts';
import type { Tab } from '../../logic/caseload/tabs.ts';
import { usualPreferences } from '../../logic/caseload/usual-preferences.ts';
import { clearCopied } from '../parts/clipboard.ts';
import { flushTyping, leaveQuietly } from '../parts/typing-pause.ts';
import { speak } from '../parts/say.svelte.ts';
import { lookBack, whereTheEyeIs, type Place as LeftPlace } from './return-place.ts';

export type { Tab };

interface Registered {
  layer: 'client' | 'place';
  commands: readonly CommandOf<App>[];
}

/** Screens that are not of a client: the open client keeps its place behind them. */
export type Place = 'caseload' | 'records' | 'rules' | 'handover' | 'figures' | 'settings';
/** What was just taken out: stands in the Undo button's place for a while. */
export interface Notice {
  words: string;
  undo: () => void;
}

/** How often the shell is told where the therapist is, ms. */
const PLACE_MS = 2000;

export class App implements SaveHost {
  status = $state.raw<AppStatus>() as AppStatus;
  place = $state<Place | 'client'>('caseload');
  tab = $state<Tab>('client');
  open = $state.raw<OpenRecord | null>(null);
  rules = $state.raw<RulesInUse>() as RulesInUse;
  /** The clinic's own changes to the shipped rule table. */
  ruleChanges = $state.raw<ClinicRules | null>(null);
  /** Rules of an old table whose part in the day is asked once. */
  rolesAsked = $state.raw<string[]>([]);
  saving = new Saving();
  message = $state('');
  theme = $state<Theme>('system');
  #dark = new MediaQuery('(prefers-color-scheme: dark)');
  #contrast = new MediaQuery('(prefers-contrast: more)');
  /** The theme that is drawn: the system's own wish where nothing else was chosen. */
  get shownTheme(): Exclude<Theme, 'system'> {
    if (this.theme !== 'system') return this.theme;
    if (this.#contrast.current) return 'contrast';
    return this.#dark.current ? 'dark' : 'light';
  }
  /** Commands of views that are mounted, those of the open client apart: they wait behind a place. */
  registered = $state.raw<readonly Registered[]>([]);
  /** Counts every new screen: the frame then moves the focus and the title. */
  arrivals = $state(0);
  notice = $state.raw<Notice | null>(null);
  /** In a narrow window the rail is a menu. */
  menuOpen = $state(false);
  /** Look, keys and lock as the therapist set them; kept with the caseload. */
  preferences = $state.raw<Preferences>(usualPreferences);
  /** What the caseload screen showed last: list, filter, chosen client. */
  caseload = $state({ list: 'due', typed: '', chosen: '' });
  /** Which part of a record is shown. */
  recordView = $state<'visit' | 'record' | 'timeline' | 'trail'>('visit');
  /** Lists of the caseload with their counts, shown in the rail. */
  caseloadLists = $state.raw<readonly { list: string; label: string; count: number }[]>([]);
  paletteOpen = $state(false);
  keysOpen = $state(false);
  /** A recovery key that was just made: shown once, on whichever screen stands, until it is kept. */
  recoveryKey = $state('');
  /** Long work that goes on while the caseload is locked; '' = none. */
  working = $state('');

  /** Commands of the view on screen; the frame adds its own. */
  get viewCommands(): readonly CommandOf<App>[] {
    const layer = this.place === 'client' ? 'client' : 'place';
    return this.registered.filter((one) => one.layer === layer).flatMap((one) => one.commands);
  }

  async start(): Promise<void> {
    onShellEvent((event) => {
      // Nobody is there to keep the sheet; Settings can print a new one.
      if (event.kind === 'locked' && event.why !== 'asked') this.recoveryKey = '';
      if (event.kind === 'locked' || event.kind === 'damage') void this.refresh();
    });
    setInterval(() => this.#keepPlace(), PLACE_MS);
    await this.took(await firstStatus());
  }

  #here(): Omit<LeftPlace, 'folder' | 'person'> {
    const { place, tab, open, recordView: part } = this;
    return { place, tab, part, clientId: open?.clientId ?? null, visitId: open?.visitId ?? '', ...whereTheEyeIs() };
  }

  /** Tells the shell where the therapist is, so that a start after a crash leads back. */
  #told = '';
  #keepPlace(): void {
    if (this.status?.state !== 'open') return;
    const at = this.#here();
    const text = JSON.stringify(at);
    if (text === this.#told) return;
    this.#told = text;
    // What cannot be told now is told with the next step.
    ask('about.keepPlace', { at }).catch(() => (this.#told = ''));
  }

  /** Where the therapist was when the caseload locked. */
  #left: LeftPlace | null = null;
  #remember(): void {
    if (this.status?.state !== 'open') return;
    this.#left = { folder: this.status.folder, person: this.status.person, ...this.#here() };
  }

  /** Back to where the lock came: screen, visit, scroll and field. */
  async #return(): Promise<void> {
    const arrived = this.arrivals;
    const left = this.#left ?? (await this.#beforeTheStart());
    // Somebody went on already.
    if (this.arrivals !== arrived) return;
    this.#left = null;
    if (left?.folder !== this.status.folder || left.person !== this.status.person) return;
    if (left.clientId !== null) {
      this.recordView = left.part;
      await this.openClient(left.clientId, left.tab);
      // Erased or merged elsewhere meanwhile: the caseload is a place as good.
      if (!this.open) return void (this.message = '');
      if (this.open.record.visits.some(({ id }) => id === left.visitId)) this.open.visitId = left.visitId;
    }
    if (left.place !== 'client' && left.place !== this.place) this.visitPlace(left.place);
    lookBack(left);
  }

  /** The place that an earlier start of this window left. */
  async #beforeTheStart(): Promise<LeftPlace | null> {
    const { at } = await ask('about.lastPlace', {}).catch(() => ({ at: null }));
    // The screen and how far it was scrolled; no field takes the focus from what is begun meanwhile.
    return (
      at && {
        ...at,
        field: -1,
        caret: null,
        tab: at.tab as Tab,
        folder: this.status.folder,
        person: this.status.person,
      }
    );
  }

  async refresh(): Promise<void> {
    await this.took(await ask('app.status', {}));
  }

  /** Takes the shell's word on what is open; the rules are there before any screen shows. */
  async took(status: AppStatus): Promise<void> {
    if (status.state !== 'open') {
      this.#remember();
      leaveQuietly();
    }
    const unlocked = status.state === 'open' && this.status?.state !== 'open';
    const other = status.demo !== this.status?.demo || status.state === 'first-start';
    if (other) this.caseload = { list: 'due', typed: '', chosen: '' };
    if (status.state !== 'open' || other) this.leaveClient();
    if (status.state !== 'open' || other) this.#waiting.clear();
    if (status.state !== 'open') {
      void clearCopied();
      this.paletteOpen = this.keysOpen = this.menuOpen = false;
      this.notice = null;
    }
    if (status.state === 'open') {
      await this.loadRules();
      if (unlocked || other) await this.#adopt(status.preferences);
    }
    this.status = status;
    if (unlocked) await this.#return();
  }

  async loadRules(): Promise<void> {
    this.tookRules(await ask('rules.current', {}));
  }

  tookRules({ rules, changes, asks }: RulesNow): void {
    this.rules = rules;
    this.ruleChanges = changes;
    this.rolesAsked = asks;
  }

  /** Clients that were left with an edit not saved yet: opened again, they show it. */
  #waiting = new Map<string, OpenRecord>();
  async openClient(clientId: string, tab: Tab = 'client'): Promise<void> {
    try {
      const read = await ask('client.open', { clientId });
      if (this.open?.unsaved) this.#waiting.set(this.open.clientId, this.open);
      const kept = this.#waiting.get(clientId);
      this.#waiting.delete(clientId);
      this.open = kept?.unsaved ? kept : new OpenRecord(this, read);
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

  #arrive(): void {
    this.message = '';
    this.menuOpen = false;
    this.notice = null;
    this.arrivals++;
  }

  go(tab: Tab): void {
    this.tab = tab;
    this.place = 'client';
    this.#arrive();
  }

  /** Closes the client: erased, locked, another caseload. */
  leaveClient(): void {
    this.open = null;
    this.place = 'caseload';
    this.tab = 'client';
    this.#arrive();
  }

  /** Shows a place; the open client keeps visit, screen, selection and scroll behind it. */
  visitPlace(place: Place): void {
    this.place = place;
    this.#arrive();
  }

  /** From a place back to the open client. */
  comeBack(): void {
    if (this.open && this.place !== 'client') this.go(this.tab);
  }

  /** Chosen before a caseload was open: laid over what the caseload keeps. */
  #early: Partial<Preferences> = {};
  #adopt(kept: Preferences): Promise<void> {
    return this.#hold({ ...kept, ...this.#early });
  }

  #hold(preferences: Preferences): Promise<void> {
    this.preferences = preferences;
    this.theme = preferences.theme;
    return speak(preferences.language);
  }

  /** Keeps a preference; it holds at once. */
  prefer(change: Partial<Preferences>): void {
    if (this.status?.state !== 'open') this.#early = { ...this.#early, ...change };
    void this.#hold({ ...this.preferences, ...change });
    if (this.status?.state === 'open')
      this.saving.run('preferences', () => ask('app.prefer', this.preferences)).catch(this.complain);
  }

  /** The key of a command: the therapist's own, or the shipped one. */
  keyOf = (command: { id: string; key?: string }): string | undefined => {
    const own = this.preferences.keys[command.id];
    return own === undefined ? command.key : own || undefined;
  };
  /** The same as screen readers want it: 'Control+K'; undefined = no key. */
  shortcut(id: string, shipped: string): string | undefined {
    return this.keyOf({ id, key: shipped })?.replace('Ctrl', 'Control');
  }

  /** Says what was taken out, with Undo. */
  tookOut(words: string, undo: () => void): void {
    this.notice = { words, undo };
  }

  async lock(): Promise<void> {
    flushTyping();
    await clearCopied();
    await this.saving.quiet();
    await this.took(await ask('app.lock', {}));
  }

  /** Shows why something was refused, until the next step. */
  complain = (error: unknown): void => {
    this.message = sentenceOf(error);
  };
}
