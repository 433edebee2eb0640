/** What pen motion showed, in a sentence a bout: seen, never a diagnosis. */
import { countedBouts } from '../../record/ink-values.ts';
import { inkSentence } from '../../sample/ink-sentence.ts';
import { englishTelling } from '../../texts/screens/telling.ts';
import type { PageInput } from '../sheet/page-facts.ts';
import { dayOf } from '../sheet/page-facts.ts';

type Bout = ReturnType<typeof countedBouts>[number];

function boutLine({ recording }: Bout): string {
  const said = inkSentence(recording.measured!.told, englishTelling);
  if (said === '') return '';
  const help = recording.cues ? ', with help' : '';
  const surface = englishTelling.told.pen.surfaces[recording.surface].toLowerCase();
  return `${englishTelling.told.pen.tasks[recording.task]}, ${recording.hand} hand${help} (pen, ${surface}): ${said}`;
}

/** The bouts of this visit, in the order of writing; repeats that show the same are one line. */
export function inkLinesToday(input: PageInput): string[] {
  const today = countedBouts(input.record).filter(({ recording }) => recording.visitId === input.visitId);
  const alike = Map.groupBy(today.map(boutLine), (line) => line);
  alike.delete('');
  return [...alike].map(([line, each]) => (each.length > 1 ? `${line} So in each of ${each.length} bouts.` : line));
}

/** The latest bout without help of each task, hand, surface and device, up to the visit. */
export function inkLinesLatest(input: PageInput): string[] {
  const latest = new Map<string, Bout>();
  for (const bout of countedBouts(input.record)) {
    const { task, hand, surface, device, cues } = bout.recording;
    if (cues === null && bout.day <= dayOf(input)) latest.set([task, hand, surface, device].join(' '), bout);
  }
  return [...latest.values()].map(boutLine).filter((line) => line !== '');
}
