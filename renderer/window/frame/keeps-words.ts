/**
 * Words typed into a form that are no fact until a button is pressed: kept in the caseload on a pause of half a second,
 * and there again when the form is opened after a lock, a close or a kill.
 */
import type { Attachment } from 'svelte/attachments';
import { ask } from '../../../electron/contract/ask.ts';
import { KEEP_WORDS } from '../parts/typing-pause.ts';
import type { Saving } from './saving.svelte.ts';

type WordField = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;
type Words = Record<string, string>;

/** Secrets are never kept; a search is no fact; the others hold no words. */
const PASSED = new Set(['password', 'search', 'file', 'range', 'radio', 'checkbox', 'button', 'submit', 'hidden']);
/** After a button the form is emptied or goes on; then what is left in it is looked at. */
const LOOK_AFTER_MS = 500;

const names = new WeakMap<WordField, string>();
const nameOf = (field: WordField): string => {
  const known = names.get(field);
  if (known !== undefined) return known;
  const name = (field.labels?.[0]?.textContent ?? field.getAttribute('aria-label') ?? '').trim().slice(0, 120);
  names.set(field, name);
  return name;
};

/** The fields of a form that nothing else saves, by their labels; a second one of a label is counted. */
function wordFields(form: HTMLElement): [string, WordField][] {
  const seen = new Map<string, number>();
  return [...form.querySelectorAll<WordField>('input, textarea, select')]
    .filter((field) => !PASSED.has(field.type) && field.dataset['pause'] === undefined)
    .map((field) => {
      const n = (seen.get(nameOf(field)) ?? 0) + 1;
      seen.set(nameOf(field), n);
      return [n === 1 ? nameOf(field) : `${nameOf(field)} ${n}`, field];
    });
}

const valuesOf = (form: HTMLElement): Words =>
  Object.fromEntries(wordFields(form).map(([name, field]) => [name, field.value]));

/**
 * Types the words in again, as if by hand, where a field stands as it stood at first. Answers the words whose fields are
 * not there yet: each is typed once, since a form that used its words is empty as at first.
 */
function typeAgain(form: HTMLElement, words: Words, first: Words): Words {
  const missing = { ...words };
  for (const [name, field] of wordFields(form)) {
    const word = words[name];
    delete missing[name];
    if (word === undefined || field.value === word || field.value !== (first[name] ?? '')) continue;
    field.value = word;
    for (const event of ['input', 'change']) field.dispatchEvent(new Event(event, { bubbles: true }));
    field.dispatchEvent(new FocusEvent('blur'));
  }
  return missing;
}

interface KeptForm {
  /** Which form: a name, and the ids it is about. The same words never fit another. */
  place: string;
  /** The client they are about; null: of the clinic. */
  clientId: string | null;
  saving: Saving;
  /** 'closing': closing the form uses the words or gives them up. A lock does neither. */
  until?: 'used' | 'closing';
}

/** Forgets what was kept of a form that is gone: its words have become a fact. */
export const wordsUsed = ({ place, clientId, saving }: KeptForm): void =>
  void saving.run(`typed/${place}`, () => ask('typed.keep', { place, clientId, fields: {} })).catch(() => {});

/** Forms that are watched now. An attachment is made anew whenever what it was made from is read again: the same form goes on. */
const watched = new WeakMap<HTMLElement, { place: string; stay: () => void; leave: () => void; stop: () => void }>();

export const keepsWords =
  ({ place, clientId, saving, until = 'used' }: KeptForm): Attachment<HTMLElement> =>
  (form) => {
    const before = watched.get(form);
    if (before?.place === place) {
      before.stay();
      return before.leave;
    }
    before?.stop();
    form.dataset['kept'] = '';
    const first = valuesOf(form);
    let stored = '{}';
    let timer: ReturnType<typeof setTimeout> | undefined;
    let gone = false;
    let leaving = false;
    const keep = () => {
      const fields = Object.fromEntries(Object.entries(valuesOf(form)).filter(([name, word]) => word !== first[name]));
      const json = JSON.stringify(fields);
      if (json === stored) return;
      stored = json;
      void saving.run(`typed/${place}`, () => ask('typed.keep', { place, clientId, fields })).catch(() => {});
    };
    const soon = () => {
      clearTimeout(timer);
      timer = setTimeout(keep, LOOK_AFTER_MS);
    };
    void ask('typed.kept', { place })
      .then(({ fields }) => {
        if (gone) return;
        stored = JSON.stringify(fields);
        const missing = typeAgain(form, fields, first);
        // A field may bring others up.
        setTimeout(() => gone || typeAgain(form, missing, first), 50);
      })
      .catch(() => {});
    const listened = ['submit', 'click', 'change'] as const;
    form.addEventListener(KEEP_WORDS, keep);
    for (const each of listened) form.addEventListener(each, soon);
    const stop = () => {
      gone = true;
      watched.delete(form);
      clearTimeout(timer);
      form.removeEventListener(KEEP_WORDS, keep);
      for (const each of listened) form.removeEventListener(each, soon);
      if (until === 'used') keep();
      // While locked this is refused, and the words stay.
      else if (stored !== '{}') void ask('typed.keep', { place, clientId, fields: {} }).catch(() => {});
    };
    const stay = () => void (leaving = false);
    const leave = () => {
      leaving = true;
      queueMicrotask(() => leaving && !gone && stop());
    };
    watched.set(form, { place, stay, leave, stop });
    return leave;
  };
