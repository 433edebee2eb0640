/** One registry drives menu, keys, palette and the key sheet: a command is a name, a key, a condition and what it does. */
import type { Tab } from '../../logic/caseload/tabs.ts';
import type { App } from './app.svelte.ts';
import type { CommandOf } from './command-of.ts';

type Command = CommandOf<App>;

export const tabs: readonly { tab: Tab; label: string }[] = [
  { tab: 'client', label: 'Client' },
  { tab: 'intake', label: 'Intake screen' },
  { tab: 'sample', label: 'Writing sample' },
  { tab: 'readback', label: 'Read-back' },
  { tab: 'program', label: 'Home program' },
  { tab: 'goals', label: 'Goals' },
  { tab: 'progress', label: 'Progress' },
  { tab: 'pages', label: 'Pages' },
];

const open = (app: App) => app.status?.state === 'open';
const withClient = (app: App) => open(app) && app.open !== null;

export const frameCommands: readonly Command[] = [
  { id: 'find', label: 'Find a client or command', key: 'Ctrl+K', when: open, run: (app) => (app.paletteOpen = true) },
  { id: 'keys', label: 'Show all keys', key: 'F1', run: (app) => (app.keysOpen = true) },
  { id: 'caseload', label: 'Go to the caseload', key: 'Alt+0', when: open, run: (app) => app.leaveClient() },
  ...tabs.map(({ tab, label }, i) => ({
    id: `go-${tab}`,
    label: `Go to ${label}`,
    key: `Alt+${i + 1}`,
    when: withClient,
    run: (app: App) => app.go(tab),
  })),
  { id: 'undo', label: 'Undo', key: 'Ctrl+Z', when: withClient, run: (app) => void app.open?.undo() },
  { id: 'redo', label: 'Redo', key: 'Ctrl+Shift+Z', when: withClient, run: (app) => void app.open?.redo() },
  { id: 'records', label: 'Backup and records', when: open, run: (app) => app.visitPlace('records') },
  { id: 'rules', label: 'Rule table', when: open, run: (app) => app.visitPlace('rules') },
  { id: 'settings', label: 'Therapist and settings', when: open, run: (app) => app.visitPlace('settings') },
  {
    id: 'theme',
    label: 'Change theme (light, dark, high contrast)',
    key: 'Alt+T',
    run: (app) => (app.theme = ({ light: 'dark', dark: 'contrast', contrast: 'light' } as const)[app.theme]),
  },
  { id: 'lock', label: 'Lock the caseload', key: 'Ctrl+L', when: open, run: (app) => void app.lock() },
];

/** Whether a key press is this command's key. */
export function matches(
  key: string,
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
): boolean {
  const parts = key.split('+');
  const name = parts.at(-1)!;
  const shift = parts.includes('Shift');
  const single = name.length === 1;
  // Redo has a second key on Windows.
  if (key === 'Ctrl+Shift+Z' && event.ctrlKey && !event.shiftKey && !event.altKey && event.key.toLowerCase() === 'y')
    return true;
  return (
    (event.ctrlKey || event.metaKey) === parts.includes('Ctrl') &&
    event.altKey === parts.includes('Alt') &&
    (single && !shift && !parts.includes('Ctrl') && !parts.includes('Alt') ? true : event.shiftKey === shift) &&
    event.key.toLowerCase() === (name === 'Space' ? ' ' : name.toLowerCase())
  );
}

export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName)) &&
  !/^(checkbox|radio|button)$/.test((target as HTMLInputElement).type);
