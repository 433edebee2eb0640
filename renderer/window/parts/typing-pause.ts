/**
 * Saves a field while it is typed into: after a pause of half a second it reports its value as if it were left, and at
 * once when the window is hidden, locks or closes. Fields opt in by `data-pause`; they keep what is being typed while
 * the saved value returns. A form whose words are no fact until a button is pressed (`data-kept`) is told at the same
 * moments to keep them (frame/keeps-words.ts).
 */

/** A pause in typing, in milliseconds. */
const PAUSE_MS = 500;

type TextField = HTMLInputElement | HTMLTextAreaElement;

const isTextField = (target: EventTarget | null): target is TextField =>
  (target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement) &&
  (target.dataset['pause'] !== undefined ||
    (target.closest('[data-kept]') !== null && target.type !== 'password' && target.type !== 'search'));

/** Told to a form that keeps its words. */
export const KEEP_WORDS = 'keepwords';

/** True for a report in the middle of typing: half a number is no mistake yet. */
export const isPause = (event: Event): boolean => event instanceof CustomEvent && event.detail === 'pause';

let waiting: { field: TextField; timer: ReturnType<typeof setTimeout> } | null = null;

/** The value that each field reported last in the middle of typing. */
const reported = new WeakMap<TextField, string>();

/** Reports what was typed and not saved yet. */
export function flushTyping(): void {
  if (!waiting) return;
  clearTimeout(waiting.timer);
  const { field } = waiting;
  waiting = null;
  reported.set(field, field.value);
  if (!field.isConnected) return;
  const event = field.dataset['pause'] === undefined ? KEEP_WORDS : 'change';
  field.dispatchEvent(new CustomEvent(event, { bubbles: true, detail: 'pause' }));
}

/**
 * Takes the focus from a field whose words were reported already. Where a screen is taken away with the focus in it,
 * the browser reports the field once more; after a lock that would be a save refused.
 */
export function leaveQuietly(): void {
  const field = document.activeElement;
  if (!isTextField(field) || reported.get(field) !== field.value) return;
  const stop = (event: Event) => event.stopImmediatePropagation();
  addEventListener('change', stop, true);
  field.blur();
  removeEventListener('change', stop, true);
}

/** True while something was typed that was not reported. */
export const typingWaits = (): boolean => waiting !== null;

/** Listens on the whole document. Answers how to stop. */
export function watchTyping(): () => void {
  const typed = ({ target }: Event) => {
    if (!isTextField(target)) return;
    if (waiting && waiting.field !== target) flushTyping();
    clearTimeout(waiting?.timer);
    waiting = { field: target, timer: setTimeout(flushTyping, PAUSE_MS) };
  };
  const left = (event: Event) => {
    if (waiting?.field !== event.target || isPause(event)) return;
    clearTimeout(waiting?.timer);
    waiting = null;
  };
  const hidden = () => document.visibilityState === 'hidden' && flushTyping();
  document.addEventListener('input', typed, true);
  document.addEventListener('change', left, true);
  document.addEventListener('visibilitychange', hidden);
  addEventListener('blur', flushTyping);
  addEventListener('pagehide', flushTyping);
  return () => {
    document.removeEventListener('input', typed, true);
    document.removeEventListener('change', left, true);
    document.removeEventListener('visibilitychange', hidden);
    removeEventListener('blur', flushTyping);
    removeEventListener('pagehide', flushTyping);
  };
}
