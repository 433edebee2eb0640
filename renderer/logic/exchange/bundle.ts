/**
 * One client as an HL7 FHIR R4 Bundle (release 4.0.1): who it is, diagnoses as given, visits, measures, screen, goals,
 * programs, issued pages and scans. Signatures and personal lines are never in it; names, the client's own words and the bytes of pages
 * only when they were asked for.
 */
import type { Bundle, Condition, Encounter, FhirResource, Patient } from './fhir-types.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import { concept, refer, systems, urn } from './fhir-codes.ts';
import { documents, type KeptFiles } from './fhir-documents.ts';
import { observationOf } from './fhir-observations.ts';
import { carePlans, goalResources } from './fhir-plan.ts';
import { screenResponses } from './fhir-screen.ts';
import { exchangeValues } from './values.ts';

export interface BundleOptions {
  /** The client's name; without it the code alone says who it is. */
  withName: boolean;
  /** Notes, the client's reasons, talks about safety. */
  withPersonalText: boolean;
}

/** What is not in the record and cannot be made by a pure function. */
export interface BundleHelp {
  /** ISO 8601 instant of the export. */
  now: string;
  bundleId: string;
  /** A UUID for a name, the same each time, so that a second export updates instead of doubling. */
  idOf: (name: string) => string;
  files: KeptFiles;
}

export function clientBundle(
  record: ClientRecord,
  rules: Pick<RulesInUse, 'intake' | 'thresholds' | 'redFlagTable'>,
  options: BundleOptions,
  help: BundleHelp,
): Bundle {
  const visits = new Set(record.visits.map((visit) => visit.id));
  const context = { clientId: record.client.id, visits, idOf: help.idOf };
  const resources: FhirResource[] = [
    patientOf(record, options),
    ...conditionsOf(record, help),
    ...record.visits.map((visit): Encounter => encounterOf(visit, record.client.id)),
    ...exchangeValues(record, rules).map((value) => observationOf(value, context)),
    ...screenResponses(record, rules, options, help.idOf),
    ...goalResources(record, options),
    ...carePlans(record, options),
    ...documents(record, help.files),
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

const sideWords = { right: 'right side', left: 'left side', both: 'both sides', none: '' } as const;

/** Diagnoses as the therapist was given them; nothing is diagnosed here, so none is said to be verified. */
const conditionsOf = ({ client }: ClientRecord, { idOf }: BundleHelp): Condition[] =>
  client.diagnoses
    .filter(({ kind, text }) => kind !== null || text.trim() !== '')
    .map((diagnosis, i): Condition => {
      const { kind, text, onset, side } = diagnosis;
      const words = text.trim() || kind!.replaceAll('-', ' ');
      return {
        resourceType: 'Condition',
        id: idOf(`diagnosis ${i} ${kind ?? words}`),
        clinicalStatus: {
          coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'active' }],
        },
        code:
          kind === null
            ? { text: words }
            : { ...concept(systems.diagnosis, kind, kind.replaceAll('-', ' ')), text: words },
        ...(sideWords[side] ? { bodySite: [{ text: sideWords[side] }] } : {}),
        subject: refer(client.id),
        ...(onset === null ? {} : { onsetDateTime: onset }),
        note: [{ text: 'As given to the therapist.' }],
      };
    });

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
