import type { toldRecordEn } from '../../en/told/told-record-en.ts';
import { clientDe } from './client-de.ts';
import { conditionsDe } from './conditions-de.ts';
import { courseDe } from './course-de.ts';
import { measuresDe } from './measures-de.ts';
import { penDe } from './pen-de.ts';
import { readingDe } from './reading-de.ts';
import { spiralDe } from './spiral-de.ts';
import { systemDe } from './system-de.ts';
import { trailDe } from './trail-de.ts';
import { visitDe } from './visit-de.ts';
import { warningsDe } from './warnings-de.ts';
import { worklistDe } from './worklist-de.ts';

export const toldRecordDe: typeof toldRecordEn = {
  client: clientDe,
  conditions: conditionsDe,
  course: courseDe,
  measures: measuresDe,
  pen: penDe,
  reading: readingDe,
  spiral: spiralDe,
  system: systemDe,
  trail: trailDe,
  visit: visitDe,
  warnings: warningsDe,
  worklist: worklistDe,
};
