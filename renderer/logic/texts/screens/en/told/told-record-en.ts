import { clientEn } from './client-en.ts';
import { conditionsEn } from './conditions-en.ts';
import { courseEn } from './course-en.ts';
import { measuresEn } from './measures-en.ts';
import { penEn } from './pen-en.ts';
import { readingEn } from './reading-en.ts';
import { spiralEn } from './spiral-en.ts';
import { systemEn } from './system-en.ts';
import { trailEn } from './trail-en.ts';
import { visitEn } from './visit-en.ts';
import { warningsEn } from './warnings-en.ts';
import { worklistEn } from './worklist-en.ts';

/** What logic says on the other screens (record, sample, read back, progress, caseload), a group for each theme. */
export const toldRecordEn = {
  client: clientEn,
  conditions: conditionsEn,
  course: courseEn,
  measures: measuresEn,
  pen: penEn,
  reading: readingEn,
  spiral: spiralEn,
  system: systemEn,
  trail: trailEn,
  visit: visitEn,
  warnings: warningsEn,
  worklist: worklistEn,
};
