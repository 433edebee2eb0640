import { createHash, randomUUID } from 'node:crypto';
import { clientBundle } from '../../../renderer/logic/exchange/bundle.ts';
import { dictionaryCsv } from '../../../renderer/logic/exchange/dictionary.ts';
import type { KeptFiles } from '../../../renderer/logic/exchange/fhir-documents.ts';
import { measuresCsv } from '../../../renderer/logic/exchange/measures-csv.ts';
import type { exchangeRequests } from '../../contract/sharing/exchange.ts';
import { Refusal } from '../../contract/envelope.ts';
import type { Handler } from '../handler.ts';
import { clinicRulesSoon } from '../clinic-rules.ts';
import type { Services } from '../services.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

/** A UUID made of a name (the layout of version 5): the same each time, so that importing twice updates. */
function idFor(name: string): string {
  const hex = createHash('sha1').update(name).digest('hex');
  const variant = ((parseInt(hex.charAt(16), 16) & 3) | 8).toString(16);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-5${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

/** Most bytes of pages that go into one file: as base64 in one JSON text they take a third more. */
const MOST_BYTES = 200_000_000;

/** Pages and scans of the caseload for one file. @throws Refusal export-too-large */
function keptFiles(services: Services, withData: Readonly<Record<'page' | 'scan', boolean>>): KeptFiles {
  let total = 0;
  return (blob, kind) => {
    const kept = services.need().blob(blob);
    if (!kept) return null;
    if (withData[kind]) total += kept.bytes;
    if (total > MOST_BYTES) throw new Refusal('export-too-large', String(MOST_BYTES / 1_000_000));
    const data = withData[kind] ? kept.data.toString('base64') : null;
    return { bytes: kept.bytes, sha1: createHash('sha1').update(kept.data).digest('base64'), data };
  };
}

/** Byte order mark: spreadsheets take the file for UTF-8. */
const csvBytes = (text: string): Uint8Array => new TextEncoder().encode(`\ufeff${text}`);

async function save(services: Services, suggestedName: string, bytes: Uint8Array, mime: string): Promise<boolean> {
  try {
    return (await services.options.port.chooseSave({ suggestedName, bytes, mime })).saved;
  } catch {
    throw new Refusal('save-failed');
  }
}

/** Part of a file name that every system takes. */
const plain = (code: string): string => code.replace(/[^A-Za-z0-9-]+/g, '-') || 'client';

export const exchangeHandlers: { [N in keyof typeof exchangeRequests]: Handler<N> } = {
  'exchange.bundle': async (services, { clientId, ...options }) => {
    const caseload = services.need();
    const record = caseload.record(clientId);
    const bundle = clientBundle(record, await clinicRulesSoon(services), options, {
      now: services.doing().at,
      bundleId: randomUUID(),
      idOf: (name) => idFor(`${clientId} ${name}`),
      files: keptFiles(services, { page: options.withDocuments, scan: options.withScans }),
    });
    const bytes = new TextEncoder().encode(`${JSON.stringify(bundle, null, 2)}\n`);
    const name = `${plain(record.client.code)}-${services.today()}.fhir.json`;
    const saved = await save(services, name, bytes, 'application/fhir+json');
    if (saved) services.need().noteExport([clientId], toldEnglish.trail.exports.fhir, services.doing());
    return { saved };
  },
  'exchange.csv': async (services, { clientId }) => {
    const caseload = services.need();
    const ids = clientId === null ? caseload.clients().map((client) => client.id) : [clientId];
    const records = ids.map((id) => caseload.record(id));
    const name = clientId === null ? 'all-clients' : plain(records[0]!.client.code);
    const bytes = csvBytes(measuresCsv(records, await clinicRulesSoon(services)));
    const saved = await save(services, `measures-${name}-${services.today()}.csv`, bytes, 'text/csv');
    if (saved) services.need().noteExport(ids, toldEnglish.trail.exports.csv, services.doing());
    return { saved };
  },
  'exchange.dictionary': async (services) => {
    services.need();
    return { saved: await save(services, 'measures-explained.csv', csvBytes(dictionaryCsv()), 'text/csv') };
  },
};
