/** Measures of a client's samples: from the measured page, from typed readings, from readers and ratings. */
import { latestOfPage } from '../../sample/measured/latest-measurements.ts';
import { mean, median, standardDeviation } from '../../../statistics/order-statistics.ts';
import { threshold } from '../../../../db/types/rule-table/threshold.ts';
import type { ClientRecord } from '../../../../db/types/record.ts';
import type { RulesInUse } from '../../../../db/types/rules-in-use.ts';
import type { PageResult, Sample } from '../../../../db/types/sample.ts';
import { familyOf, type Count } from '../../../change/index.ts';
import { isOfTask } from '../../record/measure-values.ts';
import type { Occasion } from '../../record/occasions.ts';

/** The measured page of a sample: its first page, latest measurement. */
export function measuredPage(record: ClientRecord, sampleId: string): PageResult | null {
  const pages = record.samplePages.filter((p) => p.sampleId === sampleId).sort((a, b) => a.order - b.order);
  return latestOfPage(record.pageMeasurements, pages[0]?.id)?.result ?? null;
}

/** Measures of a page that rules may rest on: loss of size down the page only where there are lines enough. */
export function pageMeasures({ lines, measures }: PageResult, rules: RulesInUse): PageResult['measures'] {
  const least = threshold(rules.thresholds, 'page-lines-least');
  return lines.length >= least ? measures : measures.filter((each) => each.code !== 'page-decrement');
}

/** What rows of one letter say: their shrinking, in order of time. */
export function rowsOfOneLetter(record: ClientRecord): Measure[] {
  return record.samples
    .filter((sample) => sample.task.kind === 'repeated-letter')
    .sort((a, b) => a.takenAt.localeCompare(b.takenAt))
    .flatMap((sample) => measuredPage(record, sample.id)?.measures ?? [])
    .filter(({ code }) => isOfTask('repeated-letter', code));
}

const lettersIn = (text: string): number => (text.match(/\p{L}/gu) ?? []).length;

type Measure = { code: string; value: number | null; unit: string };

/** What a sample says besides its page: legibility, speed, rise of fatigue and pain. */
export function sampleMeasures({ sample, legibility }: Occasion): Measure[] {
  const out: Measure[] = [];
  if (legibility) {
    const percent = legibility.accuracy * 100;
    out.push({ code: 'legibility', value: percent, unit: '%' });
    out.push({
      code: sample.task.kind === 'free' || sample.task.kind === 'goal-output' ? 'legibility-own' : 'legibility-copy',
      value: percent,
      unit: '%',
    });
    if (sample.seconds)
      out.push({ code: 'words-per-minute', value: (legibility.wordsRight * 60) / sample.seconds, unit: '1/min' });
  }
  if (sample.seconds && sample.task.text)
    out.push({ code: 'letters-per-minute', value: (lettersIn(sample.task.text) * 60) / sample.seconds, unit: '1/min' });
  const rise = (before: number | null, after: number | null): number | null =>
    before === null || after === null ? null : after - before;
  out.push({ code: 'fatigue-rise', value: rise(sample.fatigueBefore, sample.fatigueAfter), unit: 'points' });
  out.push({ code: 'pain-rise', value: rise(sample.painBefore, sample.painAfter), unit: 'points' });
  return out;
}

/** Fewest readings from which a spread is taken. */
const fewest = { gaps: 5, letters: 15 };

const spread = (values: readonly number[]): number => (standardDeviation(values)! / mean(values)!) * 100;

/**
 * Ruler readings typed in for a sample: the median of each that the vocabulary knows, and what follows from gaps and
 * letter heights. They count before the page's own.
 */
export function typedMeasures({ sample }: Occasion, rules: RulesInUse): Measure[] {
  const out: Measure[] = [];
  for (const [code, values] of Object.entries(sample.typed)) {
    const unit = rules.vocabulary.measures.find((each) => each.code === code)?.units[0];
    if (unit !== undefined && values.length > 0) out.push({ code, value: median(values)!, unit });
  }
  const heights = sample.typed['x-height'] ?? [];
  const words = sample.typed['word-gap-mm'] ?? [];
  const letters = sample.typed['letter-gap-mm'] ?? [];
  if (heights.length >= fewest.letters) out.push({ code: 'x-height-cv', value: spread(heights), unit: '%' });
  if (words.length >= fewest.gaps) out.push({ code: 'word-gap-cv', value: spread(words), unit: '%' });
  if (letters.length > 0 && heights.length > 0) {
    out.push({ code: 'letter-gap', value: median(letters)! / median(heights)!, unit: 'xh' });
  }
  if (words.length > 0 && letters.length > 0 && median(letters)! > 0) {
    out.push({ code: 'gap-ratio', value: median(words)! / median(letters)!, unit: '1' });
  }
  return out;
}

/** Latest of several measures with the same code wins. */
export function latestByCode(measures: readonly Measure[]): Measure[] {
  const byCode = new Map<string, Measure>();
  for (const m of measures) if (m.value !== null) byCode.set(m.code, { code: m.code, value: m.value, unit: m.unit });
  return [...byCode.values()];
}

/**
 * Words read right of words written in each line of a sample, mean of the readers who read the same lines as most of
 * them did; empty while nobody has read it line by line.
 */
export function lineLegibility({ legibility }: Occasion): Count[] {
  const read = (legibility?.readings ?? []).filter(({ lines }) => lines.length > 0);
  const most = Math.max(0, ...read.map(({ lines }) => lines.length));
  const whole = read.filter(({ lines }) => lines.length === most);
  return (whole[0]?.lines ?? []).map(({ words }, i) => ({
    right: Math.min(
      words,
      (words * whole.reduce((sum, { lines }) => sum + lines[i]!.right / lines[i]!.words, 0)) / whole.length,
    ),
    words,
  }));
}

/** The latest bouts that tell where words are lost: read line by line, as long as `most`, and written alike. */
export function boutsOf(occasions: readonly Occasion[], most: number, leastLines = 4): Count[][] {
  const alike = ({ sample: { task, conditions: c } }: Occasion): string =>
    JSON.stringify([familyOf(task.kind), c.hand, c.cue, c.doseState]);
  const read = occasions
    .map((occasion) => ({ like: alike(occasion), lines: lineLegibility(occasion) }))
    .filter(({ lines }) => lines.length >= leastLines);
  const last = read.at(-1);
  return read
    .filter(({ like }) => like === last?.like)
    .slice(-most)
    .map(({ lines }) => lines);
}

export const minutesALine = (sample: Sample | undefined, lines: number): number | undefined =>
  sample?.seconds && lines > 0 ? Math.min(30, Math.max(0.05, sample.seconds / 60 / lines)) : undefined;
