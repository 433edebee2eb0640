import type { pageRequests } from '../contract/pages.ts';
import { fits, readFingerprint } from '../../db/fingerprint.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Packet } from '../../renderer/logic/pages/sheet/packet.ts';
import { printedPractice } from '../../renderer/logic/pages/sheet/printed-practice.ts';
import { safeProgram } from '../../renderer/logic/pages/sheet/safe-program.ts';
import { refusedByGate } from '../../renderer/logic/program/print-gate.ts';
import type { Handler } from './handler.ts';
import { clinicRules } from './clinic-rules.ts';
import { saveFact } from './saving.ts';
import type { Services } from './services.ts';

const orRefuse = async <T>(code: 'save-failed' | 'print-failed', work: Promise<T>): Promise<T> => {
  try {
    return await work;
  } catch {
    throw new Refusal(code);
  }
};

/** The print dialog for what the window shows. @throws Refusal print-failed */
export async function printWindow(services: Services): Promise<Record<string, never>> {
  await orRefuse('print-failed', services.options.port.printPaper());
  return {};
}

/** Flags and vetoes are asked again here: what is handed out must not rest on what the window showed. */
function refuseUnsafePractice(services: Services, clientId: string, visitId: string, model: unknown): void {
  const packet = model as Packet;
  // Models of other makers hold no sheets, so no practice either.
  if (!Array.isArray(packet?.sheets)) return;
  const printed = printedPractice(packet);
  if (printed.length === 0) return;
  const record = services.need().record(clientId);
  const safe = safeProgram({ record, visitId, today: services.today() }, clinicRules(services));
  const refused = refusedByGate(printed, safe);
  if (refused !== null) throw new Refusal('practice-not-safe', refused);
}

/** A page must not carry a fingerprint of another trail: it could never be checked. */
function refuseForeignFingerprint(services: Services, model: unknown): void {
  const { fingerprint } = (model ?? {}) as Partial<Packet>;
  if (fingerprint === undefined) return;
  const read = typeof fingerprint === 'string' ? readFingerprint(fingerprint) : null;
  if (read === null || !fits(read, services.need().trailHashAt(read.entries) ?? ''))
    throw new Refusal('malformed-request', 'fingerprint');
}

export const pageHandlers: { [N in keyof typeof pageRequests]: Handler<N> } = {
  'pages.draft': saveFact('pageDraft'),
  'pages.savePdf': async (services, { name, paper, page }) => {
    if (page) refuseUnsafePractice(services, page.clientId, page.visitId, page.model);
    const bytes = await orRefuse('print-failed', services.options.port.printPdf({ pageSize: paper }));
    const { saved } = await orRefuse(
      'save-failed',
      services.options.port.chooseSave({ suggestedName: `${name}.pdf`, bytes, mime: 'application/pdf' }),
    );
    return { saved };
  },
  'pages.print': async (services, { page }) => {
    if (page) refuseUnsafePractice(services, page.clientId, page.visitId, page.model);
    return printWindow(services);
  },
  'pages.issue': async (services, { id, clientId, visitId, kind, model, paper }) => {
    const caseload = services.need();
    if (kind === 'initial-evaluation' && services.therapist().assistant) throw new Refusal('assistant-evaluates');
    refuseUnsafePractice(services, clientId, visitId, model);
    refuseForeignFingerprint(services, model);
    const bytes = await orRefuse('print-failed', services.options.port.printPdf({ pageSize: paper }));
    const doing = services.doing();
    return caseload.together(doing, (write) => {
      const pdf = write.putBlob(clientId, 'application/pdf', bytes).id;
      return write.put('issuedPage', { id, clientId, visitId, kind, issuedAt: doing.at, model, pdf });
    });
  },
  'pages.saveText': async (services, { name, text }) => {
    const bytes = new TextEncoder().encode(text);
    const mime = name.endsWith('.csv') ? 'text/csv' : 'text/plain';
    const { saved } = await orRefuse(
      'save-failed',
      services.options.port.chooseSave({ suggestedName: name, bytes, mime }),
    );
    return { saved };
  },
};
