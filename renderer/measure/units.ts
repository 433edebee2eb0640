/** Lengths by their unit, so that pixels and millimeters are not mixed up unseen. */
export type Px = number & { readonly unit?: 'px' };
export type Mm = number & { readonly unit?: 'mm' };

export const MM_PER_INCH = 25.4;

/** Pixels to millimeters of paper. */
export function toMm(length: Px, pxPerMm: number): Mm {
  return (length / pxPerMm) as Mm;
}

/** Millimeters of paper to pixels. */
export function toPx(length: Mm, pxPerMm: number): Px {
  return (length * pxPerMm) as Px;
}

/** Dots per inch to pixels per millimeter. */
export function pxPerMmOfDpi(dpi: number): number {
  return dpi / MM_PER_INCH;
}
