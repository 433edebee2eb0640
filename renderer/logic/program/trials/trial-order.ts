/**
 * The lines of a trial: six blocks over two visits, each with every option once, in an order drawn from a seed; before
 * each visit's blocks one extra line that does not count. Texts are measured sentences of eight words.
 */
import type { TextLibrary } from '../../../../db/types/rule-table/text-frames.ts';
import type { TrialLine } from '../../../../db/types/occasions.ts';
import { measuredText } from '../../sample/measured-text.ts';
import { choiceFrom, seedOf } from '../../sample/seeded-choice.ts';
import { sentenceKey } from '../../sample/fill-frame.ts';
import type { TextBands } from '../../sample/text-bands.ts';

export const blocksATrial = 6;
const blocksAVisit = blocksATrial / 2;

/** Order of the options in each block. */
export function drawnBlocks(options: number, seed: number): number[][] {
  const choice = choiceFrom(seedOf(`blocks ${seed}`));
  return Array.from({ length: blocksATrial }, () => {
    const left = Array.from({ length: options }, (_, i) => i);
    const order: number[] = [];
    while (left.length > 0) order.push(...left.splice(choice.below(left.length), 1));
    return order;
  });
}

interface TrialTexts {
  library: TextLibrary;
  bands: TextBands;
  language: string;
  /** Keys of sentences that somebody may still remember. */
  used: ReadonlySet<string>;
}

/**
 * All lines of a new trial in order; null where no new sentences are left in this language.
 * @param options two or three
 */
export function trialLines(options: number, seed: number, texts: TrialTexts): TrialLine[] | null {
  const blocks = drawnBlocks(options, seed);
  const places: Pick<TrialLine, 'block' | 'option' | 'part'>[] = [];
  for (const part of [1, 2] as const) {
    const own = blocks.slice((part - 1) * blocksAVisit, part * blocksAVisit);
    places.push({ block: null, option: own[0]![0]!, part });
    own.forEach((order, i) => {
      for (const option of order) places.push({ block: (part - 1) * blocksAVisit + i, option, part });
    });
  }
  const sentences: { text: string; frame: string }[] = [];
  const used = new Set(texts.used);
  let last: string[] = [];
  for (let i = 0; sentences.length < places.length; i++) {
    const made = measuredText(texts.library, {
      language: texts.language,
      seed: seedOf(`trial ${seed} ${i}`),
      bands: texts.bands,
      used,
      lastFrames: new Set(last),
    });
    if (!made) return null;
    last = [...last.slice(-3), ...made.sentences.map((each) => each.frame)];
    for (const each of made.sentences) {
      used.add(sentenceKey(each.text));
      sentences.push(each);
    }
  }
  return places.map((place, i) => ({
    ...place,
    visitId: null,
    text: sentences[i]!.text,
    frame: sentences[i]!.frame,
    right: null,
    seconds: null,
    comfort: null,
  }));
}
