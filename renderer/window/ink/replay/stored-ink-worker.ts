/** Reads kept samples away from the window: half an hour of ink takes a second or two. */
import type { InkRecording } from '../../../../db/types/sample.ts';
import type { InkStroke } from '../../../ink/index.ts';
import { replayLayout, type ReplayLayout } from './replay-layout.ts';
import { documentOfRaw, inkStrokes, readInkml, unpackSamples } from '../../../ink/index.ts';

export interface InkQuestion {
  recording: Pick<InkRecording, 'mime' | 'scale' | 'task' | 'startedAt'>;
  text: string;
  bytes: Uint8Array;
}
export interface InkRead {
  strokes: InkStroke[];
  layout: ReplayLayout;
}

self.onmessage = ({ data: { recording, text, bytes } }: MessageEvent<InkQuestion>): void => {
  try {
    const ink =
      recording.mime === 'application/inkml+xml'
        ? readInkml(bytes)
        : documentOfRaw(unpackSamples(bytes), {
            scale: recording.scale,
            task: recording.task,
            text,
            startedAtMs: Date.parse(recording.startedAt),
          });
    const read: InkRead = { strokes: inkStrokes(ink), layout: replayLayout(ink) };
    self.postMessage({ read }, { transfer: [read.layout.buffer] });
  } catch {
    self.postMessage({ read: null });
  }
};
