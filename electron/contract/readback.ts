import { save } from './request.ts';

export const readbackRequests = {
  'reading.save': save('reading'),
} as const;
