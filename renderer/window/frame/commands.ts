/** One registry drives menu, keys, palette and the key sheet: a command is a name, a key, a condition and what it does. */
import type { Tab } from '../../logic/caseload/tabs.ts';
import type { App, Place } from './app.svelte.ts';
import type { CommandOf } from './command-of.ts';

type Command = CommandOf<App>;

/** The steps of a visit, in the order in which a visit goes. */
export const steps: readonly { tab: Tab; label: string }[] = [
  { tab: 'intake', label: 'Screen' },
  { tab: 'sample', label: 'Sample' },
  { tab: 'readback', label: 'Read back' },
  { tab: 'program', label: 'Program' },
  { tab: 'goals', label: 'Goal' },
  { tab: 'pages', label: 'Pages' },
];
export const tabs: readonly { tab: Tab; label: string }[] = [
  ...steps,
  { tab: 'client', label: 'Visit and record' },
  { tab: 'progress', label: 'Progress' },
];
export const places: readonly { place: Place; label: string }[] = [
  { place: 'caseload', label: 'Caseload' },
  { place: 'rules', label: 'Rules' },
  { place: 'records', label: 'Backup' },
  { place: 'figures', label: 'Figures' },
  { place: 'handover', label: 'Hand over' },
  { place: 'settings', label: 'Settings' },
];

const open = (app: App) => app.status?.state === 'open';
const withClient = (app: App) => open(app) && app.open !== null;
const atClient = (app: App) => withClient(app) && app.place === 'client';

export const frameCommands: readonly Command[] = [
  { id: 'find', label: 'Find a client or command', key: 'Ctrl+K', when: open, run: (app) => (app.paletteOpen = true) },
  { id: 'keys', label: 'Help with this screen', key: 'F1', run: (app) => (app.keysOpen = true) },
  { id: 'caseload', label: 'Go to Caseload', key: 'Alt+0', when: open, run: (app) => app.visitPlace('caseload') },
  ...tabs.map(({ tab, label }, i) => ({
    id: `go-${tab}`,
    label: `Go to ${label}`,
    key: `Alt+${i + 1}`,
    when: withClient,
    run: (app: App) => app.go(tab),
  })),
  {
    id: 'back',
    label: 'Back to the client',
    key: 'Escape',
    when: (app) => withClient(app) && app.place !== 'client',
    run: (app) => app.comeBack(),
  },
  { id: 'undo', label: 'Undo', key: 'Ctrl+Z', when: atClient, run: (app) => void app.open?.undo() },
  { id: 'redo', label: 'Redo', key: 'Ctrl+Shift+Z', when: atClient, run: (app) => void app.open?.redo() },
  ...places.slice(1).map(({ place, label }) => ({
    id: place,
    label: `Go to ${label}`,
    when: open,
    run: (app: App) => app.visitPlace(place),
  })),
  {
    id: 'theme',
    label: 'Change theme (light, dark, high contrast)',
    key: 'Alt+T',
    run: (app) =>
      app.prefer({ theme: ({ light: 'dark', dark: 'contrast', contrast: 'light' } as const)[app.shownTheme] }),
  },
  { id: 'lock', label: 'Lock the caseload', key: 'Ctrl+L', when: open, run: (app) => void app.lock() },
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
