import type { ScreenTexts } from '../screen-languages.ts';

/** Screens in German; those that are missing speak English. */
export const screensDe: Partial<ScreenTexts> = {};
