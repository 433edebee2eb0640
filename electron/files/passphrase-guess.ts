/**
 * How many guesses a new passphrase stands, by a kept estimator (zxcvbn-ts, offline: its word lists come with it) that
 * also knows the clinic's and the product's own words. Beside it db/weak-passphrase.ts refuses the plainest ones alone.
 */

/** 0 to 4 as the estimator counts: 4 is over 10^10 guesses, years against the key file's slow hash. */
const LOWEST_SCORE = 4;
/** More is not looked at: the estimator's time grows with the square. */
const LONGEST = 100;

const OWN_WORDS = ['fairhand', 'handwriting', 'writing', 'therapy', 'therapist', 'clinic', 'caseload', 'client'];

type Check = (passphrase: string, words: string[]) => { score: number };
let loading: Promise<Check> | null = null;

/** Loaded when it is first asked: the word lists take a second. */
async function load(): Promise<Check> {
  const [{ ZxcvbnFactory }, common, english] = await Promise.all([
    import('@zxcvbn-ts/core'),
    import('@zxcvbn-ts/language-common'),
    import('@zxcvbn-ts/language-en'),
  ]);
  const factory = new ZxcvbnFactory({
    dictionary: { ...common.dictionary, ...english.dictionary },
    graphs: common.adjacencyGraphs,
    maxLength: LONGEST,
  });
  return (passphrase, words) => factory.check(passphrase, words);
}

/** @param words of the clinic: its name, the therapist's initials */
export async function isGuessable(passphrase: string, words: readonly string[] = []): Promise<boolean> {
  loading ??= load();
  const check = await loading;
  const own = words.flatMap((each) => [each, ...each.split(/\s+/)]).filter((word) => word.length > 1);
  return check(passphrase.slice(0, LONGEST), [...OWN_WORDS, ...own]).score < LOWEST_SCORE;
}
