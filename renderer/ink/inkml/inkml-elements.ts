import { InkRefusal, INK_LIMITS } from './ink-refusal.ts';
import type { InkContext, InkSource } from './contexts.ts';
import { channelOf, emptyContext, InkDefinitions, refOf } from './contexts.ts';
import type { TraceFormat } from './channels.ts';
import type { XmlListener } from './xml-events.ts';

/** A trace as it stands in the file; its text is read once all formats are known. */
export interface RawTrace {
  id: string | null;
  kind: 'down' | 'up';
  context: InkContext | null;
  contextRef: string | null;
  timeOffset: number;
  /** The trace that this one goes on from; undefined: it is none that goes on, null: the last one. */
  continues: string | null | undefined;
  text: string;
}

export interface RawGroup {
  kind: string | null;
  /** Annotations that hold for the whole ink, unless the group turns out to be a line or a word. */
  annotations: Map<string, string>;
  contextRef: string | null;
  /** Indices of its traces, those of the groups inside it included. */
  traces: number[];
}

const idOf = (attributes: ReadonlyMap<string, string>): string | null =>
  attributes.get('xml:id') ?? attributes.get('id') ?? null;

function keepFirst(texts: Map<string, string>, type: string, text: string): void {
  if (!texts.has(type)) texts.set(type, text);
}

/** Collects what an InkML file holds, element by element. */
export class InkElements implements XmlListener {
  readonly definitions = new InkDefinitions();
  readonly traces: RawTrace[] = [];
  readonly groups: RawGroup[] = [];
  readonly annotations = new Map<string, string>();
  private readonly path: string[] = [];
  private readonly openGroups: RawGroup[] = [];
  private context: InkContext | null = null;
  private streaming: InkContext | null = null;
  private source: InkSource | null = null;
  private format: TraceFormat | null = null;
  private trace: RawTrace | null = null;
  private annotation: string | null = null;
  private pieces: string[] = [];

  private get isDefinition(): boolean {
    return this.path.includes('definitions');
  }

  readonly open = (name: string, attributes: ReadonlyMap<string, string>): void => {
    if (this.path.length === 0 && name !== 'ink') throw new InkRefusal('other-root');
    if (name === 'context') this.openContext(attributes);
    else if (name === 'inkSource') this.openSource(attributes);
    else if (name === 'traceFormat') this.openFormat(attributes);
    else if (name === 'channel') this.addChannel(attributes);
    else if (name === 'channelProperty') this.addResolution(attributes);
    else if (name === 'timestamp') this.addTimestamp(attributes);
    else if (name === 'traceGroup') this.openGroup(attributes);
    else if (name === 'trace') this.openTrace(attributes);
    else if (name === 'annotation') this.openAnnotation(attributes);
    this.path.push(name);
  };

  readonly text = (text: string): void => {
    const inside = this.path.at(-1);
    if ((inside === 'trace' && this.trace) || (inside === 'annotation' && this.annotation !== null))
      this.pieces.push(text);
  };

  readonly close = (name: string): void => {
    this.path.pop();
    if (name === 'context') this.context = null;
    else if (name === 'inkSource') this.source = null;
    else if (name === 'traceFormat') this.format = null;
    else if (name === 'traceGroup' && !this.isDefinition) this.closeGroup();
    else if (name === 'trace' && this.trace) {
      this.trace.text = this.pieces.join('');
      this.trace = null;
    } else if (name === 'annotation' && this.annotation !== null) {
      this.closeAnnotation(this.annotation, this.pieces.join('').trim());
      this.annotation = null;
    }
  };

  private openContext(attributes: ReadonlyMap<string, string>): void {
    this.context = {
      ...emptyContext(),
      id: idOf(attributes),
      contextRef: refOf(attributes.get('contextRef')),
      sourceRef: refOf(attributes.get('inkSourceRef')),
      formatRef: refOf(attributes.get('traceFormatRef')),
      timestampRef: refOf(attributes.get('timestampRef')),
    };
    if (this.context.id !== null) this.definitions.contexts.set(this.context.id, this.context);
    // Written among the traces, a context holds for those after it.
    if (!this.isDefinition) {
      this.context.before = this.streaming;
      this.streaming = this.context;
    }
  }

  private openSource(attributes: ReadonlyMap<string, string>): void {
    this.source = { id: idOf(attributes), format: null, formatRef: null, resolutions: new Map() };
    this.definitions.sources.push(this.source);
    if (this.context) this.context.source = this.source;
  }

  private openFormat(attributes: ReadonlyMap<string, string>): void {
    const ref = refOf(attributes.get('href'));
    if (this.source && ref !== null) {
      this.source.formatRef = ref;
      return;
    }
    this.format = { regular: [], intermittent: [] };
    this.definitions.formats.push({ id: idOf(attributes), format: this.format });
    if (this.source) this.source.format = this.format;
    else if (this.context) this.context.format = this.format;
    else if (!this.isDefinition) this.streaming = { ...emptyContext(), format: this.format, before: this.streaming };
  }

  private addChannel(attributes: ReadonlyMap<string, string>): void {
    if (!this.format) return;
    const list = this.path.includes('intermittentChannels') ? this.format.intermittent : this.format.regular;
    list.push(channelOf(attributes));
  }

  private addResolution(attributes: ReadonlyMap<string, string>): void {
    const [channel, value, units] = ['channel', 'value', 'units'].map((name) => attributes.get(name));
    if (attributes.get('name') !== 'resolution' || channel === undefined || !this.source) return;
    this.source.resolutions.set(channel, { value: Number(value ?? NaN), units: units ?? '' });
  }

  private addTimestamp(attributes: ReadonlyMap<string, string>): void {
    const told = attributes.get('time') ?? attributes.get('timeString');
    const base = this.definitions.timestamps.get(refOf(attributes.get('timestampRef')) ?? '') ?? 0;
    const own = told === undefined ? 0 : /^[-+]?[\d.]+$/.test(told.trim()) ? Number(told) : Date.parse(told);
    const time = base + own + Number(attributes.get('timeOffset') ?? 0);
    if (!Number.isFinite(time)) return;
    this.definitions.timestamps.set(idOf(attributes) ?? '', time);
    if (this.context) this.context.timestampMs = time;
  }

  private openGroup(attributes: ReadonlyMap<string, string>): void {
    if (this.isDefinition) return;
    const contextRef = refOf(attributes.get('contextRef')) ?? this.openGroups.at(-1)?.contextRef ?? null;
    const group: RawGroup = { kind: null, annotations: new Map(), contextRef, traces: [] };
    this.groups.push(group);
    this.openGroups.push(group);
  }

  private openTrace(attributes: ReadonlyMap<string, string>): void {
    // Traces inside definitions are patterns, not ink.
    if (this.isDefinition) return;
    if (this.traces.length >= INK_LIMITS.traces) throw new InkRefusal('too-many-traces');
    const offset = Number(attributes.get('timeOffset') ?? 0);
    if (!Number.isFinite(offset)) throw new InkRefusal('not-a-number');
    const continuation = attributes.get('continuation');
    this.trace = {
      id: idOf(attributes),
      kind: attributes.get('type') === 'penUp' ? 'up' : 'down',
      context: this.streaming,
      contextRef: refOf(attributes.get('contextRef')) ?? this.openGroups.at(-1)?.contextRef ?? null,
      timeOffset: offset,
      continues: continuation === 'middle' || continuation === 'end' ? refOf(attributes.get('priorRef')) : undefined,
      text: '',
    };
    for (const group of this.openGroups) group.traces.push(this.traces.length);
    this.traces.push(this.trace);
    this.pieces = [];
  }

  private openAnnotation(attributes: ReadonlyMap<string, string>): void {
    this.annotation = attributes.get('type') ?? '';
    this.pieces = [];
  }

  private closeAnnotation(type: string, text: string): void {
    const group = this.openGroups.at(-1);
    if (group && type === 'kind') group.kind ??= text;
    else if (!this.isDefinition) keepFirst(group?.annotations ?? this.annotations, type, text);
  }

  private closeGroup(): void {
    const group = this.openGroups.pop();
    if (!group || group.kind !== null) return;
    const around = this.openGroups.at(-1)?.annotations ?? this.annotations;
    for (const [type, text] of group.annotations) keepFirst(around, type, text);
  }
}
