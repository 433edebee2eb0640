/** Home programs and the practice logs that come back. */
import { z } from 'zod';
import { Id } from '../../db/types/common.ts';
import { Program } from '../../db/types/program.ts';
import { save, write } from './request.ts';

export const programRequests = {
  /** Saves a draft; an approved program is frozen. */
  'program.save': save('program'),
  /** Re-derives open flags and vetoes from the stored facts before it freezes the program. */
  'program.approve': write(z.object({ id: Id }).strict(), Program),
  'practice.save': save('practiceLog'),
} as const;
