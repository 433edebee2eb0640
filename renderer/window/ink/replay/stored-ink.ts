import type { InkRecording } from '../../../../db/types/sample.ts';
import type { InkQuestion, InkRead } from './stored-ink-worker.ts';

/**
 * The kept samples of a recording, read from the caseload as they were written, in a worker.
 * @throws Error where they cannot be read
 */
export async function inkOfBlob(recording: InkRecording, text: string): Promise<InkRead> {
  const answer = await fetch(`/blob/${recording.blob}`);
  if (!answer.ok) throw new Error('the recording cannot be read');
  const bytes = new Uint8Array(await answer.arrayBuffer());
  const { mime, task, startedAt, scale } = recording;
  const question: InkQuestion = { recording: { mime, task, startedAt, scale: scale && { ...scale } }, text, bytes };
  const worker = new Worker(new URL('./stored-ink-worker.ts', import.meta.url), { type: 'module' });
  try {
    return await new Promise<InkRead>((resolve, reject) => {
      worker.onmessage = ({ data }: MessageEvent<{ read: InkRead | null }>) =>
        data.read ? resolve(data.read) : reject(new Error('the recording cannot be read'));
      worker.onerror = () => reject(new Error('the recording cannot be read'));
      worker.postMessage(question, [bytes.buffer]);
    });
  } finally {
    worker.terminate();
  }
}
