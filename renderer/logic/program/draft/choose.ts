/** Which paper and which text: by tier, the client's own letter height, interests and language. */
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import type { Content, Paper, RuleTable } from '../../../../db/types/rules.ts';
import type { Facts } from '../facts/fact-types.ts';
import { isLow } from '../facts/program-facts.ts';
import { sizeLimits } from './tier.ts';

/**
 * Smallest rows of the tier's paper that the client's middle letters fit; the size aimed at counts where writing has
 * become small. The largest rows where no height is known, aim is unsteady or small print is hard to read.
 */
export function choosePaper(input: ProgramInput, facts: Facts, rules: RuleTable): Paper | null {
  // Paper has a ladder of its own: what the client writes on now stays until a step changes it.
  const kept = rules.papers.find((each) => each.code === input.current?.paper);
  if (kept && kept.tier.some((tier) => Math.abs(tier - facts.tier) <= 1)) return kept;
  // Letters that should touch two lines need two lines, also before the tier of copied lines.
  const ofTier = rules.papers.find((each) => each.tier.includes(facts.tier))?.family;
  // One letter a square and a middle line for small letters are for this script only.
  const ofHand = sizeLimits(facts) && facts.tier <= 3 ? 'dashed-midline' : ofTier;
  const family = facts.cautions.has('other-script') ? 'ruled' : ofHand;
  const papers = rules.papers.filter((each) => each.family === family).sort((a, b) => a.rowMm - b.rowMm);
  const largest = papers.at(-1) ?? null;
  const heights = ['x-height', 'x-height-before', 'x-height-goal'].map((code) => facts.measures.get(code));
  const aims = isLow(facts, 'small-writing', 2) ? heights : heights.slice(0, 1);
  const height = Math.max(...aims.map((each) => each ?? 0));
  if (height === 0 || isLow(facts, 'tremor', 1) || isLow(facts, 'acuity', 2)) return largest;
  return papers.find((each) => each.xHeightToMm === null || each.xHeightToMm >= height) ?? largest;
}

const kindsOf = (facts: Facts, mayDictate: boolean): Content['kind'][] => {
  if (facts.diagnoses.has('aphasia') || isLow(facts, 'language', 1)) return ['pictures'];
  if (facts.tier <= 2) return ['words'];
  if (facts.tier === 3) return ['copy'];
  return isLow(facts, 'spontaneous-worse', 2) && mayDictate ? ['dictation', 'prompt'] : ['prompt'];
};

/** A text of the tier in the client's language, of the client's interests where one fits; English where none exists. */
export function chooseContent(
  input: ProgramInput,
  facts: Facts,
  rules: RuleTable,
  mayDictate: boolean,
): Content | null {
  const kinds = kindsOf(facts, mayDictate);
  const fits = rules.contents.filter((each) => each.tier.includes(facts.tier) && kinds.includes(each.kind));
  const language = (input.language ?? 'en').slice(0, 2);
  const inLanguage = fits.filter((each) => each.language === language);
  const texts = inLanguage.length > 0 ? inLanguage : fits.filter((each) => each.language === 'en');
  const kept = texts.find((each) => each.code === input.current?.content);
  if (kept) return kept;
  const interests = new Set(input.interests ?? []);
  const ofKind = texts.filter((each) => each.kind === kinds[0]);
  const list = ofKind.length > 0 ? ofKind : texts;
  return list.find((each) => each.interests.some((one) => interests.has(one))) ?? list[0] ?? null;
}
