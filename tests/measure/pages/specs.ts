import type { PageSpec, Picture, Ruling, Writing } from './types.ts';

const WRITING: Writing = {
  font: 'patrick-hand',
  xHeightMm: 2.83,
  penMm: 0.47,
  slantDeg: 0,
  slantSdDeg: 0,
  lines: 12,
  wordsPerLine: 7,
  wordGapXh: 1.37,
  wordGapSdXh: 0.11,
  letterGapXh: null,
  lnPerWord: 0,
  percentPerLine: 0,
  lineAngleDeg: 0,
  lineAngleStepDeg: 0,
  waveMm: 0,
  waveLengthMm: 83,
  openShare: 0,
  openGapXh: 0.24,
  punctuation: false,
  leftMm: 31.3,
  topMm: 38.7,
  pitchMm: 14.1,
  aboveRulingMm: 0.4,
};
const SCAN: Picture = {
  dpi: 300,
  rotationDeg: 0,
  tilt: null,
  uneven: 0.06,
  shadow: 0,
  blurPx: 0.7,
  noise: 3,
  jpeg: 85,
};

function page(
  name: string,
  seed: number,
  writing: Partial<Writing>,
  picture: Partial<Picture> = {},
  rest: Partial<Pick<PageSpec, 'paper' | 'ruling' | 'ink'>> = {},
): PageSpec {
  return {
    name,
    seed,
    paper: 'A4',
    ruling: { kind: 'plain' },
    ink: 'blue',
    ...rest,
    writing: { ...WRITING, ...writing },
    picture: { ...SCAN, ...picture },
  };
}

const RULED: Ruling = { kind: 'ruled', pitchMm: 8.7, marginMm: 25.4 };
/** On ruled paper every second line is written on. */
const ON_RULES: Partial<Writing> = { pitchMm: 17.4, lines: 12, topMm: 40.1 };
const photo = (pitchDeg: number, yawDeg: number): Picture['tilt'] => ({
  pitchDeg,
  yawDeg,
  distanceMm: 430,
  marginMm: 23,
});

/** Pages of known geometry; every value lies off the grids that an algorithm may step through. */
export const SPECS: readonly PageSpec[] = [
  // One hand each, plain paper, straight.
  page('plain-patrick', 101, {}),
  page('plain-kalam', 102, { font: 'kalam', xHeightMm: 3.07 }),
  page('plain-indie', 103, { font: 'indie-flower', xHeightMm: 3.31 }),
  page('plain-schoolbell', 104, { font: 'schoolbell', xHeightMm: 3.03 }),
  page('plain-readability', 105, { font: 'EMSReadability', xHeightMm: 2.91 }),
  page('plain-nixish', 106, { font: 'EMSNixish', xHeightMm: 2.57, penMm: 0.53 }),
  page('plain-hershey', 107, { font: 'HersheySans1', xHeightMm: 3.19, penMm: 0.61 }),
  // Turned on the glass.
  page('turned-left', 111, { xHeightMm: 2.71 }, { rotationDeg: 1.137 }),
  page('turned-right', 112, { font: 'kalam', xHeightMm: 2.93 }, { rotationDeg: -1.873, jpeg: 74 }),
  page('turned-far', 113, { font: 'EMSReadability' }, { rotationDeg: 2.391, blurPx: 1.1 }),
  page('turned-schoolbell', 114, { font: 'schoolbell' }, { rotationDeg: -0.417, shadow: 0.23 }),
  page('turned-indie', 115, { font: 'indie-flower', xHeightMm: 3.47 }, { rotationDeg: 0.733, jpeg: 71 }),
  // Lines that rise or fall on a straight sheet.
  page('rising', 121, { lineAngleDeg: 1.283 }),
  page('falling', 122, { font: 'kalam', lineAngleDeg: -2.137, topMm: 33.3 }),
  page('fanning', 123, { font: 'EMSNixish', lineAngleDeg: -0.79, lineAngleStepDeg: 0.137 }),
  // Waves.
  page('wave-long', 131, { font: 'EMSReadability', waveMm: 0.83, waveLengthMm: 97.3 }),
  page('wave-short', 132, { font: 'patrick-hand', waveMm: 0.57, waveLengthMm: 61.7 }),
  page('wave-turned', 133, { font: 'kalam', waveMm: 1.07, waveLengthMm: 78.9 }, { rotationDeg: 0.611 }),
  page(
    'wave-ruled',
    134,
    { ...ON_RULES, font: 'EMSReadability', waveMm: 0.71, waveLengthMm: 88.1, aboveRulingMm: 0.9 },
    {},
    { ruling: RULED },
  ),
  // Shrinking along the line and down the page.
  page('shrink-line', 141, { lnPerWord: -0.0437, xHeightMm: 3.61 }),
  page('shrink-line-mild', 142, { font: 'kalam', lnPerWord: -0.0213, xHeightMm: 3.23 }),
  page('shrink-line-strong', 143, { font: 'EMSReadability', lnPerWord: -0.0729, xHeightMm: 4.13, wordsPerLine: 8 }),
  page('shrink-page', 144, { percentPerLine: -2.73, xHeightMm: 3.83 }),
  page(
    'shrink-both',
    145,
    { font: 'kalam', lnPerWord: -0.0311, percentPerLine: -1.67, xHeightMm: 3.97 },
    { rotationDeg: -0.877 },
  ),
  page('growing-line', 146, { font: 'EMSNixish', lnPerWord: 0.0273, xHeightMm: 2.37 }),
  page('shrink-ruled', 147, { ...ON_RULES, lnPerWord: -0.0389, xHeightMm: 3.43 }, {}, { ruling: RULED }),
  // Small and large writing.
  page('small', 151, { font: 'patrick-hand', xHeightMm: 1.43, penMm: 0.31, wordsPerLine: 11, pitchMm: 8.3, lines: 18 }),
  page('tiny-kalam', 152, { font: 'kalam', xHeightMm: 1.27, wordsPerLine: 12, pitchMm: 7.9, lines: 20 }),
  page('large', 153, {
    font: 'EMSReadability',
    xHeightMm: 5.77,
    penMm: 0.83,
    wordsPerLine: 4,
    pitchMm: 23.7,
    lines: 8,
  }),
  page(
    'huge-felt',
    154,
    { font: 'HersheySans1', xHeightMm: 7.31, penMm: 1.27, wordsPerLine: 3, pitchMm: 27.1, lines: 7 },
    {},
    { ink: 'black' },
  ),
  // Gaps.
  page('tight-words', 161, { wordGapXh: 0.87, wordGapSdXh: 0.04, letterGapXh: 0.137 }),
  page('wide-words', 162, { font: 'kalam', wordGapXh: 2.43, wordGapSdXh: 0.27, wordsPerLine: 6 }),
  page('wide-letters', 163, { font: 'EMSReadability', wordGapXh: 2.11, letterGapXh: 0.413, wordsPerLine: 5 }),
  page('uneven-gaps', 164, {
    font: 'EMSNixish',
    wordGapXh: 1.71,
    wordGapSdXh: 0.37,
    letterGapXh: 0.217,
    wordsPerLine: 5,
  }),
  // Loops left open.
  page('open-some', 171, { font: 'EMSReadability', xHeightMm: 3.37, openShare: 0.31 }),
  page('open-many', 172, { font: 'patrick-hand', xHeightMm: 3.29, openShare: 0.73 }),
  page('open-kalam', 173, { font: 'kalam', xHeightMm: 3.53, openShare: 0.47, openGapXh: 0.29 }, { rotationDeg: 0.373 }),
  // Slant.
  page('slant-right', 181, { font: 'EMSReadability', slantDeg: 17.3 }),
  page('slant-left', 182, { font: 'EMSNixish', slantDeg: -11.7 }),
  page('slant-mixed', 183, { font: 'HersheySans1', slantDeg: 6.9, slantSdDeg: 4.7 }),
  // Rulings.
  page('ruled-margin', 201, { ...ON_RULES }, { rotationDeg: 0.487 }, { ruling: RULED }),
  page('ruled-kalam', 202, { ...ON_RULES, font: 'kalam' }, { rotationDeg: -1.313, jpeg: 76 }, { ruling: RULED }),
  page(
    'ruled-every',
    203,
    { font: 'EMSReadability', xHeightMm: 2.23, pitchMm: 8.7, lines: 22, topMm: 40.1, penMm: 0.41 },
    {},
    { ruling: RULED },
  ),
  page('ruled-on-line', 204, { ...ON_RULES, aboveRulingMm: 0, font: 'EMSNixish' }, {}, { ruling: RULED, ink: 'black' }),
  page(
    'ruled-narrow',
    205,
    { font: 'patrick-hand', xHeightMm: 2.47, pitchMm: 14.2, topMm: 40.1 },
    { rotationDeg: 1.713 },
    { ruling: { kind: 'ruled', pitchMm: 7.1, marginMm: null } },
  ),
  page(
    'ruled-letter',
    206,
    { ...ON_RULES, font: 'schoolbell' },
    { rotationDeg: -0.293 },
    { ruling: RULED, paper: 'Letter' },
  ),
  page('ruled-indie', 207, { ...ON_RULES, font: 'indie-flower', xHeightMm: 3.17 }, { shadow: 0.17 }, { ruling: RULED }),
  page(
    'midline',
    208,
    { xHeightMm: 4.05, pitchMm: 16.9, lines: 10, wordsPerLine: 5, topMm: 41.3, aboveRulingMm: 0.2 },
    {},
    { ruling: { kind: 'midline', bodyMm: 4.35, pitchMm: 16.9 } },
  ),
  page(
    'midline-turned',
    209,
    {
      font: 'EMSReadability',
      xHeightMm: 4.31,
      pitchMm: 17.3,
      lines: 10,
      wordsPerLine: 4,
      topMm: 41.3,
      aboveRulingMm: 0.3,
    },
    { rotationDeg: 0.929 },
    { ruling: { kind: 'midline', bodyMm: 4.5, pitchMm: 17.3 } },
  ),
  page('squares-5', 210, { pitchMm: 15, lines: 11, topMm: 41.3 }, {}, { ruling: { kind: 'squares', sideMm: 5 } }),
  page(
    'squares-7',
    211,
    { font: 'kalam', pitchMm: 14, lines: 12, topMm: 41.3 },
    { rotationDeg: -0.683 },
    { ruling: { kind: 'squares', sideMm: 7 } },
  ),
  page(
    'squares-10',
    212,
    { font: 'EMSReadability', xHeightMm: 4.43, pitchMm: 20, lines: 9, wordsPerLine: 5, topMm: 41.3 },
    {},
    { ruling: { kind: 'squares', sideMm: 10 } },
  ),
  // Fairhand's own sheets: scale and perspective from their corner marks.
  page(
    'own-sheet-turned',
    213,
    { xHeightMm: 4.11, pitchMm: 17.3, lines: 11, wordsPerLine: 5, topMm: 45.7, aboveRulingMm: 0.2 },
    { rotationDeg: 0.717 },
    { ruling: { kind: 'own-sheet', bodyMm: 4.35, pitchMm: 17.3 } },
  ),
  page(
    'own-sheet-photo',
    214,
    { font: 'kalam', xHeightMm: 3.97, pitchMm: 17.3, lines: 11, wordsPerLine: 5, topMm: 45.7, aboveRulingMm: 0.2 },
    { tilt: photo(8.7, -5.1), rotationDeg: 1.37, uneven: 0.19 },
    { ruling: { kind: 'own-sheet', bodyMm: 4.35, pitchMm: 17.3 } },
  ),
  // The same page at four resolutions.
  page('dpi-150', 221, { font: 'kalam', xHeightMm: 3.37 }, { dpi: 150, blurPx: 0.4 }),
  page('dpi-200', 221, { font: 'kalam', xHeightMm: 3.37 }, { dpi: 200, blurPx: 0.5 }),
  page('dpi-300', 221, { font: 'kalam', xHeightMm: 3.37 }, { dpi: 300, blurPx: 0.7 }),
  page('dpi-600', 221, { font: 'kalam', xHeightMm: 3.37 }, { dpi: 600, blurPx: 1.3 }),
  // Poor pictures.
  page('pencil', 231, { font: 'EMSReadability', penMm: 0.57 }, { noise: 4 }, { ink: 'pencil' }),
  page('pencil-kalam', 232, { font: 'kalam' }, { noise: 5, shadow: 0.21, rotationDeg: 0.557 }, { ink: 'pencil' }),
  page('shadowed', 233, { font: 'patrick-hand' }, { shadow: 0.43, uneven: 0.27 }),
  page('noisy', 234, { font: 'kalam' }, { noise: 9, jpeg: 70 }),
  page('soft', 235, { font: 'EMSNixish', penMm: 0.59 }, { blurPx: 1.9 }),
  page('squeezed', 236, { font: 'patrick-hand' }, { jpeg: 52 }),
  page('punctuated', 237, { punctuation: true, font: 'kalam' }),
  page('punctuated-ruled', 238, { ...ON_RULES, punctuation: true }, { rotationDeg: 0.213 }, { ruling: RULED }),
  // Photos: a sheet on a dark table from a tilted camera.
  page('photo-mild', 241, {}, { tilt: photo(5.3, -3.7), rotationDeg: 0.83, uneven: 0.19, jpeg: 83 }),
  page(
    'photo-tilted',
    242,
    { font: 'kalam', xHeightMm: 3.23 },
    { tilt: photo(11.9, 4.1), rotationDeg: -1.61, uneven: 0.23, jpeg: 81 },
  ),
  page(
    'photo-ruled',
    243,
    { ...ON_RULES, font: 'EMSReadability' },
    { tilt: photo(-7.7, 6.3), rotationDeg: 1.27, shadow: 0.19 },
    { ruling: RULED },
  ),
  page(
    'photo-letter',
    244,
    { font: 'schoolbell' },
    { tilt: photo(8.3, -8.9), rotationDeg: 2.19, uneven: 0.21 },
    { paper: 'Letter' },
  ),
  page(
    'photo-squares',
    245,
    { pitchMm: 15, lines: 11, topMm: 41.3 },
    { tilt: photo(6.1, 5.9), rotationDeg: -0.97 },
    { ruling: { kind: 'squares', sideMm: 5 } },
  ),
  page(
    'photo-shrink',
    246,
    { font: 'kalam', xHeightMm: 3.67, lnPerWord: -0.0347 },
    { tilt: photo(9.1, -2.3), rotationDeg: 0.47, uneven: 0.17 },
  ),
  // Joined writing.
  page('joined-bad', 251, { font: 'bad-script', xHeightMm: 2.97, wordGapXh: 1.63 }),
  page('joined-dancing', 252, { font: 'dancing-script', xHeightMm: 2.61, wordGapXh: 1.47 }),
  page('joined-cedarville', 253, { font: 'cedarville-cursive', xHeightMm: 2.79, wordGapXh: 1.51 }),
  page('joined-apple', 254, { font: 'homemade-apple', xHeightMm: 2.47, wordGapXh: 1.57, wordsPerLine: 5 }),
  page('joined-felix', 255, { font: 'EMSFelix', xHeightMm: 3.11, wordGapXh: 1.43 }),
  page('joined-hershey', 256, {
    font: 'HersheyScript1',
    xHeightMm: 2.69,
    wordGapXh: 1.67,
    penMm: 0.43,
    wordsPerLine: 5,
  }),
  page(
    'joined-ruled',
    257,
    { ...ON_RULES, font: 'bad-script', wordGapXh: 1.59 },
    { rotationDeg: 0.381 },
    { ruling: RULED },
  ),
  page('joined-turned', 258, { font: 'cedarville-cursive', xHeightMm: 3.13, wordGapXh: 1.61 }, { rotationDeg: -1.109 }),
];
