/**
 * The one statistical model of "has it changed?": every screen, page, flag, proposal and export asks this door, and
 * nothing outside imports past it. Pure: no clock, no chance; numbers come from the rule table (`changeLimits`).
 */
export { CHANGE_VERSION } from './version.ts';
export { changeLimits, knownHandSpread, type ChangeLimits } from './change-limits.ts';
export { CONDITIONS } from './change-types.ts';
export type {
  ChangeChances,
  ChangeInterval,
  ChangeNote,
  ChangeVerdict,
  ConditionName,
  Count,
  Direction,
  LossSign,
  ReadSample,
  RepeatPair,
  Verdict,
} from './change-types.ts';
export { familyOf, READER_KINDS } from './families.ts';
export { examineChange, type ChangeExamination, type ChangeQuestion } from './change-verdict.ts';
export { keyOf, type Visit } from './visits.ts';
export { stepSigns, type StepSigns } from './steps.ts';
export { smallestChange, type SmallestChange, type SmallestQuestion } from './smallest-change.ts';
export { fatigueOnset, type FatigueOnset } from './fatigue-onset.ts';
export { lineTrend, slopeInterval, type SlopeInterval } from '../statistics/least-squares.ts';
export {
  handChange,
  handInterval,
  handScaleOf,
  handSpread,
  type HandChange,
  type HandScale,
  type HandSpread,
} from './hand-spread.ts';
