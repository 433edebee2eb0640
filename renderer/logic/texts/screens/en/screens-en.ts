import { caseloadEn } from './caseload-en.ts';
import { figuresEn } from './figures-en.ts';
import { frameEn } from './frame-en.ts';
import { goalsEn } from './goals-en.ts';
import { handoverEn } from './handover-en.ts';
import { helpEn } from '../help/help-en.ts';
import { inkEn } from './ink-en.ts';
import { intakeEn } from './intake-en.ts';
import { itemEn } from './item-en.ts';
import { pageEn } from './page-en.ts';
import { pagesEn } from './pages-en.ts';
import { partsEn } from './parts-en.ts';
import { peopleEn } from '../people/people-en.ts';
import { placesEn } from './places-en.ts';
import { programEn } from './program-en.ts';
import { progressEn } from './progress-en.ts';
import { readbackEn } from './readback-en.ts';
import { recordEn } from './record-en.ts';
import { rulesEn } from './rules-en.ts';
import { sampleEn } from './sample-en.ts';
import { startEn } from './start-en.ts';
import { toldClinicEn } from './told/clinic/told-clinic-en.ts';
import { toldRecordEn } from './told/told-record-en.ts';

/** Every word of the screens, in English: the shape of the other languages. */
export const screensEn = {
  caseload: caseloadEn,
  figures: figuresEn,
  frame: frameEn,
  goals: goalsEn,
  handover: handoverEn,
  help: helpEn,
  ink: inkEn,
  intake: intakeEn,
  item: itemEn,
  page: pageEn,
  pages: pagesEn,
  parts: partsEn,
  people: peopleEn,
  places: placesEn,
  program: programEn,
  progress: progressEn,
  readback: readbackEn,
  record: recordEn,
  rules: rulesEn,
  sample: sampleEn,
  start: startEn,
  // Sentences that logic makes, handed to it by the window.
  told: { ...toldClinicEn, ...toldRecordEn },
};

export type ScreenTexts = typeof screensEn;
/** A group of sentences that logic tells: `Told['flags']`. */
export type Told = ScreenTexts['told'];
