import { save } from './request.ts';

export const intakeRequests = {
  'intake.answer': save('intakeAnswer'),
  'intake.flag': save('redFlag'),
  'intake.setup': save('setup'),
} as const;
