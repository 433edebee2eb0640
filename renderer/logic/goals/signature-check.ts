/**
 * A signature succeeds when a second person tells pairs right: six pairs, three of this client's from two days and three
 * with a drawn look-alike, at least five right; and when it was accepted in use. It is never read.
 */
import type { GoalMeasure } from '../../../db/types/goal.ts';
import type { SignatureCheck } from '../../../db/types/occasions.ts';
import { choiceFrom, seedOf } from '../sample/seeded-choice.ts';
import type { Told } from '../texts/screens/en/screens-en.ts';

type Pairs = SignatureCheck['pairs'];

const pairsOfAKind = 3;
/** Pairs shown, and how many must be told right. */
const pairsShown = 2 * pairsOfAKind;
const rightNeeded = 5;

/** What counts as reached where no reader counts words, in words that fit into “so that …”. */
export const successOf = (measure: Exclude<GoalMeasure, 'words'>, words: Told['goals']): string =>
  measure === 'told-apart' ? words.tellsApart(rightNeeded, pairsShown) : words.successBy[measure];

/** Six pairs in a drawn order, nothing said yet. */
export function newPairs(seed: string): Pairs {
  const left: Pairs[number]['shown'][] = [
    ...Array.from({ length: pairsOfAKind }, () => 'same' as const),
    ...Array.from({ length: pairsOfAKind }, () => 'drawn' as const),
  ];
  const choice = choiceFrom(seedOf(seed));
  const pairs: Pairs = [];
  while (left.length > 0) pairs.push({ shown: left.splice(choice.below(left.length), 1)[0]!, said: null });
  return pairs;
}

export interface SignatureVerdict {
  right: number;
  said: number;
  of: number;
  /** All pairs are judged and enough of them right. */
  told: boolean;
  sentence: string;
}

export function signatureVerdict(
  check: Pick<SignatureCheck, 'pairs' | 'accepted'>,
  words: Told['goals'],
): SignatureVerdict {
  const of = check.pairs.length;
  const said = check.pairs.filter((pair) => pair.said !== null).length;
  const right = check.pairs.filter((pair) => pair.said === pair.shown).length;
  const told = of === pairsShown && said === of && right >= rightNeeded;
  const accepted = check.accepted ? words.acceptedIn(check.accepted.where || words.placeNotNoted) : '';
  const sentence =
    said < of
      ? words.pairsJudged(said, of)
      : told
        ? words.toldApart(right, of)
        : words.notToldApart(right, of, rightNeeded);
  return { right, said, of, told, sentence: `${sentence}${accepted}` };
}
