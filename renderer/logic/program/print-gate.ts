/**
 * The one gate of paper: every step on a page and every practice sheet names a line of the program that is allowed now.
 * Titles and wording never decide; what names no line cannot be checked and is refused.
 */

/** Practice on a page: a step of the program, or a sheet to write on. */
export interface Printed {
  /** Line of the program; null = the page was kept before lines were named. */
  lineId: string | null;
  title: string;
  kind: 'step' | 'sheet';
}

export interface Allowed {
  /** An open red flag stops all practice. */
  stopped: boolean;
  /** Ids of the lines that may be printed now. */
  allowed: ReadonlyMap<string, unknown>;
}

/** Why the page may not be printed: the title of what is forbidden; null = it may. */
export function refusedByGate(printed: readonly Printed[], { stopped, allowed }: Allowed): string | null {
  if (printed.length === 0) return null;
  if (stopped) return 'a red flag is open';
  const refused = printed.find(({ lineId, kind }) => (lineId === null ? kind === 'step' : !allowed.has(lineId)));
  return refused?.title ?? null;
}
