/** Who reads what, at which size. */
import { z } from 'zod';
import { Id, Initials, IsoDateTime } from '../../db/types/common.ts';
import { ScreenScale } from '../../db/types/screen-scale.ts';
import { nothing, read, save, write } from './request.ts';

export const readbackRequests = {
  'reading.save': save('reading'),
  /** True size of this screen; null before it was set here or for the pen. */
  'readback.screen': read(nothing, z.object({ scale: ScreenScale.nullable() })),
  'readback.setScreen': write(z.object({ scale: ScreenScale }).strict(), z.object({ scale: ScreenScale })),
  /** Texts that somebody with these initials has read, or has taken a sample of, in the whole caseload. */
  'readback.textsMet': read(
    z.object({ initials: Initials }).strict(),
    z.object({
      met: z.array(
        z.object({
          sampleId: Id,
          how: z.enum(['read', 'took']),
          at: IsoDateTime,
          codes: z.array(z.string()),
          text: z.string(),
        }),
      ),
    }),
  ),
} as const;
