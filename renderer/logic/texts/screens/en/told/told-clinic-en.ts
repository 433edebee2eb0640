import { flagsToldEn } from './flags-en.ts';

/** What logic says on the screens Screen, Program, Goal, Pages and Rules, a group for each theme. */
export const toldClinicEn = { flags: flagsToldEn };
