import { flagsToldEn } from './flags-en.ts';
import { findingsToldEn } from './findings-en.ts';
import { seatToldEn } from './seat-en.ts';
import { goalsToldEn } from './goals-told-en.ts';
import { draftToldEn } from './draft-en.ts';
import { ladderToldEn } from './ladder-en.ts';
import { ruleChecksToldEn } from './rule-checks-en.ts';
import { ruleFileToldEn } from './rule-file-en.ts';
import { ruleWordsToldEn } from './rule-words-en.ts';
import { paperToldEn } from './paper-en.ts';
import { printedToldEn } from './printed-en.ts';

/** What logic says on the screens Screen, Program, Goal, Pages and Rules, a group for each theme. */
export const toldClinicEn = {
  flags: flagsToldEn,
  findings: findingsToldEn,
  seat: seatToldEn,
  goals: goalsToldEn,
  draft: draftToldEn,
  ladder: ladderToldEn,
  ruleChecks: ruleChecksToldEn,
  ruleFile: ruleFileToldEn,
  ruleWords: ruleWordsToldEn,
  paper: paperToldEn,
  printed: printedToldEn,
};
