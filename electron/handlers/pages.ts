import type { pageRequests } from '../contract/pages.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Handler } from './handler.ts';

const orRefuse = async <T>(code: 'save-failed' | 'print-failed', work: Promise<T>): Promise<T> => {
  try {
    return await work;
  } catch {
    throw new Refusal(code);
  }
};

export const pageHandlers: { [N in keyof typeof pageRequests]: Handler<N> } = {
  'pages.savePdf': async (services, { name, paper }) => {
    const bytes = await orRefuse('print-failed', services.options.port.printPdf({ pageSize: paper }));
    const { saved } = await orRefuse(
      'save-failed',
      services.options.port.chooseSave({ suggestedName: `${name}.pdf`, bytes, mime: 'application/pdf' }),
    );
    return { saved };
  },
  'pages.print': async (services) => {
    await orRefuse('print-failed', services.options.port.printPaper());
    return {};
  },
  'pages.issue': async (services, { id, clientId, visitId, kind, model, paper }) => {
    const caseload = services.need();
    const bytes = await orRefuse('print-failed', services.options.port.printPdf({ pageSize: paper }));
    const doing = services.doing();
    const pdf = caseload.putBlob(clientId, 'application/pdf', bytes, doing).id;
    return caseload.put('issuedPage', { id, clientId, visitId, kind, issuedAt: doing.at, model, pdf }, doing);
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
