import type { ScreenTexts } from '../en/screens-en.ts';
import { caseloadEs } from './caseload-es.ts';
import { figuresEs } from './figures-es.ts';
import { goalsEs } from './goals-es.ts';
import { handoverEs } from './handover-es.ts';
import { partsEs } from './parts-es.ts';
import { placesEs } from './places-es.ts';
import { recordEs } from './record-es.ts';
import { startEs } from './start-es.ts';

/** Screens in Spanish; those that are missing speak English. */
export const screensEs: Partial<ScreenTexts> = {
  caseload: caseloadEs,
  figures: figuresEs,
  goals: goalsEs,
  handover: handoverEs,
  parts: partsEs,
  places: placesEs,
  record: recordEs,
  start: startEs,
};
