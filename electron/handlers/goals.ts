import type { goalRequests } from '../contract/goals.ts';
import type { Handler } from './handler.ts';
import { saveFact } from './saving.ts';

export const goalHandlers: { [N in keyof typeof goalRequests]: Handler<N> } = {
  'goal.save': saveFact('goal'),
  'goal.rate': saveFact('goalRating'),
};
