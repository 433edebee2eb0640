/** The name of a pressed key as commands have it: 'Ctrl+Shift+Z', 'Alt+1', 'F1'. */
type Pressed = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/** @returns null while only Ctrl, Alt or Shift is held; '' for a key that would act while somebody types */
export function keyName({ key, code, ctrlKey, metaKey, altKey, shiftKey }: Pressed): string | null {
  if (/^(Control|Alt|Shift|Meta|AltGraph)$/.test(key)) return null;
  const held = ctrlKey || metaKey;
  if (!held && !altKey && !/^F([1-9]|1[0-2])$/.test(key)) return '';
  const digit = /^Digit(\d)$/.exec(code)?.[1];
  const name = digit ?? (key === ' ' ? 'Space' : key.length === 1 ? key.toUpperCase() : key);
  return [held && 'Ctrl', altKey && 'Alt', shiftKey && 'Shift', name].filter(Boolean).join('+');
}

const SIGNS: Record<string, string> = { ArrowUp: '↑', ArrowDown: '↓', ArrowLeft: '←', ArrowRight: '→', Escape: 'Esc' };

/** A key as it stands on the keyboard. */
export const shownKey = (key = ''): string => SIGNS[key] ?? (key.length === 1 ? key.toUpperCase() : key);
