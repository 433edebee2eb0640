import type { toldClinicEn } from '../../../en/told/clinic/told-clinic-en.ts';
import { flagsToldDe } from './flags-de.ts';
import { findingsToldDe } from './findings-de.ts';
import { seatToldDe } from './seat-de.ts';
import { goalsToldDe } from './goals-told-de.ts';
import { draftToldDe } from './draft-de.ts';
import { ladderToldDe } from './ladder-de.ts';
import { ruleChecksToldDe } from './rule-checks-de.ts';
import { ruleFileToldDe } from './rule-file-de.ts';
import { ruleWordsToldDe } from './rule-words-de.ts';
import { paperToldDe } from './paper-de.ts';
import { printedToldDe } from './printed-de.ts';

export const toldClinicDe: typeof toldClinicEn = {
  flags: flagsToldDe,
  findings: findingsToldDe,
  seat: seatToldDe,
  goals: goalsToldDe,
  draft: draftToldDe,
  ladder: ladderToldDe,
  ruleChecks: ruleChecksToldDe,
  ruleFile: ruleFileToldDe,
  ruleWords: ruleWordsToldDe,
  paper: paperToldDe,
  printed: printedToldDe,
};
