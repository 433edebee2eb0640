/** A number as a language writes it, rounded: 2.5 in English, 2,5 in Spanish and German. */
export interface Decimals {
  /** @param most decimals shown @param least decimals always shown, left out: as many as `most` */
  (value: number, most?: number, least?: number): string;
}

/** Making a format takes as long as hundreds of numbers: each is made once. */
const formats = new Map<string, Intl.NumberFormat>();

/** @param locale BCP 47; thousands are never grouped, so that a number can be typed as it is read */
export const decimalsIn =
  (locale: string): Decimals =>
  (value, most = 0, least = most) => {
    const key = `${locale} ${most} ${least}`;
    const format =
      formats.get(key) ??
      new Intl.NumberFormat(locale, {
        minimumFractionDigits: least,
        maximumFractionDigits: most,
        useGrouping: false,
      });
    formats.set(key, format);
    return format.format(value);
  };

/** Three digits that count, the last zeros left out: 12.3, 0.0456, 1230. */
export function threeDigits(value: number, decimals: Decimals): string {
  const rounded = Number(value.toPrecision(3));
  return decimals(
    rounded,
    rounded === 0 ? 0 : Math.min(12, Math.max(0, 2 - Math.floor(Math.log10(Math.abs(rounded))))),
    0,
  );
}
