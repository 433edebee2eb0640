/** Spirals drawn on our printed sheet: the picture comes by /blob, is decoded and measured in one go. */
import { z } from 'zod';
import { Hand, Id } from '../../db/types/common.ts';
import { SpiralSheet, SpiralTime } from '../../db/types/spiral.ts';
import { write } from './request.ts';

const told = { hand: Hand, tracedSeconds: SpiralTime, freeSeconds: SpiralTime };

export const spiralRequests = {
  'spiral.add': write(
    z
      .object({ id: Id, sampleId: Id, token: z.string().max(80), pdfPage: z.number().int().min(1).max(500), ...told })
      .strict(),
    SpiralSheet,
  ),
  /** Another hand or other times: the swings a second follow from what is kept, without measuring. */
  'spiral.tell': write(z.object({ id: Id, ...told }).strict(), SpiralSheet),
  /** Measures the kept picture anew, by the method of today. */
  'spiral.measure': write(z.object({ id: Id }).strict(), SpiralSheet),
} as const;
