/**
 * Practice checks: a box of the real size or a large one, with its lines for date, payee, sum and signature, and
 * a mark across it so that none can be used as a real one. Above each stands what is to be written.
 */
import { type DrawnLine, type DrawnText, line } from './practice-rows.ts';
import type { Area } from './sheet-sizes.ts';

export interface CheckLabels {
  date: string;
  payTo: string;
  sum: string;
  sign: string;
  /** Printed across it, so that none can be used as a real one. */
  mark: string;
}

/** Width of a check of this height; the real one is 152 by 70 mm. */
const widthOf = (height: number, area: Area): number => Math.min(area.width, height < 80 ? 152 : 180);

const small = 3.4;

/** @param model what is to be written on this check: date, payee, sum in numbers and in words */
export function checkForm(
  area: Area,
  top: number,
  height: number,
  model: string,
  labels: CheckLabels,
): { lines: DrawnLine[]; texts: DrawnText[] } {
  const [left, right] = [area.x, area.x + widthOf(height, area)];
  const [head, foot] = [top + 7, top + 7 + height];
  const at = (share: number): number => head + share * height;
  const label = (text: string, x: number, y: number): DrawnText => ({
    text,
    x,
    y,
    size: small,
    style: 'page',
    grey: 0.25,
    anchor: 'start',
  });
  const rule = (from: number, to: number, y: number): DrawnLine => line('box', from, y, to, y);
  const inner = { left: left + 5, right: right - 5 };
  const amount = inner.right - 0.26 * (right - left);
  return {
    lines: [
      rule(left, right, head),
      rule(left, right, foot),
      line('box', left, head, left, foot),
      line('box', right, head, right, foot),
      rule(amount, inner.right, at(0.2)),
      rule(inner.left, amount - 6, at(0.45)),
      rule(amount, inner.right, at(0.34)),
      rule(amount, inner.right, at(0.47)),
      line('box', amount, at(0.34), amount, at(0.47)),
      line('box', inner.right, at(0.34), inner.right, at(0.47)),
      rule(inner.left, inner.right, at(0.66)),
      rule(amount - 22, inner.right, at(0.9)),
    ],
    texts: [
      { text: model, x: left, y: top + 4.6, size: 4.2, style: 'page-bold', grey: 0.1, anchor: 'start' },
      label(labels.date, amount, at(0.2) + 4),
      label(labels.payTo, inner.left, at(0.45) + 4),
      label(labels.sum, inner.left, at(0.66) + 4),
      label(labels.sign, amount - 22, at(0.9) + 4),
      {
        text: labels.mark,
        x: (left + right) / 2,
        y: at(0.58),
        size: height < 80 ? 16 : 22,
        style: 'page-bold',
        grey: 0.88,
        anchor: 'middle',
      },
    ],
  };
}
