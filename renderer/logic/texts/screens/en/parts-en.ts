import type { SourceTag } from '../../../../../db/types/common.ts';
import type { Shown } from '../shown.ts';

/** Parts that every screen uses. */
export const partsEn = {
  close: 'Close',
  thisFieldHoldsCharacters: (maxlength: Shown, over: Shown) =>
    `This field holds ${maxlength} characters. The last ${over} did not go in; they are still in the text you copied. Put them into another field.`,
  boxToFitBy: (width: Shown, height: Shown) => `Box to fit, ${width} by ${height} pixels`,
  acrossPx: 'Across, px',
  downPx: 'Down, px',
  how: 'how',
  newPassphrase: 'New passphrase',
  atLeast12Characters: '12 characters or more; four unrelated words.',
  again: (label: Shown) => `${label} again`,
  typingErrorWouldLock: 'A typing error would lock you out.',
  strength: (words: Shown) => `Strength: ${words}`,
  thisIsNotNumber: 'This is not a number. It was not saved; type digits only.',
  thisMustLieBetween: (min: Shown, max: Shown, value: Shown) =>
    `This must lie between ${min} and ${max}${value}. It was not saved; check it.`,
  tooShortAddMore: 'too short; add more words',
  fairLongerIsBetter: 'fair; longer is better',
  veryGood: 'very good',
  twoPassphrasesDifferNothing: 'The two passphrases differ. Nothing was changed. Type them again.',
  good: 'good',
  /** Where a value comes from. */
  sources: {
    published: 'published',
    'published-from-memory': 'published, cited from memory',
    'common-practice': 'common practice, no source',
    'from-memory': 'from memory',
    computed: 'computed here',
    clinic: 'this clinic',
  } satisfies Record<SourceTag, string>,
};
