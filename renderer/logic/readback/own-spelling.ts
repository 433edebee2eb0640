import type { OwnSpelling } from '../../../db/types/sample.ts';
import { words } from './normalise.ts';

/** Most own spellings of one sample. */
const MOST = 60;

/**
 * What is wrong with a spelling that is to be noted, as a sentence; '' when it can be noted.
 * @param text the intended text of the sample
 */
export function spellingProblem(pair: OwnSpelling, known: readonly OwnSpelling[], text: string): string {
  const [meant, ...more] = words(pair.meant);
  const [written, ...others] = words(pair.written);
  if (!meant || !written) return 'Type both words: the one meant, and how the client spells it. Nothing was noted.';
  if (more.length > 0 || others.length > 0)
    return 'One word on each side: a gap that was lost is counted as a gap, not as spelling. Nothing was noted.';
  if (meant.text === written.text) return 'Both are the same word. Nothing was noted.';
  if (known.some((one) => words(one.meant)[0]?.text === meant.text && words(one.written)[0]?.text === written.text))
    return 'This spelling is noted already.';
  if (known.length >= MOST) return `At most ${MOST} spellings can be noted for one sample. Nothing was noted.`;
  const intended = new Set(words(text).map((word) => word.text));
  if (!intended.has(meant.text) && !intended.has(written.text))
    return `Neither word stands in the text of this sample. Check the text under Writing sample. Nothing was noted.`;
  return '';
}
