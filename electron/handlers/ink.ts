import { createHash, randomUUID } from 'node:crypto';
import { InkDevice } from '../../db/types/sample.ts';
import type { InkRecording, Sample, SamplePage } from '../../db/types/sample.ts';
import { INK_METHOD, INK_TASKS, InkRefusal, measureInk, readInkml, writeInkml } from '../../renderer/ink/index.ts';
import type { InkDocument } from '../../renderer/ink/index.ts';
import { Refusal } from '../contract/envelope.ts';
import type { inkRequests } from '../contract/ink.ts';
import { measureInkInWorker } from '../files/ink/ink-in-worker.ts';
import { inkOfRecording } from '../files/ink/recorded-ink.ts';
import type { Handler } from './handler.ts';
import type { Services } from './services.ts';
import { nothingWritten } from '../../renderer/logic/record/nothing-written.ts';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function recordingOf(services: Services, id: string): { recording: InkRecording; sample: Sample } {
  const recording = services.need().get('inkRecording', id);
  const sample = recording && services.need().get('sample', recording.sampleId);
  if (!recording || !sample) throw new Refusal('not-found');
  return { recording, sample };
}

/** The ink of a finished recording. */
function inkOf(services: Services, id: string): InkDocument {
  const { recording, sample } = recordingOf(services, id);
  const blob = recording.blob === null ? null : services.need().blob(recording.blob);
  if (!blob) throw new Refusal('not-found');
  return inkOfRecording(recording, sample.task.text, blob.data);
}

const unstamped = <T extends { at: string; by: string }>({ at: _at, by: _by, ...rest }: T): Omit<T, 'at' | 'by'> =>
  rest;

interface Kept {
  recording: InkRecording;
  page: SamplePage | null;
  sample: Sample;
}

const isPage = ({ task, abandoned }: Pick<InkRecording, 'task' | 'abandoned'>): boolean =>
  (task === 'writing' || task === 'loops') && !abandoned;

/** Ink into the record: samples as a blob with what they tell, the drawn page beside scanned ones, the writing time. One act. */
async function keep(
  services: Services,
  recording: Omit<InkRecording, 'at' | 'by'>,
  sample: Sample,
  bytes: Uint8Array,
): Promise<Kept> {
  const draw = isPage(recording);
  const { told, lines, page: drawn } = await measureInkInWorker({ recording, text: sample.task.text, bytes, draw });
  const seconds = told.measures.find(({ code }) => code === 'writing-time')?.value ?? null;
  // The caseload may have been locked while the page was drawn.
  const open = services.need();
  const order = open.record(sample.clientId).samplePages.filter(({ sampleId }) => sampleId === sample.id).length;
  return open.together(services.doing(), (write) => {
    const blob = write.putBlob(sample.clientId, recording.mime, bytes);
    const measured = { method: INK_METHOD, told, lines };
    const finished = write.put('inkRecording', { ...recording, blob: blob.id, sha256: blob.sha256, measured });
    const timed = draw && sample.seconds === null && seconds !== null;
    const rounded = timed ? Math.round(seconds * 10) / 10 : sample.seconds;
    const kept = timed ? write.put('sample', { ...unstamped(sample), seconds: rounded }) : sample;
    if (!drawn) return { recording: finished, page: null, sample: kept };
    const picture = write.putBlob(sample.clientId, 'image/png', drawn.png);
    const page = write.put('samplePage', {
      id: randomUUID(),
      clientId: sample.clientId,
      visitId: sample.visitId,
      sampleId: sample.id,
      order,
      blob: picture.id,
      view: picture.id,
      pdfPage: 1,
      sha256: picture.sha256,
      mime: 'image/png',
      bytes: drawn.png.byteLength,
      widthPx: drawn.width,
      heightPx: drawn.height,
      scale: { pxPerMm: drawn.dpi / 25.4, source: 'dpi' },
      fileDpi: drawn.dpi,
      quarterTurns: 0,
      ink: { recordingId: recording.id, surface: recording.surface, device: recording.device },
    });
    return { recording: finished, page, sample: kept };
  });
}

const newRecording = { blob: null, sha256: null, mime: 'application/x-pen-samples' as const, measured: null };
const DEVICE_SETTING = 'ink-device';

export const inkHandlers: { [N in keyof typeof inkRequests]: Handler<N> } = {
  'ink.device': (services) => {
    const read = InkDevice.safeParse(services.need().setting(DEVICE_SETTING));
    return { device: read.success ? read.data : null };
  },

  'ink.setDevice': (services, { device }) => {
    services.need().putSetting(DEVICE_SETTING, device, services.doing());
    return { device };
  },

  'ink.save': (services, fact) => {
    const known = services.need().get('inkRecording', fact.id);
    // Samples come by their own requests only.
    const { blob, sha256: checksum, mime, measured } = known ?? newRecording;
    return services.need().put('inkRecording', { ...fact, blob, sha256: checksum, mime, measured }, services.doing());
  },

  'ink.append': (services, { recordingId, seq, bytes }) => {
    services.need().keepInkPiece(recordingId, seq, Buffer.from(bytes, 'base64'));
    return {};
  },

  'ink.finish': async (services, { recordingId, palmTouches, cancelled }) => {
    const { recording, sample } = recordingOf(services, recordingId);
    if (recording.blob !== null) return { recording, page: null, sample };
    const bytes = services.need().inkSoFar(recordingId);
    if (bytes.byteLength === 0) throw new Refusal('ink-empty');
    const noted = { ...unstamped(recording), palmTouches, cancelled };
    const kept = await keep(services, noted, sample, bytes);
    services.need().dropInkPieces(recordingId);
    return kept;
  },

  'ink.import': async (services, { id, sampleId, token, surface, device }) => {
    const sample = services.need().get('sample', sampleId);
    if (!sample) throw new Refusal('not-found');
    const bytes = services.takeStaged(token);
    const { inkRecordings } = services.need().record(sample.clientId);
    if (inkRecordings.some((each) => each.sha256 === sha256(bytes))) throw new Refusal('ink-known');
    try {
      const ink = readInkml(bytes);
      const recording: Omit<InkRecording, 'at' | 'by'> = {
        ...nothingWritten(),
        id,
        clientId: sample.clientId,
        visitId: sample.visitId,
        sampleId,
        order: inkRecordings.filter((each) => each.sampleId === sampleId).length,
        task: INK_TASKS.find((task) => task === ink.task) ?? 'writing',
        hand: sample.conditions.hand ?? 'right',
        mime: 'application/inkml+xml',
        startedAt: new Date(ink.startedAtMs ?? Date.parse(sample.takenAt)).toISOString(),
        pointerType: 'unknown',
        surface,
        device,
        screen: { width: 1, height: 1, devicePixelRatio: 1 },
        scale: ink.calibrated ? { pxPerMmX: 1, pxPerMmY: 1, source: 'file', at: sample.takenAt } : null,
      };
      return await keep(services, recording, sample, bytes);
    } catch (error) {
      if (error instanceof InkRefusal) throw new Refusal('ink-unreadable', error.message);
      throw error;
    }
  },

  'ink.measure': async (services, { recordingId }) => {
    const { recording, sample } = recordingOf(services, recordingId);
    const blob = recording.blob === null ? null : services.need().blob(recording.blob);
    if (!blob) throw new Refusal('not-found');
    const job = { recording, text: sample.task.text, bytes: blob.data, draw: false };
    const { told, lines } = await measureInkInWorker(job);
    const now = services.need().get('inkRecording', recordingId);
    if (!now) throw new Refusal('not-found');
    const measured = { method: INK_METHOD, told, lines };
    return services.need().put('inkRecording', { ...unstamped(now), measured }, services.doing());
  },

  'ink.export': async (services, { recordingId }) => {
    const { recording, sample } = recordingOf(services, recordingId);
    const ink = inkOf(services, recordingId);
    const rateHz = recording.measured?.told.quality.rateHz ?? measureInk(ink).quality.rateHz;
    const bytes = new TextEncoder().encode(writeInkml(ink, { rateHz }));
    const code =
      services
        .need()
        .get('client', sample.clientId)
        ?.code.replace(/[^A-Za-z0-9-]+/g, '-') || 'client';
    const suggestedName = `${code}-ink-${recording.startedAt.slice(0, 10)}-${recording.order + 1}.inkml`;
    try {
      return {
        saved: (await services.options.port.chooseSave({ suggestedName, bytes, mime: 'application/inkml+xml' })).saved,
      };
    } catch {
      throw new Refusal('save-failed');
    }
  },
};
