/** What to know about a written page or a drawn sheet before its numbers are read, by the engine's codes. */
export const warningsEn = {
  plain: {
    blank: 'No writing was found on this page. Check that the right side of the sheet was scanned.',
    'not-writing':
      'The picture is full of small marks, so no writing could be told apart. Scan the page again, without patterns or a photo behind it.',
    'text-too-small': 'The writing is only a few pixels high, too small to measure. Scan again at 300 dpi or more.',
    'no-scale':
      'The scale of this page is not known, so nothing was measured. Give the dpi, the printed bar, or two points with a known distance.',
    'all-black': 'The picture is dark all over. Scan or photograph the page again.',
    'too-small': 'The picture has too few pixels to hold a page. Check the file.',
    'edge-cut':
      'An edge of the sheet lies outside the photo, so its angle and scale cannot be trusted. Take the photo again with all four edges and some table in it.',
    'paper-unknown':
      'The sheet fits no known paper size; the scale given was used. Check one known distance on the page.',
    'scale-contradicts-paper':
      'The scale given differs by more than 1 % from the size of the sheet in the photo; the sheet was used. Check the scale.',
    'scale-contradicts-marks':
      'The scale given differs by more than 1 % from the corner marks on the sheet. Check that it was printed at actual size and scanned at the dpi given.',
    'axes-differ':
      'The squares or corner marks of the paper come out wider than high, or higher than wide, by more than 1 %. Check how the page was scanned or photographed.',
    'writing-cut':
      'Writing runs off the side of the picture, so words there are not whole. Scan the page with its margins.',
    'few-words': 'There are fewer than five words on this page: too few to judge size or spacing by.',
    'text-under-12-px':
      'The small letters are under 12 pixels high, so lengths are rough. Scan again at 300 dpi or more.',
    blur: 'The picture is not sharp, so lengths are rough. Scan it again, or hold the camera still.',
    sideways: 'The writing runs up or down the page: the picture lies on its side. Turn it and measure again.',
    'upside-down': 'The page seems to lie upside down. Turn it and measure again.',
    mirrored: 'The page seems to be mirrored. Flip it and measure again.',
    'text-unfit':
      'The text given does not fit the words on this page, so it was not used. Check that it is the text that was written.',
    'few-letters':
      'Fewer than fifteen small letters could be read: too few for their height and evenness. Take a longer sample.',
    'other-script':
      'The text is in another script than the Latin one. Lines, size and spacing can be measured; which letters are small, tall or closed is not known.',
    'unusual-script':
      'Few letters rise above the small ones and many hang below the line, as in no Latin text. If the page lies upside down, turn it. If it is another script, use lines and spacing only.',
    'no-spiral':
      'No spiral was found in this picture. Scan the sheet whole and straight, with nothing else drawn on it.',
    'few-turns': 'The spiral has too few turns to judge its wobble by: two or more are needed.',
    'spiral-broken': 'Parts of the line are missing or crossed, so the numbers are rough.',
  },
  printedAll:
    'All lines look printed, not written: the letters are all of one height and stand on a straight line. Printed words say nothing about a hand. Leave them out, or cover the print and scan again.',
  printedOne: (line: string) =>
    `Line ${line} looks printed, not written: the letters are all of one height and stand on a straight line. Printed words say nothing about a hand. Leave them out, or cover the print and scan again.`,
  printedSome: (lines: string) =>
    `Lines ${lines} look printed, not written: the letters are all of one height and stand on a straight line. Printed words say nothing about a hand. Leave them out, or cover the print and scan again.`,
  hands: (line: string) =>
    `Size, slant or stroke change for good at line ${line}: two people, two pens or two ways of writing, perhaps. Measures of the whole page mix them. Measure one at a time.`,
  faint: (percent: string) =>
    `The writing is faint (contrast ${percent} %). The picture was darkened before it was read, but fine strokes may be lost and the letters come out smaller. Scan it darker, or have it written with a softer pencil or a pen.`,
  leftOut: (words: string) => `Not found on the page, so perhaps left out: ${words}.`,
  foreign: (n: number) =>
    `${n === 1 ? 'One word on the page is' : `${n} words on the page are`} not in the text: crossed out or added, perhaps.`,
  lookAtWords: 'Look at the words and correct what is wrong.',
  doubtful: (gaps: number) =>
    `Gaps between letters and between words are much alike here: about ${gaps} ${gaps === 1 ? 'gap' : 'gaps'} may have been taken for the other kind. Look at the marked words, join or split them, or give the text.`,
  rulingUnusual: (mm: string) =>
    `By this scale the printed lines are ${mm} mm apart, which is no usual paper. Check the scale.`,
  rulingDiffers: (mm: string, known: string) =>
    `By this scale the printed lines are ${mm} mm apart, but this paper has ${known} mm. Check the scale.`,
  sizeUnlikely: (mm: string) =>
    `By this scale the small letters are ${mm} mm high, which is no usual handwriting. Check the scale before you use any number of this page.`,
  spiralAlone:
    'The four corner marks of the printed sheet were not seen, so the picture was taken for one spiral on plain paper. Scan the whole sheet to have both.',
  spiralNoScale:
    'Neither the corner marks of the printed sheet nor a scale was found, so nothing was measured. Scan the whole sheet, with all four corners.',
  spiralPale: 'The pen is hardly darker than the printed line, so the line may be read in parts only. Use a dark pen.',
};
