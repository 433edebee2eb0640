import { flagsOf, programInput } from '../../renderer/logic/program/facts/from-record.ts';
import { codedPractice, printedOf } from '../../renderer/logic/pages/practice/printed-areas.ts';
import { clientInCode } from '../../renderer/logic/pages/sheet/coded-sheets.ts';
import { approvalSigns, coSignOf } from '../../renderer/logic/record/co-sign.ts';
import { checkProgram } from '../../renderer/logic/program/draft/vetoes.ts';
import { Refusal } from '../contract/envelope.ts';
import type { programRequests } from '../contract/program.ts';
import type { Handler } from './handler.ts';
import { keepPicture } from '../files/measure/kept-picture.ts';
import { returnedInWorker } from '../files/measure/page-file.ts';
import type { ReturnedPage } from '../files/measure/page-job.ts';
import type { PracticeSheet } from '../../renderer/logic/pages/practice/practice.ts';
import type { Services } from './services.ts';
import { clinicRules } from './clinic-rules.ts';
import { refuseFuture, saveFact } from './saving.ts';

/** Reads a picture of one of our pages, with the practice sheets that this client was given. */
async function returned(
  services: Services,
  clientId: string,
  bytes: Uint8Array,
  pdfPage: number,
): Promise<{ page: ReturnedPage; given: Map<string, PracticeSheet> }> {
  const given = codedPractice(services.need().record(clientId).issuedPages);
  const printedOn = Object.fromEntries([...given].map(([code, sheet]) => [code, printedOf(sheet)]));
  return { page: await returnedInWorker(bytes, printedOn, { pdfPage }), given };
}

export const programHandlers: { [N in keyof typeof programRequests]: Handler<N> } = {
  'program.save': (services, program) => {
    if (program.status !== 'draft') throw new Refusal('already-approved');
    const who = { ...services.doing(), assistant: services.therapist().assistant };
    const judged = coSignOf(services.need().get('program', program.id), program, who);
    if ('refused' in judged) throw new Refusal(judged.refused);
    const { coSign: _sent, ...own } = program;
    return saveFact('program')(services, judged.coSign ? { ...own, coSign: judged.coSign } : own);
  },

  'program.approve': (services, { id }) => {
    const caseload = services.need();
    if (services.therapist().assistant) throw new Refusal('assistant-approves');
    const stored = caseload.get('program', id);
    if (!stored) throw new Refusal('not-found');
    if (stored.status === 'approved') throw new Refusal('already-approved');
    const record = caseload.record(stored.clientId);
    const rules = clinicRules(services);
    const flags = flagsOf(record, rules);
    if (flags.open.length > 0) throw new Refusal('red-flag-open');
    if (flags.unasked.length > 0) throw new Refusal('red-flags-not-asked');
    const check = checkProgram(stored.lines, programInput(record, rules), rules);
    if (check.flags.length > 0) throw new Refusal('red-flag-open');
    const unsafe = check.lines.find((line) => !line.overridden);
    if (unsafe) throw new Refusal('veto-not-overridden', unsafe.title);
    const doing = services.doing();
    const judged = approvalSigns(stored, { ...doing, assistant: false });
    if ('refused' in judged) throw new Refusal(judged.refused);
    const { at: _at, by: _by, coSign: _before, ...program } = stored;
    const approved = { status: 'approved' as const, approvedAt: doing.at, approvedBy: doing.by };
    return caseload.put('program', { ...program, ...approved, ...(judged.coSign && { coSign: judged.coSign }) }, doing);
  },

  'practice.save': (services, log) => {
    refuseFuture(services, log.date);
    return saveFact('practiceLog')(services, log);
  },

  'practice.recognize': async (services, { clientId, token, pdfPage }) => {
    const { page, given } = await returned(services, clientId, services.takeStaged(token), pdfPage);
    const { result } = page;
    if (result.kind === 'not-read') return result;
    const caseload = services.need();
    if (result.code.client !== clientInCode(clientId)) {
      const other = caseload.clients().find(({ id }) => clientInCode(id) === result.code.client);
      return { kind: 'of-another', code: other?.code ?? '' };
    }
    if (result.kind === 'log') {
      const fields = result.fields.map(({ picture, ...field }) => ({
        ...field,
        picture: picture && Buffer.from(picture).toString('base64'),
      }));
      return { kind: 'log', firstDay: result.code.firstDay, few: result.code.few, fields };
    }
    const { measured, text, code } = result;
    return {
      kind: 'practice',
      madeOn: code.firstDay,
      sheet: code.sheet,
      title: given.get(text)?.title ?? '',
      known: measured !== null,
      keptFor: caseload.record(clientId).practicePages.find((each) => each.code === text)?.date ?? null,
      lines: measured?.lines.length ?? 0,
      words: measured?.lines.reduce((sum, line) => sum + line.words.length, 0) ?? 0,
    };
  },

  'practice.keepPage': async (services, { id, clientId, token, pdfPage, date }) => {
    refuseFuture(services, date);
    const bytes = services.takeStaged(token);
    const { page, given } = await returned(services, clientId, bytes, pdfPage);
    const { result } = page;
    if (result.kind !== 'practice' || result.measured === null || result.code.client !== clientInCode(clientId))
      throw new Refusal('not-found');
    const { measured, text } = result;
    // The caseload may have been locked while the worker read the picture.
    return services.need().together(services.doing(), (write) =>
      write.put('practicePage', {
        id,
        clientId,
        date,
        code: text,
        title: given.get(text)?.title ?? '',
        ...keepPicture(write, clientId, { bytes, pdfPage, look: page, shown: page.view }),
        version: measured.version,
        lines: measured.lines.length,
        words: measured.lines.reduce((sum, line) => sum + line.words.length, 0),
        measures: measured.measures.map(({ code, value, unit, n, low, high }) => ({ code, value, unit, n, low, high })),
        warnings: measured.warnings.map(({ code, message }) => ({ code, message })),
      }),
    );
  },
};
