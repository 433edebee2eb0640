/**
 * One client as an HL7 FHIR R4 Bundle (release 4.0.1): who it is, visits, measures, screen, goals, programs, issued
 * pages. Signatures and personal lines are never in it; names, the client's own words and page contents only when
 * they were asked for.
 */
import type { Bundle, DocumentReference, Encounter, FhirResource, Patient } from './fhir-types.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { pageKinds } from '../page-choices.ts';
import { concept, refer, systems, urn } from './fhir-codes.ts';
import { observationOf } from './fhir-observations.ts';
import { carePlans, goalResources } from './fhir-plan.ts';
import { screenResponses } from './fhir-screen.ts';
import { exchangeValues } from './values.ts';

export interface BundleOptions {
  /** The client's name; without it the code alone says who it is. */
  withName: boolean;
  /** Notes, the client's reasons, talks about safety. */
  withPersonalText: boolean;
  /** The issued pages' bytes, base64. */
  withDocuments: boolean;
}

/** A kept PDF, as a document reference needs it. */
export interface KeptPdf {
  bytes: number;
  /** SHA-1 of the bytes, base64: the hash that FHIR R4 asks for. */
  sha1: string;
  /** The bytes, base64; null when they stay. */
  data: string | null;
}

/** What is not in the record and cannot be made by a pure function. */
export interface BundleHelp {
  /** ISO 8601 instant of the export. */
  now: string;
  bundleId: string;
  /** A UUID for a name, the same each time, so that a second export updates instead of doubling. */
  idOf: (name: string) => string;
  pdf: (blob: string) => KeptPdf | null;
}

const pageName = new Map<string, string>(pageKinds.map(({ kind, label }) => [kind, label]));

export function clientBundle(
  record: ClientRecord,
  rules: Pick<RulesInUse, 'intake' | 'redFlagTable'>,
  options: BundleOptions,
  help: BundleHelp,
): Bundle {
  const visits = new Set(record.visits.map((visit) => visit.id));
  const context = { clientId: record.client.id, visits, idOf: help.idOf };
  const resources: FhirResource[] = [
    patientOf(record, options),
    ...record.visits.map((visit): Encounter => encounterOf(visit, record.client.id)),
    ...exchangeValues(record, rules).map((value) => observationOf(value, context)),
    ...screenResponses(record, rules, options, help.idOf),
    ...goalResources(record, options),
    ...carePlans(record, options),
    ...documents(record, options, help),
  ];
  return {
    resourceType: 'Bundle',
    id: help.bundleId,
    type: 'collection',
    timestamp: help.now,
    entry: resources.map((resource) => ({ fullUrl: urn(resource.id!), resource })),
  };
}

function patientOf({ client }: ClientRecord, { withName }: BundleOptions): Patient {
  return {
    resourceType: 'Patient',
    id: client.id,
    identifier: [{ system: systems.clientCode, value: client.code }],
    active: client.archivedOn === null,
    ...(withName ? { name: [{ text: client.name }] } : {}),
    ...(client.birthYear === null ? {} : { birthDate: String(client.birthYear) }),
    communication: [{ language: { coding: [{ system: 'urn:ietf:bcp:47', code: client.language }] }, preferred: true }],
  };
}

const encounterOf = (visit: ClientRecord['visits'][number], clientId: string): Encounter => ({
  resourceType: 'Encounter',
  id: visit.id,
  status: 'finished',
  class: { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'AMB', display: 'ambulatory' },
  type: [{ text: visit.kind === 'first' ? 'first visit' : visit.kind }],
  subject: refer(clientId),
  period: { start: visit.date, end: visit.date },
  ...(visit.minutes === null
    ? {}
    : { length: { value: visit.minutes, unit: 'min', system: 'http://unitsofmeasure.org', code: 'min' } }),
});

function documents(record: ClientRecord, options: BundleOptions, help: BundleHelp): DocumentReference[] {
  return record.issuedPages.flatMap((page): DocumentReference[] => {
    const pdf = page.pdf === null ? null : help.pdf(page.pdf);
    if (!pdf) return [];
    const name = pageName.get(page.kind) ?? page.kind;
    return [
      {
        resourceType: 'DocumentReference',
        id: page.id,
        status: 'current',
        docStatus: 'final',
        type: concept(systems.page, page.kind, name),
        subject: refer(record.client.id),
        date: page.issuedAt,
        content: [
          {
            attachment: {
              contentType: 'application/pdf',
              title: `${name}, ${page.issuedAt.slice(0, 10)}`,
              creation: page.issuedAt,
              size: pdf.bytes,
              hash: pdf.sha1,
              ...(options.withDocuments && pdf.data ? { data: pdf.data } : {}),
            },
          },
        ],
        ...(record.visits.some((visit) => visit.id === page.visitId)
          ? { context: { encounter: [refer(page.visitId)] } }
          : {}),
      },
    ];
  });
}
