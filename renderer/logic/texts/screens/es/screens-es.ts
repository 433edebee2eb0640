import type { ScreenTexts } from '../en/screens-en.ts';

/** Screens in Spanish; those that are missing speak English. */
export const screensEs: Partial<ScreenTexts> = {};
