import type { InkRecording } from '../../../db/types/sample.ts';
import type { InkDocument } from '../../ink/index.ts';
import { documentOfRaw, readInkml, unpackSamples } from '../../ink/index.ts';

/** The kept samples of a recording, read from the caseload as they were written. */
export async function inkOfBlob(recording: InkRecording, text: string): Promise<InkDocument> {
  const answer = await fetch(`/blob/${recording.blob}`);
  if (!answer.ok) throw new Error('the recording cannot be read');
  const bytes = new Uint8Array(await answer.arrayBuffer());
  if (recording.mime === 'application/inkml+xml') return readInkml(bytes);
  const startedAtMs = Date.parse(recording.startedAt);
  return documentOfRaw(unpackSamples(bytes), { scale: recording.scale, task: recording.task, text, startedAtMs });
}
