/**
 * Words that printed pages are made of, in one place, so that another language is one more object of this shape.
 * Family words: short, plain, no diagnosis, no jargon.
 */
export const en = {
  practice: {
    bar: (mm: number) => `${mm} mm`,
    measured: (mm: number) => `Measured ${mm} mm?`,
    yes: 'yes',
    no: 'no',
    pageOf: (page: number, pages: number) => (pages > 1 ? `Page ${page} of ${pages}` : 'Page 1'),
    title: 'Practice page',
    rest: (minutes: number) => `Stop here. Rest ${minutes} minutes, then look back at your lines.`,
    actualSize: 'Print at actual size (100 %). “Fit to page” makes the lines smaller than they should be.',
  },
};
export type Texts = typeof en;
export const texts: Texts = en;
