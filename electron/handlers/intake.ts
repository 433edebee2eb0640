import { Refusal } from '../contract/envelope.ts';
import type { intakeRequests } from '../contract/intake.ts';
import type { Handler } from './handler.ts';
import { refuseFuture, saveFact } from './saving.ts';

export const intakeHandlers: { [N in keyof typeof intakeRequests]: Handler<N> } = {
  'intake.answer': saveFact('intakeAnswer'),
  'intake.flag': (services, answer) => {
    refuseFuture(services, answer.review?.on ?? null);
    if (services.therapist().assistant) {
      const stored = services.need().get('redFlag', answer.id);
      const reviewed = answer.review !== null && JSON.stringify(answer.review) !== JSON.stringify(stored?.review);
      if (reviewed || (stored?.present === true && !answer.present)) throw new Refusal('assistant-clears');
    }
    return saveFact('redFlag')(services, answer);
  },
  'intake.setup': saveFact('setup'),
};
