/** A stored recording as ink, and as a picture of a page. */
import sharp from 'sharp';
import type { InkRecording } from '../../../db/types/sample.ts';
import type { InkDocument, InkPage, InkTask } from '../../../renderer/ink/index.ts';
import { documentOfRaw, readInkml, unpackSamples } from '../../../renderer/ink/index.ts';

/**
 * The words meant belong to writing only.
 * @param meant what was to be written, '' where nobody knows
 * @throws InkRefusal for an ink file that cannot be read
 */
export function inkOfRecording(
  recording: Pick<InkRecording, 'mime' | 'task' | 'scale' | 'startedAt'>,
  meant: string,
  bytes: Uint8Array,
): InkDocument {
  const text = recording.task === 'writing' && meant !== '' ? meant : null;
  if (recording.mime === 'application/inkml+xml') {
    const document = readInkml(bytes);
    return { ...document, task: recording.task, text: text ?? document.text };
  }
  const startedAtMs = Date.parse(recording.startedAt);
  return documentOfRaw(unpackSamples(bytes), {
    scale: recording.scale,
    task: recording.task as InkTask,
    text,
    startedAtMs,
  });
}

/** A drawn page as PNG that states its resolution. */
export function pngOfPage(page: InkPage): Promise<Buffer> {
  const raw = { width: page.width, height: page.height, channels: 1 as const };
  return sharp(page.data, { raw }).withMetadata({ density: page.dpi }).png().toBuffer();
}
