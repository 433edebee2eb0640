/** Words that show a trouble most and least: what a therapist would circle. */
import type { BoxMm, PageResult } from '../../../db/types/sample.ts';
import { lettersOf } from './overlay-shapes.ts';

interface Shot {
  box: BoxMm;
  label: string;
  worst: boolean;
}
export interface Strip {
  name: string;
  shots: Shot[];
}

/** Crops of each kind. */
const worstShown = 3;

interface Candidate {
  box: BoxMm;
  label: string;
  /** Larger is worse. */
  badness: number;
}

function strip(name: string, candidates: readonly Candidate[]): Strip[] {
  if (candidates.length < worstShown + 1) return [];
  const sorted = [...candidates].sort((a, b) => b.badness - a.badness);
  const best = sorted.at(-1)!;
  // A word as good as the best one is no example of the trouble.
  const worst = sorted.slice(0, worstShown).filter((c) => c.badness > best.badness);
  return [
    {
      name,
      shots: [...worst.map((c) => ({ ...c, worst: true })), { ...best, worst: false }].map(({ box, label, worst }) => ({
        box,
        label,
        worst,
      })),
    },
  ];
}

/** The pair of words around a gap. */
const around = (a: BoxMm, b: BoxMm): BoxMm => {
  const yMm = Math.min(a.yMm, b.yMm);
  return {
    xMm: a.xMm,
    yMm,
    widthMm: b.xMm + b.widthMm - a.xMm,
    heightMm: Math.max(a.yMm + a.heightMm, b.yMm + b.heightMm) - yMm,
  };
};

export function troubles(result: PageResult): Strip[] {
  const words = result.lines.flatMap((line) => line.words.filter((w) => w.excluded !== true));
  const sizes = words
    .filter((w) => w.xHeightMm !== null)
    .map((w) => ({ box: w.box, label: `${w.xHeightMm!.toFixed(2)} mm`, badness: -w.xHeightMm! }));
  const gaps = result.lines.flatMap((line) =>
    line.words.flatMap((w, i) =>
      i > 0 && w.gapBeforeMm !== null
        ? [
            {
              box: around(line.words[i - 1]!.box, w.box),
              label: `gap ${w.gapBeforeMm.toFixed(1)} mm`,
              badness: -w.gapBeforeMm,
            },
          ]
        : [],
    ),
  );
  const open = words.flatMap((w) => {
    const should = lettersOf(w).filter((l) => l.closureExpected === true && !l.excluded);
    const closed = should.filter((l) => l.loops > 0).length;
    return should.length
      ? [{ box: w.box, label: `${closed} of ${should.length} closed`, badness: 1 - closed / should.length }]
      : [];
  });
  return [
    ...strip('Small letters', sizes),
    ...strip('Narrow word gaps', gaps),
    ...(open.some((c) => c.badness > 0) ? strip('Letters left open', open) : []),
  ];
}
