import { rulesCurrent } from '../../db/rules/index.ts';
import { changeLimits, examineChange, type ChangeVerdict, type ReadSample } from '../../renderer/change/index.ts';

export const limits = changeLimits(rulesCurrent().thresholds);

/** Day `n` days after Monday, 6 January 2025. */
export const dayAfter = (n: number): string => new Date(Date.UTC(2025, 0, 6 + n)).toISOString().slice(0, 10);

/** Weekly samples of `words` words; the first `baseline` are marked. */
export const weekly = (
  right: readonly number[],
  baseline: number,
  { words = 24, start = 0, ...rest }: Partial<ReadSample> & { start?: number } = {},
): ReadSample[] =>
  right.map((count, i) => ({
    day: dayAfter(start + 7 * i),
    words,
    right: count,
    reader: 'A',
    task: 'copy',
    cue: 'none',
    dose: 'none',
    hand: 'right',
    baseline: i < baseline,
    ...rest,
  }));

export const ask = (samples: ReadSample[], pairs: Parameters<typeof examineChange>[0]['pairs'] = []): ChangeVerdict =>
  examineChange({ samples, pairs }, limits).answer;
