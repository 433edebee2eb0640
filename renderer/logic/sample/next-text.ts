/** Which shipped text to write next: one that this client has not written lately. */
import type { Program } from '../../../db/types/program.ts';
import type { Sample, TaskKind } from '../../../db/types/sample.ts';
import type { SampleText } from '../../../db/types/rule-table/sample-texts.ts';

/** A text is not used again for the same client within this many samples (common practice, no source). */
const apart = 4;

/** So many sentences, or one pangram so often, on one page show size down the page and fatigue (copying shows shrinking that free writing misses; common practice). */
export const onOnePage = 4;

/**
 * The texts of a kind that were written longest ago, or never; in the table's order where several are new. Fewer than
 * `count` when no more of this kind and language are shipped.
 */
export function nextTexts(
  texts: readonly SampleText[],
  kind: SampleText['kind'],
  samples: readonly Sample[],
  count: number,
  language = 'en',
): SampleText[] {
  const inOrder = [...samples].sort((a, b) => a.takenAt.localeCompare(b.takenAt));
  const lastUse = (t: SampleText) => inOrder.findLastIndex((s) => s.task.textCodes.includes(t.code));
  return texts
    .filter((t) => t.kind === kind && t.language === language)
    .map((text) => ({ text, use: lastUse(text) }))
    .sort((a, b) => a.use - b.use)
    .slice(0, count)
    .map(({ text }) => text);
}

/** Whether a text was written among the client's last samples, and so is known by heart. */
export function usedLately(text: SampleText, samples: readonly Sample[]): boolean {
  const last = [...samples].sort((a, b) => a.takenAt.localeCompare(b.takenAt)).slice(-apart);
  return last.some((s) => s.task.textCodes.includes(text.code));
}

/** The task of the last sample that can be read: samples of one task can be compared. One line with every letter before any. */
export function usualTask(samples: readonly Sample[]): TaskKind {
  const read = samples.filter((sample) => !unread.has(sample.task.kind));
  return [...read].sort((a, b) => b.takenAt.localeCompare(a.takenAt))[0]?.task.kind ?? 'pangram';
}

/** Whether a new sample counts as baseline unless the therapist says otherwise: the first of its task, before any program. */
export function isFirst(kind: TaskKind, samples: readonly Sample[], programs: readonly Program[]): boolean {
  return !samples.some((s) => s.task.kind === kind) && !programs.some((p) => p.status === 'approved');
}

/** Tasks whose text is never typed in and never read: personal lines and signatures stay in the picture, a row of one letter is measured only. */
export const unread: ReadonlySet<TaskKind> = new Set<TaskKind>(['personal', 'signature', 'repeated-letter']);

/** Digits and amounts: each one is read exactly (confusions 1/7, 4/9, 0/6). Invented values. */
export const digitText = '1 7 4 9 0 6\n17.40 96.05 2.50\n61 740 914';
