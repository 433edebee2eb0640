/** Changes every text of a catalogue alike: strings, answers of functions, and what lists and objects hold of them. */
export function eachText<T>(texts: T, change: (text: string) => string): T {
  const changed = (value: unknown): unknown => {
    if (typeof value === 'string') return change(value);
    if (typeof value === 'function')
      return (...given: unknown[]) => changed((value as (...g: unknown[]) => unknown)(...given));
    if (Array.isArray(value)) return value.map(changed);
    if (value !== null && typeof value === 'object')
      return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, changed(inner)]));
    return value;
  };
  return changed(texts) as T;
}

/** A number and its percent sign stand on one line. */
export const withWholePercents = (text: string): string => text.replaceAll(' %', '\u00a0%');
