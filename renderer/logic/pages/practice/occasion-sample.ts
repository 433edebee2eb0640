/**
 * The writing sample of an occasion: what the client wants to write, with new words each time. Its words are the
 * client's own, so it is charted apart from the measured texts.
 */
import type { OccasionCode, WritingOccasion } from '../../../../db/types/occasions.ts';
import type { TextLibrary } from '../../../../db/types/rule-table/text-frames.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { Task } from '../../../../db/types/sample.ts';
import { sentenceKey } from '../../sample/fill-frame.ts';
import { choiceFrom, seedOf } from '../../sample/seeded-choice.ts';
import { drawnSum, drawnValue } from './drawn-values.ts';
import { practiceLines, practiceNames } from './practice-lines.ts';

export type OccasionTask = Pick<Task, 'kind' | 'text' | 'textCodes' | 'occasion'>;

/** Lines of own words that a sample has. */
const linesOf: Partial<Record<OccasionCode, number>> = {
  list: 6,
  board: 5,
  card: 2,
  diary: 2,
  recipe: 2,
  work: 2,
  other: 2,
};

/**
 * @param draw counts the draws: the same number gives the same words
 * @returns the task; text '' where it is not kept (signature, name and address)
 */
export function occasionTask(
  record: Pick<ClientRecord, 'client' | 'samples'>,
  occasion: Pick<WritingOccasion, 'code' | 'words' | 'topics'>,
  library: TextLibrary,
  draw: number,
): OccasionTask {
  const { code } = occasion;
  const head = { textCodes: [`occasion-${code}`], occasion: code };
  if (code === 'signature') return { ...head, kind: 'signature', text: '' };
  if (code === 'name-address') return { ...head, kind: 'personal', text: '' };
  const own = record.client.language.slice(0, 2);
  const language = library.frames.some((frame) => frame.language === own) ? own : 'en';
  const seed = seedOf(`${record.client.id} ${code} ${record.samples.length} ${draw}`);
  const choice = choiceFrom(seed);
  const value = (slot: string): string => drawnValue(slot, language, choice) ?? '';
  const person = (): string => {
    const mine = occasion.words.filter((word) => word.kind === 'person').map((word) => word.text.trim());
    const names = practiceNames(library, language);
    return choice.of(mine.length > 0 ? mine : names.length > 0 ? names : ['Ana']);
  };
  const drawn = ((): string[] | null => {
    if (code === 'check') {
      const { digits, words } = drawnSum(language, choice);
      return [value('date'), person(), digits, words];
    }
    if (code === 'message') return [person(), value('phone'), value('hour')];
    if (code === 'numbers')
      return [value('date'), value('hour'), value('digits-date'), value('hour'), value('date'), value('digits-date')];
    if (code === 'form')
      return [person(), value('digits-date'), value('phone'), value('five'), value('hour'), value('amount')];
    return null;
  })();
  const kind = code === 'numbers' ? 'digits' : 'goal-output';
  if (drawn) return { ...head, kind, text: drawn.join('\n') };
  const used = new Set(record.samples.flatMap(({ task }) => task.text.split('\n').map(sentenceKey)));
  const lines = practiceLines(library, {
    language,
    occasion: code,
    words: occasion.words,
    topics: occasion.topics,
    seed,
    count: linesOf[code] ?? 2,
    used,
    lastFrames: new Set(),
    phraseShare: 0,
    mostLetters: null,
  });
  return { ...head, kind, text: lines.map((line) => line.text).join('\n') };
}
