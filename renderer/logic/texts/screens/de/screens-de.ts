import type { ScreenTexts } from '../en/screens-en.ts';
import { caseloadDe } from './caseload-de.ts';
import { figuresDe } from './figures-de.ts';
import { goalsDe } from './goals-de.ts';
import { handoverDe } from './handover-de.ts';
import { partsDe } from './parts-de.ts';
import { placesDe } from './places-de.ts';
import { recordDe } from './record-de.ts';
import { startDe } from './start-de.ts';

/** Screens in German; those that are missing speak English. */
export const screensDe: Partial<ScreenTexts> = {
  caseload: caseloadDe,
  figures: figuresDe,
  goals: goalsDe,
  handover: handoverDe,
  parts: partsDe,
  places: placesDe,
  record: recordDe,
  start: startDe,
};
