/** Where the therapist was when the caseload locked: screen, scroll and field. Ids and numbers only, nothing of a client. */
import type { Tab } from '../../logic/caseload/tabs.ts';

export interface Place {
  /** Whose caseload it was: another one has other clients. */
  folder: string;
  /** Whose place it was: whoever comes next begins at the caseload. */
  person: string | null;
  place: 'caseload' | 'client' | 'records' | 'rules' | 'handover' | 'figures' | 'settings';
  clientId: string | null;
  visitId: string;
  tab: Tab;
  part: 'visit' | 'record' | 'timeline' | 'trail';
  /** How far the window and each of its panes were scrolled, px. */
  scroll: number[];
  /** Which field of the screen had the focus, counted from the top, and where the caret stood. */
  field: number;
  caret: number | null;
}

const FIELDS = 'input, textarea, select, button, [contenteditable="true"]';

const fields = (): HTMLElement[] => [
  ...document.querySelectorAll<HTMLElement>(`main ${FIELDS.replaceAll(', ', ', main ')}`),
];

/** What scrolls by itself, in the order of the screen. */
const panes = (): HTMLElement[] => [...document.querySelectorAll<HTMLElement>('main .body, main .pane')].slice(0, 20);

/** Scroll, field and caret as they are now. */
export function whereTheEyeIs(): Pick<Place, 'scroll' | 'field' | 'caret'> {
  const active = document.activeElement;
  const text = active instanceof HTMLTextAreaElement || (active instanceof HTMLInputElement && active.type === 'text');
  return {
    scroll: [scrollY, ...panes().map((pane) => pane.scrollTop)],
    field: active instanceof HTMLElement ? fields().indexOf(active) : -1,
    caret: text ? active.selectionStart : null,
  };
}

/** A screen is drawn in steps; its field is looked for this often, a frame apart. */
const FRAMES = 30;

/** Scrolls back and gives the field its focus again, once the screen is drawn. */
export function lookBack({ scroll, field, caret }: Pick<Place, 'scroll' | 'field' | 'caret'>, frame = 0): void {
  requestAnimationFrame(() => {
    const found = field >= 0 ? fields()[field] : undefined;
    const [top = 0, ...inPanes] = scroll;
    const drawn =
      document.documentElement.scrollHeight - innerHeight >= top - 1 &&
      inPanes.every((at, n) => at === 0 || (panes()[n]?.scrollHeight ?? 0) - (panes()[n]?.clientHeight ?? 0) >= at - 1);
    if (((field >= 0 && !found) || !drawn || frame < 3) && frame < FRAMES)
      return lookBack({ scroll, field, caret }, frame + 1);
    found?.focus({ preventScroll: true });
    const text = found instanceof HTMLTextAreaElement || (found instanceof HTMLInputElement && found.type === 'text');
    if (text && caret !== null) found.setSelectionRange(caret, caret);
    scrollTo(0, top);
    panes().forEach((pane, n) => (pane.scrollTop = inPanes[n] ?? 0));
  });
}
