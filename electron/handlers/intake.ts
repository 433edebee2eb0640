import type { intakeRequests } from '../contract/intake.ts';
import type { Handler } from './handler.ts';
import { refuseFuture, saveFact } from './saving.ts';

export const intakeHandlers: { [N in keyof typeof intakeRequests]: Handler<N> } = {
  'intake.answer': saveFact('intakeAnswer'),
  'intake.flag': (services, answer) => {
    refuseFuture(services, answer.review?.on ?? null);
    return saveFact('redFlag')(services, answer);
  },
  'intake.setup': saveFact('setup'),
};
