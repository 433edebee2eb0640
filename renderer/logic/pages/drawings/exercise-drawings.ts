/** Line drawings of the main exercises and hand positions, drawn for this program. */
import {
  fine,
  fist,
  flatHand,
  ink,
  move,
  openHand,
  pen,
  penHand,
  placed,
  solid,
  table,
  type Stroke,
} from './strokes.ts';
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
  'open-hand-flat': [
    table,
    ...flatHand(108),
    ink('M158 26 C136 32 118 48 106 72 C102 81 111 86 116 79 C126 64 138 56 156 50'),
    move('M62 62 C74 58 86 60 94 68', 94, 68, 40),
  ],
  'open-hand-lean': [
    table,
    ink(
      'M60 8 C58 40 62 70 70 84 C72 92 78 98 88 100 L122 102 C128 103 128 108 122 108 H64 C56 108 50 102 48 92 C42 66 40 36 42 8',
    ),
    move('M86 16 V60', 86, 60, 90),
  ],
  'open-close': [
    ...fist.map((stroke) => placed(stroke, 0.74, -16, 18)),
    placed(openHand, 0.86, 52, 6),
    move('M62 34 C68 24 76 20 86 20', 86, 20, 0),
    move('M92 112 C84 116 72 116 66 108', 66, 108, 225),
  ],
  'head-turn': [
    ink(
      'M64 46 C64 26 98 26 98 46 C98 62 92 70 81 70 C70 70 64 62 64 46 Z M72 68 V80 M90 68 V80 M72 80 C52 84 42 92 38 114 M90 80 C110 84 120 92 124 114',
    ),
    fine('M81 46 V54 H77'),
    move('M58 24 C66 10 96 10 106 22', 106, 22, 50),
    move('M44 34 C42 40 42 48 44 56', 44, 56, 80),
  ],
  'putty-squeeze': [
    ...fist.map((stroke) => placed(stroke, 1, 12, 0)),
    ink('M46 62 C28 54 20 70 28 82 C34 90 44 90 48 88 M112 64 C128 58 136 72 130 84 C124 92 114 90 111 86'),
    move('M70 12 V34', 70, 34, 90),
    move('M90 12 V34', 90, 34, 90),
  ],
  'putty-pinch': [
    ink('M158 22 C132 22 106 36 94 58 C90 67 99 73 105 66 C116 54 132 48 156 48'),
    ink('M158 96 C140 96 122 92 108 84 C99 79 94 88 101 94 C116 104 136 110 158 110'),
    ink('M12 82 C4 72 10 64 22 66 C48 70 70 74 92 73 C103 74 103 84 92 84 C66 88 44 90 24 90 C18 90 14 87 12 82 Z'),
    move('M80 36 V58', 80, 58, 90),
    move('M80 118 V98', 80, 98, -90),
  ],
  'putty-letters': [
    ink('M10 88 C10 66 128 62 134 86 C138 110 14 112 10 88 Z'),
    fine('M44 96 C34 96 34 80 45 80 C56 80 56 96 45 96 M56 78 V96'),
    ink('M158 8 L120 22 C106 28 94 46 86 74 C84 82 93 86 96 78 C103 60 112 50 124 46'),
    ink('M124 46 C134 42 140 48 136 56 C132 62 124 60 120 56 M137 52 C147 50 151 58 145 64 C140 68 133 66 131 61'),
    ink('M146 60 C152 60 156 58 158 56'),
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
    ink('M135.1 7.7 L40.4 81.5 L22 106 L50.2 94.1 L144.9 20.3 Z M40.4 81.5 L50.2 94.1'),
    fine('M138.5 12.1 L43.8 85.9 M68 60 L77.8 72.6 M61.7 64.9 L71.5 77.5 M55.4 69.8 L65.2 82.4 M49.1 74.7 L58.9 87.3'),
    solid('M80 55 a4.5 4.5 0 1 0 0.1 0'),
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
