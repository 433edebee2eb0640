import type { LineKind } from '../../../../db/types/program.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

/** Kinds of lines in English. */
export const kindWords: Record<LineKind, string> = toldEnglish.ladder.kinds;
