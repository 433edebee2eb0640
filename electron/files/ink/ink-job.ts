import type { InkRecording, InkTold } from '../../../db/types/sample.ts';

/** What the ink worker is asked for: the samples of one recording, and whether they are drawn as a page too. */
export interface InkJob {
  recording: Pick<InkRecording, 'mime' | 'task' | 'scale' | 'startedAt' | 'cues' | 'notes'>;
  /** The words meant; '' = not known. */
  text: string;
  bytes: Uint8Array;
  /** The page as PNG is wanted. */
  draw: boolean;
}

export interface MeasuredInk {
  told: InkTold;
  /** Only of bouts with a height to fill. */
  lines: NonNullable<InkRecording['measured']>['lines'];
  /** Null where nothing can be drawn: no scale, no ink. */
  page: { png: Uint8Array; width: number; height: number; dpi: number } | null;
}

export type InkAnswerMessage = { measured: MeasuredInk } | { refused: string } | { failed: string };
