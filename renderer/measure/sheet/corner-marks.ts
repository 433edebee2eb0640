/**
 * The corner marks printed on Fairhand's own sheets: a solid square in each corner; the top left one has a white square
 * in it, so that a page that lies upside down or mirrored is known. Centers lie `insetMm` from both edges of the sheet.
 */
export const CORNER_MARK = {
  /** Side of the square, mm: 30 px at 150 dpi, larger than any letter's solid part. */
  sideMm: 5,
  /** Side of the white square in the top left mark, mm. */
  holeMm: 2,
  /** Center of a mark from the edges of the sheet, mm: its outer side keeps the 15 mm margin of the printed pages. */
  insetMm: 17.5,
} as const;

/** What is printed on Fairhand's own sheets above and below the room for writing: title, marks, check bar, mm. */
export const PRINTED_BANDS = { headMm: 31, footMm: 31 } as const;
