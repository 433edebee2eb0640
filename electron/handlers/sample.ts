import { latestOf } from '../../renderer/logic/sample/measured/latest-measurements.ts';
import type { PageMeasurement, Sample, SamplePage } from '../../db/types/sample.ts';
import { ownRepeats, withHand } from '../../renderer/logic/record/hand-ranges.ts';
import { rulingOf } from '../../renderer/logic/sample/carried-conditions.ts';
import { isShowable } from '../files/decode/picture-header.ts';
import { scaleOfFile } from '../files/measure/page-job.ts';
import { keepPicture } from '../files/measure/kept-picture.ts';
import { lookInWorker, measureInWorker, showInWorker } from '../files/measure/page-file.ts';
import { METHOD_VERSION, type Correction } from '../../renderer/measure/index.ts';
import { Refusal } from '../contract/envelope.ts';
import type { sampleRequests } from '../contract/sample.ts';
import type { Handler } from './handler.ts';
import { currentRules } from './clinic-rules.ts';
import { saveFact } from './saving.ts';
import type { Services } from './services.ts';

/** Believable scales: 40 to 2400 dpi. Outside them a typing error is likelier than a scanner. */
const pxPerMmRange = { min: 40 / 25.4, max: 2400 / 25.4 };

const checkScale = (pxPerMm: number): void => {
  if (pxPerMm < pxPerMmRange.min || pxPerMm > pxPerMmRange.max)
    throw new Refusal('scale-out-of-range', `${Math.round(pxPerMm * 25.4)} dpi`);
};

function pageOf(services: Services, pageId: string): SamplePage {
  const page = services.need().get('samplePage', pageId);
  if (!page) throw new Refusal('not-found');
  return page;
}

/**
 * What the page gave without corrections, as it is stored: by this method, and of the page and its sample as they are
 * now. Null where it has to be measured again.
 */
function uncorrectedBefore(services: Services, page: SamplePage, sample: Sample): PageMeasurement['result'] | null {
  const last = latestOf(
    services
      .need()
      .record(page.clientId)
      .pageMeasurements.filter(
        ({ pageId, version, at }) => pageId === page.id && version === METHOD_VERSION && at > page.at && at > sample.at,
      ),
  );
  if (!last) return null;
  return last.uncorrected ?? (last.corrections.length === 0 ? last.result : null);
}

export const sampleHandlers: { [N in keyof typeof sampleRequests]: Handler<N> } = {
  'sample.save': saveFact('sample'),

  'sample.addPage': async (services, { id, sampleId, token, pdfPage }) => {
    const caseload = services.need();
    const sample = caseload.get('sample', sampleId);
    if (!sample) throw new Refusal('not-found');
    const bytes = services.takeStaged(token);
    const look = await lookInWorker(bytes, {}, { pdfPage });
    const shown = isShowable(look.format) ? null : await showInWorker(bytes, {}, { pdfPage });
    // The caseload may have been locked while the worker read the page.
    const open = services.need();
    const doing = services.doing();
    const order = open.record(sample.clientId).samplePages.filter((p) => p.sampleId === sampleId).length;
    return open.together(doing, (write) =>
      write.put('samplePage', {
        id,
        clientId: sample.clientId,
        visitId: sample.visitId,
        sampleId,
        order,
        ...keepPicture(write, sample.clientId, { bytes, pdfPage, look, shown }),
        scale: scaleOfFile(look.fileDpi),
        quarterTurns: 0,
      }),
    );
  },

  'sample.setScale': (services, { pageId, pxPerMm, source }) => {
    checkScale(pxPerMm);
    const { at: _at, by: _by, ...page } = pageOf(services, pageId);
    return services.need().put('samplePage', { ...page, scale: { pxPerMm, source } }, services.doing());
  },

  'sample.turn': (services, { pageId, quarterTurns }) => {
    const { at: _at, by: _by, ...page } = pageOf(services, pageId);
    return services.need().put('samplePage', { ...page, quarterTurns }, services.doing());
  },

  'sample.measure': async (services, { id, pageId, corrections }) => {
    const page = pageOf(services, pageId);
    const sample = services.need().get('sample', page.sampleId);
    const blob = services.need().blob(page.blob);
    if (!sample || !blob) throw new Refusal('not-found');
    const ruling = rulingOf(sample.conditions.paper);
    services.measuring.get(pageId)?.abort();
    const run = new AbortController();
    services.measuring.set(pageId, run);
    try {
      const known = corrections.length > 0 ? uncorrectedBefore(services, page, sample) : null;
      const answer = await measureInWorker(
        blob.data,
        {
          scale: page.scale,
          corrections: corrections as unknown as Correction[],
          quarterTurns: page.quarterTurns,
          ...(sample.task.text ? { text: sample.task.text } : {}),
          ...(ruling === null ? {} : { rulingMm: ruling }),
        },
        {
          signal: run.signal,
          onProgress: (stage, done) => services.options.emit({ kind: 'progress', task: stage, id: pageId, done }),
        },
        { pdfPage: page.pdfPage, uncorrectedToo: corrections.length > 0 && known === null },
      );
      const caseload = services.need();
      const record = caseload.record(page.clientId);
      // The page itself counts once: as it is measured now.
      const others = record.pageMeasurements.filter((one) => one.pageId !== pageId);
      const fact = {
        id,
        clientId: page.clientId,
        visitId: page.visitId,
        sampleId: page.sampleId,
        pageId,
        method: 'page',
        version: answer.result.version,
        corrections,
      };
      const repeats = ownRepeats(
        {
          samples: record.samples,
          pageMeasurements: [
            ...others,
            { ...fact, ...services.doing(), result: answer.result as never, uncorrected: null },
          ],
        },
        fact.version,
      );
      const measures = withHand(answer.result.measures, repeats, currentRules(services).thresholds);
      const uncorrected = known ?? answer.uncorrected;
      return caseload.put(
        'pageMeasurement',
        { ...fact, result: { ...answer.result, measures } as never, uncorrected: uncorrected as never },
        services.doing(),
      );
    } finally {
      if (services.measuring.get(pageId) === run) services.measuring.delete(pageId);
    }
  },

  'camera.allowOnce': async (services) => {
    services.need();
    await services.options.port.allowCameraOnce();
    return {};
  },

  'sample.cancelMeasure': (services, { pageId }) => {
    services.measuring.get(pageId)?.abort();
    return {};
  },
};
