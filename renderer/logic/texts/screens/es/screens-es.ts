import type { ScreenTexts } from '../screen-languages.ts';

/** Screens in Spanish; those that are missing speak English. */
export const screensEs: Partial<ScreenTexts> = {};
