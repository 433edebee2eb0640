import type { Told } from '../texts/screens/en/screens-en.ts';
import type { OwnSpelling } from '../../../db/types/sample.ts';
import { words } from './normalise.ts';

/** Most own spellings of one sample. */
const MOST = 60;

/**
 * What is wrong with a spelling that is to be noted, as a sentence; '' when it can be noted.
 * @param text the intended text of the sample
 */
export function spellingProblem(
  pair: OwnSpelling,
  known: readonly OwnSpelling[],
  text: string,
  say: Told['reading']['spelling'],
): string {
  const [meant, ...more] = words(pair.meant);
  const [written, ...others] = words(pair.written);
  if (!meant || !written) return say.bothWords;
  if (more.length > 0 || others.length > 0) return say.oneWord;
  if (meant.text === written.text) return say.same;
  if (known.some((one) => words(one.meant)[0]?.text === meant.text && words(one.written)[0]?.text === written.text))
    return say.known;
  if (known.length >= MOST) return say.most(MOST);
  const intended = new Set(words(text).map((word) => word.text));
  if (!intended.has(meant.text) && !intended.has(written.text)) return say.notInText;
  return '';
}
