/** Vetoes that guard only what the therapist adds, and why no draft runs into them. */
export const byHandOnly: Readonly<Record<string, string>> = {
  V04: 'R10 and R29a give putty for a strength of 1 or 2 only',
  V19: 'R22 gives the weight trial for a known type of tremor only',
  V27: 'R30 gives closed eyes for touch of 2 only',
  V36: 'an unsafe seat is tier 0, where nothing is practiced',
  V39: 'R38 gives neck turns for a mild strain only',
  V54: 'V12 and V53 bar what comes with it in a draft: no stretch, no lean',
  V59: 'thumb rules start at opposition 1',
  V60: 'rules of moves in the hand start at 1',
  V68: 'tremor drills ask for words that are not read',
  V63: 'R30a starts at touch 1',
  V64: 'R20 starts at tremor 1',
  V65: 'R29a starts at position sense 1',
};
