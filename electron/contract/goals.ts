import { save } from './request.ts';

export const goalRequests = {
  'goal.save': save('goal'),
  'goal.rate': save('goalRating'),
} as const;
