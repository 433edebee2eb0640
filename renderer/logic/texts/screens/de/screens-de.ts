import type { ScreenTexts } from '../en/screens-en.ts';
import { helpDe } from '../help/help-de.ts';
import { caseloadDe } from './caseload-de.ts';
import { figuresDe } from './figures-de.ts';
import { frameDe } from './frame-de.ts';
import { goalsDe } from './goals-de.ts';
import { handoverDe } from './handover-de.ts';
import { inkDe } from './ink-de.ts';
import { intakeDe } from './intake-de.ts';
import { itemDe } from './item-de.ts';
import { pageDe } from './page-de.ts';
import { pagesDe } from './pages-de.ts';
import { partsDe } from './parts-de.ts';
import { peopleDe } from '../people/people-de.ts';
import { placesDe } from './places-de.ts';
import { programDe } from './program-de.ts';
import { progressDe } from './progress-de.ts';
import { readbackDe } from './readback-de.ts';
import { recordDe } from './record-de.ts';
import { rulesDe } from './rules-de.ts';
import { sampleDe } from './sample-de.ts';
import { startDe } from './start-de.ts';
import { toldClinicDe } from './told/clinic/told-clinic-de.ts';
import { toldRecordDe } from './told/told-record-de.ts';

/** Screens in German. */
export const screensDe: ScreenTexts = {
  caseload: caseloadDe,
  figures: figuresDe,
  frame: frameDe,
  goals: goalsDe,
  handover: handoverDe,
  help: helpDe,
  ink: inkDe,
  intake: intakeDe,
  item: itemDe,
  page: pageDe,
  pages: pagesDe,
  parts: partsDe,
  people: peopleDe,
  places: placesDe,
  program: programDe,
  progress: progressDe,
  readback: readbackDe,
  record: recordDe,
  rules: rulesDe,
  sample: sampleDe,
  start: startDe,
  told: { ...toldClinicDe, ...toldRecordDe },
};
