/** Longest note, in characters. Apart from the schemas, which the first screen can do without. */
export const NOTE_LENGTH = 20_000;
