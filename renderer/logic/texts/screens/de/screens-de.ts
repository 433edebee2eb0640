import type { ScreenTexts } from '../en/screens-en.ts';

/** Screens in German; those that are missing speak English. */
export const screensDe: Partial<ScreenTexts> = {};
