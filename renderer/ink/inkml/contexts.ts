import { DEFAULT_FORMAT } from './channels.ts';
import type { InkChannel, Resolution, TraceFormat } from './channels.ts';

/** Where a trace's format, device and clock may be told: contexts, devices and formats refer to one another. */
export interface InkContext {
  id: string | null;
  contextRef: string | null;
  sourceRef: string | null;
  formatRef: string | null;
  timestampRef: string | null;
  /** Told inside the context itself. */
  source: InkSource | null;
  format: TraceFormat | null;
  timestampMs: number | null;
  /** The context before this one in a stream: what this one does not tell stays. */
  before: InkContext | null;
}

export interface InkSource {
  id: string | null;
  format: TraceFormat | null;
  formatRef: string | null;
  resolutions: Map<string, Resolution>;
}

export interface ResolvedContext {
  format: TraceFormat;
  resolutions: ReadonlyMap<string, Resolution>;
  /** Zero of its times: what T refers to, else the context's own timestamp. */
  timestampMs: number | null;
}

export const emptyContext = (): InkContext => ({
  id: null,
  contextRef: null,
  sourceRef: null,
  formatRef: null,
  timestampRef: null,
  source: null,
  format: null,
  timestampMs: null,
  before: null,
});

export const refOf = (text: string | undefined): string | null =>
  text === undefined || text.trim() === '' ? null : text.trim().replace(/^[^#]*#/, '');

/** A channel as its element tells it. */
export function channelOf(attributes: ReadonlyMap<string, string>): InkChannel {
  const number = (name: string): number | null => {
    const text = attributes.get(name)?.trim();
    return text === undefined || text === '' || !Number.isFinite(Number(text)) ? null : Number(text);
  };
  return {
    name: attributes.get('name') ?? '',
    units: attributes.get('units')?.trim() ?? null,
    min: number('min'),
    max: number('max'),
    respectTo: refOf(attributes.get('respectTo')),
    sense: /^-/.test(attributes.get('orientation') ?? '') ? -1 : 1,
  };
}

/** Everything a file defines, by its name. */
export class InkDefinitions {
  readonly contexts = new Map<string, InkContext>();
  readonly sources: InkSource[] = [];
  readonly formats: { id: string | null; format: TraceFormat }[] = [];
  readonly timestamps = new Map<string, number>();

  private source(id: string | null): InkSource | null {
    return id === null ? null : (this.sources.find((source) => source.id === id) ?? null);
  }

  private format(id: string | null): TraceFormat | null {
    return id === null ? null : (this.formats.find((format) => format.id === id)?.format ?? null);
  }

  /**
   * The format that holds for a trace with this context. What is not told comes from the context it refers to; a file
   * with a single device or format means that one.
   */
  resolve(context: InkContext | null): ResolvedContext {
    let format: TraceFormat | null = null;
    let source: InkSource | null = null;
    let timestampMs: number | null = null;
    const seen = new Set<InkContext>();
    for (let each = context; each && !seen.has(each);) {
      seen.add(each);
      const own: InkSource | null = each.source ?? this.source(each.sourceRef);
      format ??= each.format ?? this.format(each.formatRef) ?? own?.format ?? this.format(own?.formatRef ?? null);
      source ??= own;
      timestampMs ??= each.timestampMs ?? this.timestamps.get(each.timestampRef ?? '') ?? null;
      each = (each.contextRef === null ? null : this.contexts.get(each.contextRef)) ?? each.before;
    }
    if (this.sources.length === 1) source ??= this.sources[0]!;
    if (this.formats.length === 1) format ??= this.formats[0]!.format;
    if (this.timestamps.size === 1) timestampMs ??= [...this.timestamps.values()][0]!;
    const whole = format ?? source?.format ?? DEFAULT_FORMAT;
    const zero = [...whole.regular, ...whole.intermittent].find(({ name }) => name === 'T')?.respectTo;
    return {
      format: whole,
      resolutions: source?.resolutions ?? new Map(),
      timestampMs: this.timestamps.get(zero ?? '') ?? timestampMs,
    };
  }
}
