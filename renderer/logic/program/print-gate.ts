import { toldEnglish } from '../texts/screens/told-english.ts';
/**
 * The one gate of paper: every step on a page and every practice sheet names lines of the program that are allowed now.
 * Titles and wording never decide; what names no line cannot be checked and is refused.
 */

/** Practice on a page: a step of the program, or a sheet to write on. */
export interface Printed {
  /** Lines of the program; null = the page was kept before lines were named. */
  lineIds: readonly string[] | null;
  title: string;
  kind: 'step' | 'sheet';
}

export interface Allowed {
  /** An open red flag stops all practice. */
  stopped: boolean;
  /** Ids of the lines that may be printed now. */
  allowed: ReadonlyMap<string, unknown>;
  /** The client has a program. Without one there is nothing to check a sheet of lines against but red flags. */
  hasProgram: boolean;
}

/** Why the page may not be printed: the title of what is forbidden; null = it may. */
export function refusedByGate(printed: readonly Printed[], { stopped, allowed, hasProgram }: Allowed): string | null {
  if (printed.length === 0) return null;
  if (stopped) return toldEnglish.draft.redFlagIsOpen;
  const free = ({ kind, lineIds }: Printed): boolean => kind === 'sheet' && !hasProgram && lineIds?.length === 0;
  const named = ({ lineIds }: Printed): boolean =>
    lineIds !== null && lineIds.length > 0 && lineIds.every((id) => allowed.has(id));
  return printed.find((each) => !named(each) && !free(each))?.title ?? null;
}
