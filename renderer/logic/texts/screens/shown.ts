/** What a sentence takes in: a number or words. */
export type Shown = string | number;
