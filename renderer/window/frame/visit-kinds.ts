import type { VisitKind } from '../../../db/types/visit.ts';

export const visitKinds: Record<VisitKind, string> = {
  first: 'first visit',
  treatment: 'treatment',
  retest: 'retest',
  discharge: 'discharge',
};
