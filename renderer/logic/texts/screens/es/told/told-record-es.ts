import type { toldRecordEn } from '../../en/told/told-record-en.ts';
import { clientEs } from './client-es.ts';
import { conditionsEs } from './conditions-es.ts';
import { courseEs } from './course-es.ts';
import { measuresEs } from './measures-es.ts';
import { penEs } from './pen-es.ts';
import { readingEs } from './reading-es.ts';
import { spiralEs } from './spiral-es.ts';
import { systemEs } from './system-es.ts';
import { trailEs } from './trail-es.ts';
import { visitEs } from './visit-es.ts';
import { warningsEs } from './warnings-es.ts';
import { worklistEs } from './worklist-es.ts';

export const toldRecordEs: typeof toldRecordEn = {
  client: clientEs,
  conditions: conditionsEs,
  course: courseEs,
  measures: measuresEs,
  pen: penEs,
  reading: readingEs,
  spiral: spiralEs,
  system: systemEs,
  trail: trailEs,
  visit: visitEs,
  warnings: warningsEs,
  worklist: worklistEs,
};
