import type { InkRecording } from '../../../db/types/sample.ts';

/** What a pen recording holds before anybody writes: no samples, no help, nothing counted, nothing measured. */
export const nothingWritten = () =>
  ({
    blob: null,
    sha256: null,
    cues: null,
    palmTouches: 0,
    cancelled: 0,
    abandoned: false,
    notes: [],
    otherPens: 0,
    drift: null,
    measured: null,
  }) satisfies Partial<InkRecording>;
