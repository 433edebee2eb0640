import { createHash, randomUUID } from 'node:crypto';
import { InkDevice } from '../../db/types/sample.ts';
import type { InkRecording, Sample, SamplePage } from '../../db/types/sample.ts';
import { drawInk, InkRefusal, INK_TASKS, measureInk, readInkml, writeInkml } from '../../renderer/ink/index.ts';
import type { InkDocument } from '../../renderer/ink/index.ts';
import { Refusal } from '../contract/envelope.ts';
import type { InkAnswer, inkRequests } from '../contract/ink.ts';
import { inkOfRecording, pngOfPage } from '../files/ink/recorded-ink.ts';
import type { Handler } from './handler.ts';
import type { Services } from './services.ts';

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
  return inkOfRecording(recording, sample, blob.data);
}

const unstamped = <T extends { at: string; by: string }>({ at: _at, by: _by, ...rest }: T): Omit<T, 'at' | 'by'> =>
  rest;

interface Kept {
  recording: InkRecording;
  page: SamplePage | null;
  sample: Sample;
}

/** Ink into the record: samples as a blob, the drawn page beside scanned ones, the writing time noted. One act. */
async function keep(
  services: Services,
  recording: Omit<InkRecording, 'at' | 'by'>,
  sample: Sample,
  bytes: Uint8Array,
  ink: InkDocument,
): Promise<Kept> {
  const isPage = recording.task === 'writing' || recording.task === 'loops';
  const drawn = isPage && !recording.abandoned ? drawInk(ink) : null;
  const png = drawn && (await pngOfPage(drawn));
  const seconds = measureInk(ink).measures.find(({ code }) => code === 'writing-time')!.value;
  // The caseload may have been locked while the page was drawn.
  const open = services.need();
  const order = open.record(sample.clientId).samplePages.filter(({ sampleId }) => sampleId === sample.id).length;
  return open.together(services.doing(), (write) => {
    const blob = write.putBlob(sample.clientId, recording.mime, bytes);
    const finished = write.put('inkRecording', { ...recording, blob: blob.id, sha256: blob.sha256 });
    const timed = isPage && sample.seconds === null && seconds !== null && !recording.abandoned;
    const rounded = timed ? Math.round(seconds * 10) / 10 : sample.seconds;
    const kept = timed ? write.put('sample', { ...unstamped(sample), seconds: rounded }) : sample;
    if (!drawn || !png) return { recording: finished, page: null, sample: kept };
    const picture = write.putBlob(sample.clientId, 'image/png', png);
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
      bytes: png.byteLength,
      widthPx: drawn.width,
      heightPx: drawn.height,
      scale: { pxPerMm: drawn.dpi / 25.4, source: 'dpi' },
      fileDpi: drawn.dpi,
      quarterTurns: 0,
    });
    return { recording: finished, page, sample: kept };
  });
}

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
    const {
      blob,
      sha256: checksum,
      mime,
    } = known ?? { blob: null, sha256: null, mime: 'application/x-pen-samples' as const };
    return services.need().put('inkRecording', { ...fact, blob, sha256: checksum, mime }, services.doing());
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
    const kept = await keep(services, noted, sample, bytes, inkOfRecording(recording, sample, bytes));
    services.need().dropInkPieces(recordingId);
    return kept;
  },

  'ink.import': (services, { id, sampleId, token, surface, device }) => {
    const sample = services.need().get('sample', sampleId);
    if (!sample) throw new Refusal('not-found');
    const bytes = services.takeStaged(token);
    const { inkRecordings } = services.need().record(sample.clientId);
    if (inkRecordings.some((each) => each.sha256 === sha256(bytes))) throw new Refusal('ink-known');
    try {
      const ink = readInkml(bytes);
      const recording: Omit<InkRecording, 'at' | 'by'> = {
        id,
        clientId: sample.clientId,
        visitId: sample.visitId,
        sampleId,
        order: inkRecordings.filter((each) => each.sampleId === sampleId).length,
        task: INK_TASKS.find((task) => task === ink.task) ?? 'writing',
        hand: sample.conditions.hand ?? 'right',
        blob: null,
        sha256: null,
        mime: 'application/inkml+xml',
        startedAt: new Date(ink.startedAtMs ?? Date.parse(sample.takenAt)).toISOString(),
        pointerType: 'unknown',
        surface,
        device,
        screen: { width: 1, height: 1, devicePixelRatio: 1 },
        scale: ink.calibrated ? { pxPerMmX: 1, pxPerMmY: 1, source: 'file', at: sample.takenAt } : null,
        cues: null,
        palmTouches: 0,
        cancelled: 0,
        abandoned: false,
        notes: [],
      };
      return keep(services, recording, sample, bytes, ink);
    } catch (error) {
      if (error instanceof InkRefusal) throw new Refusal('ink-unreadable', error.message);
      throw error;
    }
  },

  'ink.measure': (services, { recordingId }) => measureInk(inkOf(services, recordingId)) as unknown as InkAnswer,

  'ink.export': async (services, { recordingId }) => {
    const { recording, sample } = recordingOf(services, recordingId);
    const ink = inkOf(services, recordingId);
    const { rateHz } = measureInk(ink).quality;
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
