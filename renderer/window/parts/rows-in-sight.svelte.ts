/** Rows of a long list: only those in sight are in the page, so that 5,000 scroll like 50. */
import { tick } from 'svelte';

/** Rows in the page at once, where the list has the height of the window. */
const MOST = 44;

export class RowsInSight<Row extends { id: string }> {
  scroller = $state<HTMLElement>();
  readonly #all: () => readonly Row[];
  readonly #most: number;
  #rowPx = $state(32);
  #first = $state(0);

  /**
   * @param all every row, in the order shown
   * @param most rows in the page at once: those in sight and ten above and below
   */
  constructor(all: () => readonly Row[], most = MOST) {
    this.#all = all;
    this.#most = most;
  }
  get from(): number {
    return Math.max(0, Math.min(this.#first, this.#all().length - this.#most));
  }
  get rows(): readonly Row[] {
    return this.#all().slice(this.from, this.from + this.#most);
  }
  /** Height of what lies above and below the rows in the page, px. */
  get abovePx(): number {
    return this.from * this.#rowPx;
  }
  get belowPx(): number {
    return Math.max(0, this.#all().length - this.from - this.#most) * this.#rowPx;
  }
  /** Rows that a page key moves. */
  get page(): number {
    return Math.max(1, Math.floor((this.scroller?.clientHeight ?? 0) / this.#rowPx) - 2);
  }
  measure = (): void => {
    if (!this.scroller) return;
    this.#rowPx = this.scroller.querySelector<HTMLElement>('tr[data-row]')?.offsetHeight || this.#rowPx;
    this.#first = Math.max(0, Math.floor(this.scroller.scrollTop / this.#rowPx) - 10);
  };
  /** Brings a row into sight and gives its button the focus. */
  async goTo(index: number): Promise<void> {
    const { scroller } = this;
    const row = this.#all()[index];
    if (!scroller || !row) return;
    const top = index * this.#rowPx;
    if (top < scroller.scrollTop) scroller.scrollTop = top;
    const bottom = top + 3 * this.#rowPx - scroller.clientHeight;
    if (bottom > scroller.scrollTop) scroller.scrollTop = bottom;
    this.measure();
    await tick();
    await new Promise((done) => requestAnimationFrame(done));
    scroller.querySelector<HTMLElement>(`[data-row="${row.id}"] button`)?.focus({ preventScroll: true });
  }
}

/** Where a key of a list leads: arrows, Home, End, page keys; null = not one of them. */
export const rowByKey = (key: string, at: number, count: number, page: number): number | null => {
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: count - 1, PageDown: at + page, PageUp: at - page }[
    key
  ];
  return to === undefined ? null : Math.max(0, Math.min(count - 1, to));
};
