import type { toldClinicEn } from '../../../en/told/clinic/told-clinic-en.ts';
import { flagsToldEs } from './flags-es.ts';
import { findingsToldEs } from './findings-es.ts';
import { seatToldEs } from './seat-es.ts';
import { goalsToldEs } from './goals-told-es.ts';
import { draftToldEs } from './draft-es.ts';
import { ladderToldEs } from './ladder-es.ts';
import { ruleChecksToldEs } from './rule-checks-es.ts';
import { ruleFileToldEs } from './rule-file-es.ts';
import { ruleWordsToldEs } from './rule-words-es.ts';
import { paperToldEs } from './paper-es.ts';
import { printedToldEs } from './printed-es.ts';

export const toldClinicEs: typeof toldClinicEn = {
  flags: flagsToldEs,
  findings: findingsToldEs,
  seat: seatToldEs,
  goals: goalsToldEs,
  draft: draftToldEs,
  ladder: ladderToldEs,
  ruleChecks: ruleChecksToldEs,
  ruleFile: ruleFileToldEs,
  ruleWords: ruleWordsToldEs,
  paper: paperToldEs,
  printed: printedToldEs,
};
