import type { PageWarning } from '../types.ts';

const warning = (code: string, message: string): PageWarning => ({ code, message });

/** What a page may be questioned for: what was seen, what it means, what to do. */
export const WARNINGS = {
  blank: warning('blank', 'No writing was found on this page. Check that the right side of the sheet was scanned.'),
  busy: warning(
    'not-writing',
    'The picture is full of small marks, so no writing could be told apart. Scan the page again, without patterns or a photo behind it.',
  ),
  unreadable: warning(
    'text-too-small',
    'The writing is only a few pixels high, too small to measure. Scan again at 300 dpi or more.',
  ),
  noScale: warning(
    'no-scale',
    'The scale of this page is not known, so nothing was measured. Give the dpi, the printed bar, or two points with a known distance.',
  ),
  allBlack: warning('all-black', 'The picture is dark all over. Scan or photograph the page again.'),
  tooSmall: warning('too-small', 'The picture has too few pixels to hold a page. Check the file.'),
  edgeCut: warning(
    'edge-cut',
    'An edge of the sheet lies outside the photo, so its angle and scale cannot be trusted. Take the photo again with all four edges and some table in it.',
  ),
  unknownPaper: warning(
    'paper-unknown',
    'The sheet fits no known paper size; the scale given was used. Check one known distance on the page.',
  ),
  scalePaper: warning(
    'scale-contradicts-paper',
    'The scale given differs by more than 1 % from the size of the sheet in the photo; the sheet was used. Check the scale.',
  ),
  scaleMarks: warning(
    'scale-contradicts-marks',
    'The scale given differs by more than 1 % from the corner marks on the sheet. Check that it was printed at actual size and scanned at the dpi given.',
  ),
  axesDiffer: warning(
    'axes-differ',
    'The squares or corner marks of the paper come out wider than high, or higher than wide, by more than 1 %. Check how the page was scanned or photographed.',
  ),
  writingCut: warning(
    'writing-cut',
    'Writing runs off the side of the picture, so words there are not whole. Scan the page with its margins.',
  ),
  fewWords: warning('few-words', 'There are fewer than five words on this page: too few to judge size or spacing by.'),
  smallText: warning(
    'text-under-12-px',
    'The small letters are under 12 pixels high, so lengths are rough. Scan again at 300 dpi or more.',
  ),
  blur: warning('blur', 'The picture is not sharp, so lengths are rough. Scan it again, or hold the camera still.'),
  sideways: warning(
    'sideways',
    'The writing runs up or down the page: the picture lies on its side. Turn it and measure again.',
  ),
  upsideDown: warning('upside-down', 'The page seems to lie upside down. Turn it and measure again.'),
  mirrored: warning('mirrored', 'The page seems to be mirrored. Flip it and measure again.'),
  textUnfit: warning(
    'text-unfit',
    'The text given does not fit the words on this page, so it was not used. Check that it is the text that was written.',
  ),
  fewLetters: warning(
    'few-letters',
    'Fewer than fifteen small letters could be read: too few for their height and evenness. Take a longer sample.',
  ),
  otherScript: warning(
    'other-script',
    'The text is in another script than the Latin one. Lines, size and spacing can be measured; which letters are small, tall or closed is not known.',
  ),
  unusualScript: warning(
    'unusual-script',
    'Few letters rise above the small ones and many hang below the line, as in no Latin text. If the page lies upside down, turn it. If it is another script, use lines and spacing only.',
  ),
} as const;

/** Lines that look printed. @param printed their places from 0 @param all lines on the page */
export function printedWarning(printed: readonly number[], all: number): PageWarning {
  const which =
    printed.length === all
      ? 'All lines look'
      : printed.length === 1
        ? `Line ${printed[0]! + 1} looks`
        : `Lines ${listed(printed.map((i) => i + 1))} look`;
  return warning(
    'printed-text',
    `${which} printed, not written: the letters are all of one height and stand on a straight line. Printed words say nothing about a hand. Leave them out, or cover the print and scan again.`,
  );
}

/** 1, 2, 3, 7 -> "1 to 3 and 7". */
function listed(numbers: readonly number[]): string {
  const spans: [number, number][] = [];
  for (const n of numbers) {
    const last = spans.at(-1);
    if (last && last[1] === n - 1) last[1] = n;
    else spans.push([n, n]);
  }
  const words = spans.map(([a, b]) => (a === b ? String(a) : b === a + 1 ? `${a}, ${b}` : `${a} to ${b}`));
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** @param from first line (from 0) of what seems another hand */
export function handsWarning(from: number): PageWarning {
  return warning(
    'several-hands',
    `Size, slant or stroke change for good at line ${from + 1}: two people, two pens or two ways of writing, perhaps. Measures of the whole page mix them. Measure one at a time.`,
  );
}

/** @param contrast of the writing to its paper, % */
export function faintWarning(contrast: number): PageWarning {
  return warning(
    'faint',
    `The writing is faint (contrast ${Math.round(contrast)} %). The picture was darkened before it was read, but fine strokes may be lost and the letters come out smaller. Scan it darker, or have it written with a softer pencil or a pen.`,
  );
}

/** What differs between the text and the page: said, not put right. */
export function slipsWarning(leftOut: readonly string[], foreign: number): PageWarning {
  const shown = leftOut.slice(0, 6).join(', ') + (leftOut.length > 6 ? ' …' : '');
  const missing = leftOut.length === 0 ? '' : `Not found on the page, so perhaps left out: ${shown}. `;
  const more =
    foreign === 0
      ? ''
      : `${foreign === 1 ? 'One word on the page is' : `${foreign} words on the page are`} not in the text: crossed out or added, perhaps. `;
  return warning('text-slips', `${missing}${more}Look at the words and correct what is wrong.`);
}

/** Some gaps may be those of letters or of words. @param wrong how many are expected to be taken for the other kind */
export function doubtWarning(wrong: number): PageWarning {
  const about = Math.max(1, Math.round(wrong));
  return warning(
    'words-doubtful',
    `Gaps between letters and between words are much alike here: about ${about} ${about === 1 ? 'gap' : 'gaps'} may have been taken for the other kind. Look at the marked words, join or split them, or give the text.`,
  );
}

/** The distance of the printed lines, by the scale given, against what the paper should have (null: no usual ruling). */
export function rulingWarning(foundMm: number, knownMm: number | null): PageWarning {
  const found = foundMm.toFixed(2);
  return warning(
    'scale-contradicts-ruling',
    knownMm === null
      ? `By this scale the printed lines are ${found} mm apart, which is no usual paper. Check the scale.`
      : `By this scale the printed lines are ${found} mm apart, but this paper has ${knownMm} mm. Check the scale.`,
  );
}

/** By the scale the letters are far too small or too large for handwriting. */
export function sizeWarning(sizeMm: number): PageWarning {
  return warning(
    'scale-unlikely',
    `By this scale the small letters are ${Number(sizeMm.toPrecision(2))} mm high, which is no usual handwriting. Check the scale before you use any number of this page.`,
  );
}
