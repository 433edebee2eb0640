/** Every setting whose error rates are held, in the order in which they are shown. */
import { boutSettings } from './bouts.ts';
import { gainSettings } from './gains.ts';
import { goalSettings } from './goals.ts';
import { handSettings } from './hands.ts';
import { lossSettings } from './losses.ts';
import { proposalSettings } from './proposals.ts';
import type { Setting } from './rate.ts';
import { unchangedSettings } from './unchanged.ts';

export const settings: readonly Setting[] = [
  ...unchangedSettings,
  ...gainSettings,
  ...lossSettings,
  ...proposalSettings,
  ...boutSettings,
  ...goalSettings,
  ...handSettings,
];

export { keepsBound, STANDARD_ERRORS, type Rate, type Setting } from './rate.ts';
