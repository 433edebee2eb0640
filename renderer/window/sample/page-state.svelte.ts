/** What is known and shown of one written page: its measurement, the layers over it, the word in hand. */
import { latestOfPage } from '../../logic/sample/measured/latest-measurements.ts';
import type { PageMeasurement, SamplePage, ScaleSource } from '../../../db/types/sample.ts';
import { ask, onShellEvent } from '../../../electron/contract/ask.ts';
import type { OpenRecord } from '../frame/open-record.svelte.ts';
import { sentenceOf } from '../frame/saving.svelte.ts';
import type { Correction } from '../../measure/index.ts';
import { layerOf, measuresOfWord, type Layer, type Px } from '../../logic/sample/overlay-shapes.ts';
import { wordNear, type WordAt } from '../../logic/sample/word-walk.ts';

export class PageState {
  readonly open: OpenRecord;
  readonly pageId: string;
  progress = $state<{ stage: string; done: number } | null>(null);
  problem = $state('');
  shown = $state<ReadonlySet<Layer>>(new Set<Layer>(['lines', 'words']));
  lit = $state<string | null>(null);
  marks = $state<Px[]>([]);
  marking = $state(false);
  selected = $state<WordAt | null>(null);
  hovered = $state.raw<WordAt | null>(null);

  constructor(open: OpenRecord, pageId: string) {
    this.open = open;
    this.pageId = pageId;
  }

  /** Listens for how far the measuring is; answers how to stop listening. */
  listen(): () => void {
    return onShellEvent((event) => {
      if (event.kind === 'progress' && event.id === this.pageId && this.progress)
        this.progress = { stage: event.task, done: event.done };
    });
  }

  page = $derived.by((): SamplePage | undefined => this.open.record.samplePages.find((p) => p.id === this.pageId));
  measurement = $derived.by(() => latestOfPage(this.open.record.pageMeasurements, this.pageId));
  result = $derived.by(() => this.measurement?.result ?? null);
  corrections = $derived.by(() => (this.measurement?.corrections ?? []) as unknown as Correction[]);
  pointed = $derived.by(() =>
    this.result && this.hovered ? measuresOfWord(this.result, this.hovered) : new Set<string>(),
  );
  visible = $derived.by(() => {
    const layer = this.lit ? layerOf(this.lit) : null;
    return new Set([...this.shown, ...(layer ? [layer] : [])]);
  });
  /** The page itself can tell its scale (corner marks, edges of the sheet): then none has to be given. */
  told = $derived.by(() => (this.page?.scale ?? null) !== null || (this.result?.page.dpi ?? null) !== null);
  /** The scale was changed after the page was measured. */
  stale = $derived.by(() => {
    const { page, measurement } = this;
    if (!page?.scale || !measurement) return false;
    const apart = Math.abs((measurement.result.page.dpi ?? 0) - page.scale.pxPerMm * 25.4);
    return apart > 0.5 && page.at > (measurement as PageMeasurement).at;
  });

  toggle(layer: Layer): void {
    const next = new Set(this.shown);
    if (!next.delete(layer)) next.add(layer);
    this.shown = next;
  }

  async measure(corrections: readonly Correction[] = this.corrections): Promise<void> {
    this.problem = '';
    this.progress = { stage: 'start', done: 0 };
    const { result, selected } = this;
    const before = selected ? result?.lines[selected.line]?.words[selected.word]?.box : undefined;
    try {
      await this.open.request('pageMeasurement', 'sample.measure', {
        id: this.open.newId(),
        pageId: this.pageId,
        corrections: corrections.map((c) => ({ ...c })),
      });
      // The word in hand stays in hand, wherever it stands now.
      if (before && this.result && this.selected === selected) this.selected = wordNear(this.result, before);
    } catch (error) {
      this.problem = sentenceOf(error);
    } finally {
      this.progress = null;
    }
  }

  async setScale(pxPerMm: number, source: ScaleSource): Promise<void> {
    this.problem = '';
    try {
      await this.open.request('samplePage', 'sample.setScale', { pageId: this.pageId, pxPerMm, source });
      this.marking = false;
      this.marks = [];
      await this.measure();
    } catch (error) {
      this.problem = sentenceOf(error);
    }
  }

  async turn(): Promise<void> {
    this.problem = '';
    try {
      await this.open.request('samplePage', 'sample.turn', {
        pageId: this.pageId,
        quarterTurns: (((this.page?.quarterTurns ?? 0) + 1) % 4) as 0 | 1 | 2 | 3,
      });
      await this.measure([]);
    } catch (error) {
      this.problem = sentenceOf(error);
    }
  }

  /** Leaves the word in hand out, or takes it back in. */
  leaveOut(): void {
    const { result, selected } = this;
    const word = selected ? result?.lines[selected.line]?.words[selected.word] : undefined;
    if (!word || this.progress) return;
    const { xMm, yMm, widthMm, heightMm } = word.box;
    const at = { xMm: xMm + widthMm / 2, yMm: yMm + heightMm / 2 };
    const isHere = (c: Correction) =>
      c.kind === 'exclude-word' &&
      Math.abs(c.at.xMm - at.xMm) <= widthMm / 2 &&
      Math.abs(c.at.yMm - at.yMm) <= heightMm / 2;
    const rest = this.corrections.filter((c) => !isHere(c));
    void this.measure(word.excluded === true ? rest : [...this.corrections, { kind: 'exclude-word', at }]);
  }

  cancel(): void {
    void ask('sample.cancelMeasure', { pageId: this.pageId }).catch(() => {});
  }

  mark(point: Px): void {
    if (this.marking) this.marks = this.marks.length >= 2 ? [point] : [...this.marks, point];
  }
}
