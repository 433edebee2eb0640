import { alongInXHeights } from './gap-places.ts';
import { sizeAt } from '../lines/letter-tops.ts';
import { traceAt } from '../lines/trace.ts';
import type { Layout } from '../lines/page-layout.ts';
import type { PathLine } from './text-path.ts';

/** Tops from this many x-heights on are tall letters; bottoms from this far below the baseline hang. */
const TALL = 1.4;
const HANGS = 0.35;
/** Tall or hanging parts closer than this are one letter's. */
const SAME = 0.5;

/** The letters of each line as a text is laid along them. */
export function pathLines(layout: Layout): PathLine[] {
  return layout.lines.map((line, i) => {
    const { groups, places, letters, owner } = layout.spacings[i]!;
    const cos = Math.cos(Math.atan(line.baseline.straight.slope));
    const parts = letters.map((k) => {
      const tall: number[] = [];
      const hanging: number[] = [];
      for (const { index } of groups[k]!.blobs)
        for (const e of layout.lists[index]!) {
          const size = sizeAt(line.trend, e.u);
          const height = ((traceAt(line.baseline.curve, e.u) - e.v) * cos) / size;
          const at = (): number => alongInXHeights(line, e.u) / cos - layout.shear * height;
          if (e.kind === 'top' && height > TALL) tall.push(at());
          if (e.kind === 'bottom' && height < -HANGS) hanging.push(at());
        }
      return { tall: apart(tall), hanging: apart(hanging) };
    });
    const ends = letters.map(() => false);
    for (const [mark, letter] of owner)
      if (places[mark]!.mark === 'low' && letter >= 0 && places[mark]!.from > places[letters[letter]!]!.from)
        ends[letter] = true;
    return {
      from: letters.map((k) => places[k]!.from),
      to: letters.map((k) => places[k]!.to),
      tall: parts.map(({ tall }) => tall),
      hanging: parts.map(({ hanging }) => hanging),
      odds: layout.odds[i]!,
      ends,
    };
  });
}

function apart(places: number[]): number[] {
  places.sort((a, b) => a - b);
  return places.filter((place, i) => i === 0 || place - places[i - 1]! > SAME);
}
