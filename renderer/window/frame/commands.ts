/** One registry drives menu, keys, palette and the key sheet: a command is a name, a key, a condition and what it does. */
import type { Tab } from '../../logic/caseload/tabs.ts';
import type { App, Place } from './app.svelte.ts';
import type { CommandOf } from './command-of.ts';
import { say } from '../parts/say.svelte.ts';

type Command = CommandOf<App>;

/** The steps of a visit, in the order in which a visit goes. */
export const steps: readonly { tab: Tab; label: string }[] = [
  {
    tab: 'intake',
    get label() {
      return say.frame.screen;
    },
  },
  {
    tab: 'sample',
    get label() {
      return say.frame.sample;
    },
  },
  {
    tab: 'readback',
    get label() {
      return say.frame.readBack;
    },
  },
  {
    tab: 'program',
    get label() {
      return say.frame.program;
    },
  },
  {
    tab: 'goals',
    get label() {
      return say.frame.goal;
    },
  },
  {
    tab: 'pages',
    get label() {
      return say.frame.pages;
    },
  },
];
export const tabs: readonly { tab: Tab; label: string }[] = [
  ...steps,
  {
    tab: 'client',
    get label() {
      return say.frame.visitAndRecord;
    },
  },
  {
    tab: 'progress',
    get label() {
      return say.frame.progress;
    },
  },
];
export const places: readonly { place: Place; label: string }[] = [
  {
    place: 'caseload',
    get label() {
      return say.frame.caseload;
    },
  },
  {
    place: 'rules',
    get label() {
      return say.frame.rules;
    },
  },
  {
    place: 'records',
    get label() {
      return say.frame.backup;
    },
  },
  {
    place: 'figures',
    get label() {
      return say.frame.figures;
    },
  },
  {
    place: 'handover',
    get label() {
      return say.frame.handOver;
    },
  },
  {
    place: 'settings',
    get label() {
      return say.frame.settings;
    },
  },
];

const open = (app: App) => app.status?.state === 'open';
const withClient = (app: App) => open(app) && app.open !== null;
const atClient = (app: App) => withClient(app) && app.place === 'client';

export const frameCommands: readonly Command[] = [
  {
    id: 'find',
    get label() {
      return say.frame.findClientOrCommand;
    },
    key: 'Ctrl+K',
    when: open,
    run: (app) => (app.paletteOpen = true),
  },
  {
    id: 'keys',
    get label() {
      return say.frame.helpWithThisScreen;
    },
    key: 'F1',
    run: (app) => (app.keysOpen = true),
  },
  {
    id: 'caseload',
    get label() {
      return say.frame.goToCaseload;
    },
    key: 'Alt+0',
    when: open,
    run: (app) => app.visitPlace('caseload'),
  },
  ...tabs.map((one, i) => ({
    id: `go-${one.tab}`,
    get label() {
      return say.frame.goTo(one.label);
    },
    key: `Alt+${i + 1}`,
    when: withClient,
    run: (app: App) => app.go(one.tab),
  })),
  {
    id: 'back',
    get label() {
      return say.frame.backToClient;
    },
    key: 'Escape',
    when: (app) => withClient(app) && app.place !== 'client',
    run: (app) => app.comeBack(),
  },
  {
    id: 'undo',
    get label() {
      return say.frame.undo;
    },
    key: 'Ctrl+Z',
    when: atClient,
    run: (app) => void app.open?.undo(),
  },
  {
    id: 'redo',
    get label() {
      return say.frame.redo;
    },
    key: 'Ctrl+Shift+Z',
    when: atClient,
    run: (app) => void app.open?.redo(),
  },
  ...places.slice(1).map((one) => ({
    id: one.place,
    get label() {
      return say.frame.goTo(one.label);
    },
    when: open,
    run: (app: App) => app.visitPlace(one.place),
  })),
  {
    id: 'theme',
    get label() {
      return say.frame.changeThemeLightDark;
    },
    key: 'Alt+T',
    run: (app) =>
      app.prefer({ theme: ({ light: 'dark', dark: 'contrast', contrast: 'light' } as const)[app.shownTheme] }),
  },
  {
    id: 'lock',
    get label() {
      return say.frame.lockCaseload;
    },
    key: 'Ctrl+L',
    when: open,
    run: (app) => void app.lock(),
  },
];

const onMac = typeof navigator !== 'undefined' && /^Mac/.test(navigator.platform);

/**
 * Whether a key press is this command's key. Letters go by the character, so that every layout keeps its own;
 * digits of the top row by their place (French layouts need Shift for them); AltGr types characters, never a command.
 */
export function matches(
  key: string,
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'> &
    Partial<Pick<KeyboardEvent, 'code' | 'getModifierState'>>,
  mac = onMac,
): boolean {
  if (event.getModifierState?.('AltGraph')) return false;
  const parts = key.split('+');
  const name = parts.at(-1)!;
  const shift = parts.includes('Shift');
  const single = name.length === 1;
  const digit = /^\d$/.test(name);
  // Cmd stands for Ctrl on a Mac, and for Alt with a digit: Alt types characters there.
  const wants = { ctrl: parts.includes('Ctrl'), alt: parts.includes('Alt') };
  if (mac && digit && wants.alt) {
    wants.ctrl = true;
    wants.alt = false;
  }
  // Redo has a second key on Windows.
  if (key === 'Ctrl+Shift+Z' && event.ctrlKey && !event.shiftKey && !event.altKey && event.key.toLowerCase() === 'y')
    return true;
  const plain = single && !shift && !wants.ctrl && !wants.alt;
  return (
    (event.ctrlKey || event.metaKey) === wants.ctrl &&
    event.altKey === wants.alt &&
    (plain ? true : event.shiftKey === shift) &&
    (event.key.toLowerCase() === (name === 'Space' ? ' ' : name.toLowerCase()) ||
      (digit && !plain && event.code === `Digit${name}`))
  );
}

/** A key that acts without Ctrl, Alt or a function key: only inside the intake's answers. */
export const isSingleKey = (key: string): boolean => !/Ctrl|Alt|^F\d|^Escape$/.test(key);

export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName)) &&
  !/^(checkbox|radio|button)$/.test((target as HTMLInputElement).type);
