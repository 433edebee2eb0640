/** A practice page as tests ask for it, with what differs. */
import type { PracticeRequest } from '../../../renderer/logic/pages/practice/practice-steps.ts';

export const practiceAsked = (more: Partial<PracticeRequest> = {}): PracticeRequest => ({
  sheet: 'A4',
  ruling: 'dashed-10',
  letters: 'print',
  models: ['a d g q', 'milk bread eggs tea'],
  linesPerBout: null,
  bouts: 1,
  restText: 'Stop here. Rest 2 minutes.',
  nextTimeText: 'Stop here for today.',
  bold: false,
  startLine: 'none',
  marks: 'none',
  pictures: null,
  xHeightMm: null,
  title: 'Practice page',
  instruction: 'Stop when a line gets hard to read.',
  date: 'March 4, 2026',
  clientCode: 'C-014',
  lineIds: [],
  ...more,
});
