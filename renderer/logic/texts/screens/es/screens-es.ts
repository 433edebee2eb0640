import type { ScreenTexts } from '../en/screens-en.ts';
import { helpEs } from '../help/help-es.ts';
import { caseloadEs } from './caseload-es.ts';
import { figuresEs } from './figures-es.ts';
import { frameEs } from './frame-es.ts';
import { goalsEs } from './goals-es.ts';
import { handoverEs } from './handover-es.ts';
import { inkEs } from './ink-es.ts';
import { intakeEs } from './intake-es.ts';
import { itemEs } from './item-es.ts';
import { pageEs } from './page-es.ts';
import { pagesEs } from './pages-es.ts';
import { partsEs } from './parts-es.ts';
import { peopleEs } from '../people/people-es.ts';
import { placesEs } from './places-es.ts';
import { programEs } from './program-es.ts';
import { progressEs } from './progress-es.ts';
import { readbackEs } from './readback-es.ts';
import { recordEs } from './record-es.ts';
import { rulesEs } from './rules-es.ts';
import { sampleEs } from './sample-es.ts';
import { startEs } from './start-es.ts';
import { toldClinicEs } from './told/clinic/told-clinic-es.ts';
import { toldRecordEs } from './told/told-record-es.ts';

/** Screens in Spanish. */
export const screensEs: ScreenTexts = {
  caseload: caseloadEs,
  figures: figuresEs,
  frame: frameEs,
  goals: goalsEs,
  handover: handoverEs,
  help: helpEs,
  ink: inkEs,
  intake: intakeEs,
  item: itemEs,
  page: pageEs,
  pages: pagesEs,
  parts: partsEs,
  people: peopleEs,
  places: placesEs,
  program: programEs,
  progress: progressEs,
  readback: readbackEs,
  record: recordEs,
  rules: rulesEs,
  sample: sampleEs,
  start: startEs,
  told: { ...toldClinicEs, ...toldRecordEs },
};
