/** Words that show a trouble most and least: what a therapist would circle. */
import type { Telling } from '../texts/screens/telling.ts';
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

export function troubles(result: PageResult, { told, decimals }: Telling): Strip[] {
  const said = told.measures.troubles;
  const words = result.lines.flatMap((line) => line.words.filter((w) => w.excluded !== true));
  const sizes = words
    .filter((w) => w.xHeightMm !== null)
    .map((w) => ({ box: w.box, label: `${decimals(w.xHeightMm!, 2)} mm`, badness: -w.xHeightMm! }));
  const gaps = result.lines.flatMap((line) =>
    line.words.flatMap((w, i) =>
      i > 0 && w.gapBeforeMm !== null
        ? [
            {
              box: around(line.words[i - 1]!.box, w.box),
              label: said.gap(decimals(w.gapBeforeMm, 1)),
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
      ? [{ box: w.box, label: said.closed(closed, should.length), badness: 1 - closed / should.length }]
      : [];
  });
  return [
    ...strip(said.small, sizes),
    ...strip(said.gaps, gaps),
    ...(open.some((c) => c.badness > 0) ? strip(said.open, open) : []),
  ];
}
