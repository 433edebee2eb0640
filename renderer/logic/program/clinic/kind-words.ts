import type { LineKind } from '../../../../db/types/program.ts';

export const kindWords: Record<LineKind, string> = {
  setup: 'Set-up',
  'warm-up': 'Warm-up',
  exercise: 'Exercise',
  writing: 'Writing',
  paper: 'Paper',
  tool: 'Pen or aid',
  content: 'What to write',
  advice: 'Advice',
  refer: 'Ask or refer',
};
