import { caseloadEn } from './caseload-en.ts';
import { figuresEn } from './figures-en.ts';
import { goalsEn } from './goals-en.ts';
import { handoverEn } from './handover-en.ts';
import { partsEn } from './parts-en.ts';
import { placesEn } from './places-en.ts';
import { recordEn } from './record-en.ts';
import { startEn } from './start-en.ts';

/** Every word of the screens, in English: the shape of the other languages. */
export const screensEn = {
  caseload: caseloadEn,
  figures: figuresEn,
  goals: goalsEn,
  handover: handoverEn,
  parts: partsEn,
  places: placesEn,
  record: recordEn,
  start: startEn,
};

export type ScreenTexts = typeof screensEn;
