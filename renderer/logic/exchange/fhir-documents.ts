/** Issued pages and scans as document references: size and hash always, the bytes only when they were asked for. */
import type { DocumentReference } from './fhir-types.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { pageKinds } from '../pages/sheet/page-choices.ts';
import { concept, refer, systems } from './fhir-codes.ts';

/** A kept file, as a document reference needs it. */
interface KeptFile {
  bytes: number;
  /** SHA-1 of the bytes, base64: the hash that FHIR R4 asks for. */
  sha1: string;
  /** The bytes, base64; null when they stay. */
  data: string | null;
}

/** A kept file by its blob; null when it is not there. */
export type KeptFiles = (blob: string, kind: 'page' | 'scan') => KeptFile | null;

interface Document {
  id: string;
  visitId: string;
  /** ISO 8601 instant. */
  at: string;
  code: string;
  name: string;
  title: string;
  mime: string;
  file: KeptFile;
}

const pageName = new Map<string, string>(pageKinds.map(({ kind, label }) => [kind, label]));

export function documents(record: ClientRecord, files: KeptFiles): DocumentReference[] {
  return [...issuedPages(record, files), ...scans(record, files)].map((one) => ({
    resourceType: 'DocumentReference',
    id: one.id,
    status: 'current',
    docStatus: 'final',
    type: concept(systems.page, one.code, one.name),
    subject: refer(record.client.id),
    date: one.at,
    content: [
      {
        attachment: {
          contentType: one.mime,
          title: one.title,
          creation: one.at,
          size: one.file.bytes,
          hash: one.file.sha1,
          ...(one.file.data === null ? {} : { data: one.file.data }),
        },
      },
    ],
    ...(record.visits.some((visit) => visit.id === one.visitId)
      ? { context: { encounter: [refer(one.visitId)] } }
      : {}),
  }));
}

const issuedPages = (record: ClientRecord, files: KeptFiles): Document[] =>
  record.issuedPages.flatMap((page): Document[] => {
    const file = page.pdf === null ? null : files(page.pdf, 'page');
    if (!file) return [];
    const name = pageName.get(page.kind) ?? page.kind;
    const title = `${name}, ${page.issuedAt.slice(0, 10)}`;
    const { id, visitId, issuedAt: at, kind: code } = page;
    return [{ id, visitId, at, code, name, title, mime: 'application/pdf', file }];
  });

/** Scanned pages of writing samples; signatures and personal lines are in no export. */
const scans = (record: ClientRecord, files: KeptFiles): Document[] =>
  record.samples
    .filter(({ task }) => task.kind !== 'signature' && task.kind !== 'personal')
    .flatMap((sample) =>
      record.samplePages
        .filter((page) => page.sampleId === sample.id)
        .sort((a, b) => a.order - b.order)
        .flatMap((page, i): Document[] => {
          const file = files(page.blob, 'scan');
          if (!file) return [];
          const name = 'Scan of a writing sample';
          const title = `${name}, ${sample.takenAt.slice(0, 10)}, page ${i + 1}`;
          const { id, mime } = page;
          return [{ id, visitId: sample.visitId, at: sample.takenAt, code: 'scan', name, title, mime, file }];
        }),
    );
