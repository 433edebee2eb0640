import type { InkScreen } from '../../../db/types/sample.ts';

/** The screen as the window sees it now: a scale holds for this one only. */
export const screenNow = (): InkScreen => ({
  width: screen.width,
  height: screen.height,
  devicePixelRatio: window.devicePixelRatio,
});
