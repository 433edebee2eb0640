/**
 * Hazards that the words of an exercise give away, so that a line written by hand meets the same vetoes as one from
 * the library. It errs on the careful side: a veto can be overridden with a reason.
 */
import type { Hazard } from '../../../../db/types/rules.ts';

const signs: readonly [RegExp, readonly Hazard[]][] = [
  [/\b(putty|dough|clay)\b/i, ['putty', 'resistance']],
  [/\b(squeeze|grip hard|rubber band|resist\w*|dumbbell)\b/i, ['resistance']],
  [/\bpinch\w*\b/i, ['pinch', 'resistance']],
  [/\b(lean (on|over)|weight (through|on)|push up|press down on)\b/i, ['weight-bearing']],
  [/\bstretch\w*\b/i, ['stretch']],
  [/\b(neck|head)\b.*\b(turn|tilt|roll|stretch)|\b(turn|tilt|roll|stretch)\w*\b.*\b(neck|head)\b/i, ['neck-stretch']],
  [/\b(quick|quickly|fast|faster|brisk|briskly|as many as)\b/i, ['brisk']],
  [/\b(stopwatch|against the clock|time yourself|beat your time)\b/i, ['speed']],
  [/\beyes (closed|shut)|close your eyes\b/i, ['eyes-closed']],
  [/\b(stand|standing)\b/i, ['standing']],
  [/\b(weighted|heavy) (pen|cuff|glove)|wrist weight\b/i, ['weights']],
  [/\b(coins?|beads?|clips?|buttons?|beans)\b/i, ['small-objects']],
  [/\b(sandpaper|brush the skin|textures?)\b/i, ['textures']],
];

/** @param words title and text of a line */
export const hazardsInWords = (words: string): Hazard[] => [
  ...new Set(signs.flatMap(([sign, hazards]) => (sign.test(words) ? hazards : []))),
];
