import type { SpiralSheet } from '../../db/types/spiral.ts';
import { timedSpiral } from '../../renderer/measure/index.ts';
import { Refusal } from '../contract/envelope.ts';
import type { spiralRequests } from '../contract/spiral.ts';
import { keepPicture } from '../files/measure/kept-picture.ts';
import { spiralInWorker } from '../files/measure/page-file.ts';
import type { Handler } from './handler.ts';
import type { Services } from './services.ts';

function sheetOf(services: Services, id: string): Omit<SpiralSheet, 'at' | 'by'> {
  const sheet = services.need().get('spiralSheet', id);
  if (!sheet) throw new Refusal('not-found');
  const { at: _at, by: _by, ...kept } = sheet;
  return kept;
}

/** What the picture holds, by the times of drawing. */
const measured = (bytes: Uint8Array, pdfPage: number, times: Pick<SpiralSheet, 'tracedSeconds' | 'freeSeconds'>) =>
  spiralInWorker(bytes, { traced: times.tracedSeconds, free: times.freeSeconds }, {}, { pdfPage });

export const spiralHandlers: { [N in keyof typeof spiralRequests]: Handler<N> } = {
  'spiral.add': async (services, { id, sampleId, token, pdfPage, hand, tracedSeconds, freeSeconds }) => {
    const sample = services.need().get('sample', sampleId);
    if (!sample) throw new Refusal('not-found');
    const bytes = services.takeStaged(token);
    const answer = await measured(bytes, pdfPage, { tracedSeconds, freeSeconds });
    // The caseload may have been locked while the worker read the picture.
    const open = services.need();
    return open.together(services.doing(), (write) =>
      write.put('spiralSheet', {
        id,
        clientId: sample.clientId,
        visitId: sample.visitId,
        sampleId,
        takenAt: sample.takenAt,
        hand,
        tracedSeconds,
        freeSeconds,
        ...keepPicture(write, sample.clientId, { bytes, pdfPage, look: answer, shown: answer.view }),
        result: answer.result,
      }),
    );
  },

  'spiral.tell': (services, { id, hand, tracedSeconds, freeSeconds }) => {
    const sheet = sheetOf(services, id);
    const { traced, free } = sheet.result;
    const result = {
      ...sheet.result,
      traced: traced && timedSpiral(traced, tracedSeconds),
      free: free && timedSpiral(free, freeSeconds),
    };
    return services.need().put('spiralSheet', { ...sheet, hand, tracedSeconds, freeSeconds, result }, services.doing());
  },

  'spiral.measure': async (services, { id }) => {
    const sheet = sheetOf(services, id);
    const picture = services.need().blob(sheet.blob);
    if (!picture) throw new Refusal('not-found');
    const { result } = await measured(picture.data, sheet.pdfPage, sheet);
    // What was told meanwhile stays.
    return services.need().put('spiralSheet', { ...sheetOf(services, id), result }, services.doing());
  },
};
