/** What somebody may still remember: sentences of the year, and frames of the latest texts. */
import { sentenceKey } from './fill-frame.ts';

/** A text that was written somewhere in the caseload. */
export interface WrittenText {
  /** Lines of the text, one sentence a line. */
  text: string;
  /** Codes of frames or shipped texts. */
  codes: string[];
  /** When, ISO instant. */
  at: string;
}

/** @param framesApart so many latest texts lend their frames to none of the next */
export function knownTexts(
  written: readonly WrittenText[],
  framesApart: number,
): { sentences: Set<string>; lastFrames: Set<string> } {
  const latest = [...written].sort((a, b) => b.at.localeCompare(a.at)).slice(0, framesApart);
  return {
    sentences: new Set(written.flatMap(({ text }) => text.split('\n').map(sentenceKey)).filter(Boolean)),
    lastFrames: new Set(latest.flatMap(({ codes }) => codes)),
  };
}
