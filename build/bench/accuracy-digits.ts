import { DIGIT_INK, engineHoles, readDigits } from '../../tests/outside/digits.ts';
import { missingReference, runReference } from '../../tests/outside/python.ts';

/** Hole counts of all 70,000 real digits against OpenCV's and scikit-image's. */
export function digitHolesReport(): { missed: number; lines: string[] } {
  const missing = missingReference();
  if (missing) return { missed: 0, lines: [`Skipped: hole counts of 70,000 real digits. ${missing}.`] };
  let missed = 0;
  let count = 0;
  for (const part of ['train', 't10k'] as const) {
    const set = readDigits(part);
    const reference = runReference('opencv_counts.py', ['digits', set.file, String(DIGIT_INK)]) as {
      opencv: number[];
      skimage: number[];
    };
    for (let i = 0; i < set.count; i += 1) {
      const own = engineHoles(set, i);
      if (own !== reference.opencv[i] || own !== reference.skimage[i]) missed += 1;
    }
    count += set.count;
  }
  return { missed, lines: [`Holes of ${count} real digits: ${missed} differ from OpenCV's or scikit-image's count.`] };
}
