import type { readbackRequests } from '../contract/readback.ts';
import type { Handler } from './handler.ts';
import { saveFact } from './saving.ts';

export const readbackHandlers: { [N in keyof typeof readbackRequests]: Handler<N> } = {
  'reading.save': saveFact('reading'),
};
