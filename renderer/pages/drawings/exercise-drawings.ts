/** Line drawings of the main exercises and hand positions, drawn for this program. */
import { fine, fist, flatHand, ink, move, openHand, pen, penHand, solid, table, type Stroke } from './strokes.ts';
import { setUpDrawings } from './set-up-drawings.ts';
import { handsInWriting, writingDrawings } from './writing-drawings.ts';

export const exerciseDrawings: Readonly<Record<string, readonly Stroke[]>> = {
  ...setUpDrawings,
  ...writingDrawings,
  'pick-up': [
    table,
    ...penHand.map((s) => ({ ...s })),
    pen(104, 24, 55, 104),
    move('M22 98 V54', 22, 54, -90),
    move('M36 54 V98', 36, 98, 90),
  ],
  'bend-straighten': [
    ...penHand,
    pen(104, 24, 55, 104),
    move('M44 70 L20 96', 20, 96, 133),
    move('M30 106 L52 82', 52, 82, -47),
  ],
  'walk-barrel': [
    ...penHand,
    pen(112, 10, 55, 104),
    move('M70 56 C76 46 82 36 88 26', 88, 26, -58),
    solid('M66 62 a3 3 0 1 0 0.1 0 M74 48 a3 3 0 1 0 0.1 0'),
  ],
  'roll-barrel': [
    ...penHand,
    pen(104, 24, 55, 104),
    move('M84 12 C96 2 116 4 122 18', 122, 18, 75),
    move('M122 34 C112 42 98 42 92 36', 92, 36, 215),
  ],
  'turn-pen': [openHand, pen(112, 62, 40, 88), move('M28 62 C24 30 60 6 92 8', 92, 8, 5)],
  clips: [
    openHand,
    ink('M76 92 h16 a4.5 4.5 0 0 1 0 9 h-18 a7 7 0 0 1 0 -14 h20'),
    move('M72 84 C58 74 56 60 62 50', 62, 50, -70),
  ],
  'thumb-to-tips': [
    openHand,
    move('M36 54 C34 40 44 28 54 26', 54, 26, -12),
    move('M30 52 C26 24 52 6 74 12', 74, 12, 18),
  ],
  'open-hand-flat': [table, ...flatHand(108), move('M96 74 C112 70 128 76 138 90', 138, 90, 58)],
  'open-hand-lean': [
    table,
    ink(
      'M60 8 C58 40 62 70 70 84 C72 92 78 98 88 100 L122 102 C128 103 128 108 122 108 H64 C56 108 50 102 48 92 C42 66 40 36 42 8',
    ),
    move('M86 16 V60', 86, 60, 90),
  ],
  'open-close': [
    ...fist(52, 62).slice(0, 2),
    move('M112 40 C122 32 134 32 142 40', 142, 40, 50),
    move('M142 84 C134 92 122 92 112 84', 112, 84, 220),
  ],
  'head-turn': [
    ink(
      'M64 46 C64 26 98 26 98 46 C98 62 92 70 81 70 C70 70 64 62 64 46 Z M72 68 V80 M90 68 V80 M72 80 C52 84 42 92 38 114 M90 80 C110 84 120 92 124 114',
    ),
    fine('M81 46 V54 H77'),
    move('M58 24 C66 10 96 10 106 22', 106, 22, 50),
    move('M44 34 C42 40 42 48 44 56', 44, 56, 80),
  ],
  'putty-squeeze': [...fist(48, 60), ink('M60 34 C66 26 80 26 84 36 M62 84 C68 94 82 94 86 82')],
  'putty-pinch': [
    ink(
      'M4 44 H50 C60 36 74 34 84 38 L118 52 C125 55 122 63 115 61 L86 54 M4 84 H52 C62 88 74 86 84 80 L114 70 C121 67 118 60 112 62',
    ),
    ink('M92 66 C100 60 140 60 150 66 C154 70 140 74 122 72 C104 74 92 72 92 66 Z'),
  ],
  'putty-letters': [
    ink('M22 84 C22 66 136 62 142 82 C146 102 26 106 22 84 Z'),
    fine('M52 92 C44 92 44 80 53 80 C62 80 62 92 53 92 M62 80 V92'),
    ink('M150 20 L112 34 C98 40 92 52 88 70 C86 78 94 80 97 73 C100 62 106 54 116 50 L150 46'),
  ],
  'wrist-lift': [
    ink('M4 104 H84 V116'),
    ink(
      'M4 80 H66 C78 78 84 72 90 64 L110 38 C115 32 123 37 119 44 L106 64 C116 60 121 68 113 73 L100 80 C96 92 86 98 74 100 H4',
    ),
    move('M134 92 C142 78 140 60 130 48', 130, 48, -120),
  ],
  'table-slide': [
    table,
    ...flatHand(102),
    fine('M70 104 H150'),
    move('M60 60 H112', 112, 60, 0),
    move('M112 46 H60', 60, 46, 180),
  ],
  'big-ovals': [
    ink('M30 60 C30 24 110 20 116 56 C120 92 36 100 30 62 C28 30 104 14 124 50'),
    pen(152, 12, 124, 50),
    move('M20 84 C34 108 80 114 108 102', 108, 102, -22),
  ],
  'dot-to-dot': [
    solid('M24 90 a5 5 0 1 0 0.1 0 M74 34 a5 5 0 1 0 0.1 0 M130 84 a5 5 0 1 0 0.1 0'),
    ink('M24 95 L74 39 L106 66'),
    pen(136, 20, 107, 66),
  ],
  'thick-sleeve': [
    pen(140, 14, 22, 106),
    ink('M62 58 L88 38 C94 34 104 46 98 51 L72 71 C66 76 56 63 62 58 Z M66 55 L76 68 M76 47 L86 60 M86 40 L96 52'),
  ],
  'ribbed-barrel': [
    pen(140, 14, 22, 106),
    fine('M58 72 L64 80 M66 66 L72 74 M74 60 L80 68 M82 54 L88 62'),
    solid('M72 63 a4 4 0 1 0 0.1 0'),
  ],
  'line-window': [
    ink('M12 12 H148 V108 H12 Z'),
    fine('M24 30 H136 M24 84 H136 M24 98 H136'),
    ink('M4 44 H156 V70 H4 Z M22 51 H138 V63 H22 Z'),
    move('M146 78 V100', 146, 100, 90),
  ],
  'arm-anchored': [table, ...penHand, pen(104, 24, 55, 104), move('M134 18 V52', 134, 52, 90)],
  // Left-handers turn the top of the sheet to the right.
  'left-hand-paper': [
    ink('M56 12 L134 30 L116 112 L38 94 Z'),
    fine('M60 32 L120 46 M56 48 L116 62'),
    move('M120 8 C132 8 142 14 146 26', 146, 26, 72),
  ],
  'close-then-lift': [
    ink('M70 48 C48 34 22 50 24 74 C26 98 60 104 72 82 V46 M72 82 C74 94 80 98 88 94'),
    move('M104 84 V36', 104, 36, -90),
    pen(146, 8, 110, 30),
  ],
  'three-heights': [
    fine('M8 88 H152 M8 20 H152 M8 112 H152'),
    { d: 'M8 54 H152', kind: 'fine' },
    ink(
      'M24 20 V88 M24 66 C30 50 48 50 48 66 V88 M78 56 V88 M78 66 C84 50 102 50 102 66 V88 M146 56 V98 C146 112 128 114 124 106 M146 66 C140 50 120 52 120 72 C120 90 140 92 146 78',
    ),
  ],
  'look-and-pause': [
    fine('M12 96 H148'),
    ink('M30 48 C48 24 112 24 130 48 C112 72 48 72 30 48 Z'),
    ink('M80 34 a14 14 0 1 0 0.1 0'),
    solid('M80 43 a5 5 0 1 0 0.1 0'),
    fine('M20 90 C26 82 32 82 30 90 C36 82 42 82 40 90 M52 90 C58 82 64 82 62 90 M74 90 C80 80 88 82 84 90'),
  ],
  'look-cover-write': [
    ink('M10 14 H70 V54 H10 Z M90 66 H150 V106 H90 Z'),
    ink('M40 28 C30 22 24 30 24 36 C24 44 36 46 42 38 V26 V42'),
    fine('M100 98 H140'),
    move('M80 34 C108 34 120 44 120 58', 120, 58, 90),
  ],
};

/** Drawings of letters and pages look the same for both hands; those of hands are turned for a left-hander. */
const sameForBothHands: ReadonlySet<string> = new Set([
  ...Object.keys(writingDrawings).filter((name) => !handsInWriting.has(name)),
  'left-hand-paper',
  'three-heights',
  'close-then-lift',
  'putty-letters',
  'look-cover-write',
  'line-window',
  'look-and-pause',
  'dot-to-dot',
  'bright-line',
]);

export const isMirrored = (name: string, hand: 'right' | 'left' | null): boolean =>
  hand === 'left' && !sameForBothHands.has(name);
