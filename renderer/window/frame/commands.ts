/** One registry drives menu, keys, palette and the key sheet: a command is a name, a key, a condition and what it does. */
import type { Tab } from '../../logic/caseload/tabs.ts';
import type { App, Place } from './app.svelte.ts';
import type { CommandOf } from './command-of.ts';
import { say } from '../parts/say.svelte.ts';

type Command = CommandOf<App>;

/** A row of these tables with its name in the shown language: said anew whenever it is read. */
const named = <T extends { readonly label: string }>(says: () => string, row: Omit<T, 'label'>): T =>
  Object.defineProperty(row as T, 'label', { get: says, enumerable: true });

/** The steps of a visit, in the order in which a visit goes. */
export const steps: readonly { tab: Tab; label: string }[] = [
  named(() => say.frame.screen, { tab: 'intake' }),
  named(() => say.frame.sample, { tab: 'sample' }),
  named(() => say.frame.readBack, { tab: 'readback' }),
  named(() => say.frame.program, { tab: 'program' }),
  named(() => say.frame.goal, { tab: 'goals' }),
  named(() => say.frame.pages, { tab: 'pages' }),
];
export const tabs: readonly { tab: Tab; label: string }[] = [
  ...steps,
  named(() => say.frame.visitAndRecord, { tab: 'client' }),
  named(() => say.frame.progress, { tab: 'progress' }),
];
export const places: readonly { place: Place; label: string }[] = [
  named(() => say.frame.caseload, { place: 'caseload' }),
  named(() => say.frame.rules, { place: 'rules' }),
  named(() => say.frame.backup, { place: 'records' }),
  named(() => say.frame.figures, { place: 'figures' }),
  named(() => say.frame.handOver, { place: 'handover' }),
  named(() => say.frame.settings, { place: 'settings' }),
];

const open = (app: App) => app.status?.state === 'open';
const withClient = (app: App) => open(app) && app.open !== null;
const atClient = (app: App) => withClient(app) && app.place === 'client';

export const frameCommands: readonly Command[] = [
  named(() => say.frame.findClientOrCommand, {
    id: 'find',
    key: 'Ctrl+K',
    when: open,
    run: (app) => (app.paletteOpen = true),
  }),
  named(() => say.frame.helpWithThisScreen, {
    id: 'keys',
    key: 'F1',
    run: (app) => (app.keysOpen = true),
  }),
  named(() => say.frame.goToCaseload, {
    id: 'caseload',
    key: 'Alt+0',
    when: open,
    run: (app) => app.visitPlace('caseload'),
  }),
  ...tabs.map((one, i) =>
    named<Command>(() => say.frame.goTo(one.label), {
      id: `go-${one.tab}`,
      key: `Alt+${i + 1}`,
      when: withClient,
      run: (app: App) => app.go(one.tab),
    }),
  ),
  named(() => say.frame.backToClient, {
    id: 'back',
    key: 'Escape',
    when: (app) => withClient(app) && app.place !== 'client',
    run: (app) => app.comeBack(),
  }),
  named(() => say.frame.undo, {
    id: 'undo',
    key: 'Ctrl+Z',
    when: atClient,
    run: (app) => void app.open?.undo(),
  }),
  named(() => say.frame.redo, {
    id: 'redo',
    key: 'Ctrl+Shift+Z',
    when: atClient,
    run: (app) => void app.open?.redo(),
  }),
  ...places.slice(1).map((one) =>
    named<Command>(() => say.frame.goTo(one.label), {
      id: one.place,
      when: open,
      run: (app: App) => app.visitPlace(one.place),
    }),
  ),
  named(() => say.frame.changeThemeLightDark, {
    id: 'theme',
    key: 'Alt+T',
    run: (app) =>
      app.prefer({ theme: ({ light: 'dark', dark: 'contrast', contrast: 'light' } as const)[app.shownTheme] }),
  }),
  named(() => say.frame.lockCaseload, {
    id: 'lock',
    key: 'Ctrl+L',
    when: open,
    run: (app) => void app.lock(),
  }),
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
