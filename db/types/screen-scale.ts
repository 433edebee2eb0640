import { z } from 'zod';
import { IsoDateTime } from './common.ts';
import { InkScreen } from './sample.ts';

/** True size of this computer's screen, set with a card or a ruler: a setting of the caseload, not of a client. */
export const ScreenScale = z.object({
  /** The screen as it was when the size was set. */
  screen: InkScreen,
  /** Pixels of the window for one mm, at that zoom. */
  pxPerMm: z.number().min(0.5).max(100),
  at: IsoDateTime,
});
export type ScreenScale = z.infer<typeof ScreenScale>;
