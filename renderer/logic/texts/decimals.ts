/** A number as a language writes it, rounded: 2.5 in English, 2,5 in Spanish and German. */
export interface Decimals {
  /** @param most decimals shown @param least decimals always shown, left out: as many as `most` */
  (value: number, most?: number, least?: number): string;
}

/** @param locale BCP 47; thousands are never grouped, so that a number can be typed as it is read */
export const decimalsIn =
  (locale: string): Decimals =>
  (value, most = 0, least = most) =>
    new Intl.NumberFormat(locale, {
      minimumFractionDigits: least,
      maximumFractionDigits: most,
      useGrouping: false,
    }).format(value);
