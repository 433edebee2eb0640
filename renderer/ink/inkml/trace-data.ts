import { InkRefusal, INK_LIMITS } from './ink-refusal.ts';

/**
 * Values of one trace, column by column, as InkML writes them: whole values, first differences after ', second
 * differences after ", whole again after !, * for the value before, ? for none.
 * Source: W3C Ink Markup Language 2011, section 3.2 (trace), from memory.
 */
export interface TraceColumns {
  /** One list a channel, all of the same length; NaN where no value was told. */
  columns: Float64Array[];
  length: number;
}

/** What a continued trace takes over from the one before it. */
export interface ColumnState {
  value: number;
  velocity: number;
}

const CODE = { tab: 9, lf: 10, cr: 13, space: 32, bang: 33, quote: 34, hash: 35, apostrophe: 39, star: 42, comma: 44 };
const QUESTION = 63;
const [UPPER_T, UPPER_F] = [84, 70];

const isSpace = (code: number): boolean =>
  code === CODE.space || code === CODE.lf || code === CODE.cr || code === CODE.tab;

const NUMBER = /[+-]?[ \t\r\n]*(?:\d+\.?\d*(?:[eE][+-]?\d+)?|\.\d+(?:[eE][+-]?\d+)?|#[0-9a-fA-F]+)/y;

function numberOf(token: string): number {
  const bare = /\s/.test(token) ? token.replaceAll(/\s/g, '') : token;
  const hex = bare.indexOf('#');
  if (hex < 0) return Number(bare);
  const size = Number.parseInt(bare.slice(hex + 1), 16);
  return bare.startsWith('-') ? -size : size;
}

/**
 * @param least channels that every sample has; those beyond are intermittent and may be left off a sample
 * @param channels all channels
 * @param room samples that may still be read
 * @param before state after the trace that this one continues
 * @throws InkRefusal
 */
export function readTraceData(
  text: string,
  least: number,
  channels: number,
  room: number,
  before: readonly ColumnState[] | null = null,
): TraceColumns & { state: ColumnState[] } {
  const state = Array.from({ length: channels }, (_, c) => ({ ...(before?.[c] ?? { value: NaN, velocity: 0 }) }));
  const order = new Uint8Array(channels);
  let size = 64;
  let columns = Array.from({ length: channels }, () => new Float64Array(size));
  let length = 0;
  let at = 0;

  const skip = (): void => {
    while (at < text.length && isSpace(text.charCodeAt(at))) at += 1;
  };

  /** The next value of a channel; NaN for ?. */
  const value = (c: number): number => {
    const prefix = text.charCodeAt(at);
    if (prefix === CODE.bang || prefix === CODE.apostrophe || prefix === CODE.quote) {
      order[c] = prefix === CODE.bang ? 0 : prefix === CODE.apostrophe ? 1 : 2;
      at += 1;
      skip();
    }
    const kept = state[c]!;
    const code = text.charCodeAt(at);
    if (code === QUESTION) {
      at += 1;
      return NaN;
    }
    if (code === CODE.star) {
      at += 1;
      kept.velocity = 0;
      if (Number.isNaN(kept.value)) throw new InkRefusal('not-a-number');
      return kept.value;
    }
    let told: number;
    if (code === UPPER_T || code === UPPER_F) {
      at += 1;
      told = code === UPPER_T ? 1 : 0;
    } else {
      NUMBER.lastIndex = at;
      const found = NUMBER.exec(text);
      if (!found) throw new InkRefusal('not-a-number');
      at = NUMBER.lastIndex;
      told = numberOf(found[0]);
    }
    const last = Number.isNaN(kept.value) ? 0 : kept.value;
    const velocity = order[c] === 2 ? kept.velocity + told : order[c] === 1 ? told : told - last;
    const whole = order[c] === 0 ? told : last + velocity;
    if (!Number.isFinite(whole)) throw new InkRefusal('not-a-number');
    if (Math.abs(whole) > INK_LIMITS.value) throw new InkRefusal('value-too-large');
    kept.velocity = velocity;
    kept.value = whole;
    return whole;
  };

  skip();
  while (at < text.length) {
    if (length >= room) throw new InkRefusal('too-many-samples');
    if (length >= size) {
      size *= 2;
      columns = columns.map((column) => {
        const grown = new Float64Array(size);
        grown.set(column);
        return grown;
      });
    }
    let count = 0;
    while (at < text.length && text.charCodeAt(at) !== CODE.comma) {
      if (count >= channels) throw new InkRefusal('column-count');
      columns[count]![length] = value(count);
      count += 1;
      skip();
    }
    if (count < least) throw new InkRefusal('column-count');
    for (let c = count; c < channels; c += 1) columns[c]![length] = NaN;
    length += 1;
    at += 1;
    skip();
  }
  return { columns: columns.map((column) => column.slice(0, length)), length, state };
}
