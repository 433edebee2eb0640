import { caseloadEn } from './caseload-en.ts';
import { figuresEn } from './figures-en.ts';
import { firstWordsEn } from '../first-words-en.ts';
import { goalsEn } from './goals-en.ts';
import { handoverEn } from './handover-en.ts';
import { helpEn } from '../help/help-en.ts';
import { inkEn } from './ink-en.ts';
import { intakeEn } from './intake-en.ts';
import { itemEn } from './item-en.ts';
import { pageEn } from './page-en.ts';
import { pagesEn } from './pages-en.ts';
import { programEn } from './program-en.ts';
import { progressEn } from './progress-en.ts';
import { readbackEn } from './readback-en.ts';
import { recordEn } from './record-en.ts';
import { rulesEn } from './rules-en.ts';
import { sampleEn } from './sample-en.ts';
import { toldClinicEn } from './told/clinic/told-clinic-en.ts';
import { toldRecordEn } from './told/told-record-en.ts';

/** Every word of the screens, in English: the shape of the other languages. */
export const screensEn = {
  ...firstWordsEn,
  caseload: caseloadEn,
  figures: figuresEn,
  goals: goalsEn,
  handover: handoverEn,
  help: helpEn,
  ink: inkEn,
  intake: intakeEn,
  item: itemEn,
  page: pageEn,
  pages: pagesEn,
  program: programEn,
  progress: progressEn,
  readback: readbackEn,
  record: recordEn,
  rules: rulesEn,
  sample: sampleEn,
  // Sentences that logic makes, handed to it by the window.
  told: { ...toldClinicEn, ...toldRecordEn },
};

export type ScreenTexts = typeof screensEn;
/** A group of sentences that logic tells: `Told['flags']`. */
export type Told = ScreenTexts['told'];
