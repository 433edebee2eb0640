/**
 * What another record system says of one client, read from an HL7 FHIR R4 (release 4.0.1) file: facts of a referral,
 * never measurements. Nothing is taken for certain: diagnoses come as given, and the therapist sees all before it is kept.
 */
import type { Client, Diagnosis, Medicine, Precaution } from '../../../db/types/client.ts';
import { ClockTime, IsoDate, Language, type Side } from '../../../db/types/common.ts';
import { systems } from './fhir-codes.ts';
import * as shape from './referral-shapes.ts';
import type { Concept, Name, Resource } from './referral-shapes.ts';

/** Larger files are refused before they are read, bytes. */
export const MOST_REFERRAL_BYTES = 20_000_000;

export interface Referral {
  /** Empty where the file tells none. */
  name: string;
  facts: Pick<Client, 'birthYear' | 'diagnoses' | 'precautions' | 'medicines' | 'referrer'> &
    Partial<Pick<Client, 'language'>>;
  /** What has no field of its own, one line each: why the client is sent, goals, observations. */
  reasons: string[];
  goals: string[];
  observations: string[];
  /** What was in the file and does not come in, by FHIR type, the most first. */
  leftOut: { type: string; count: number }[];
}

export type ReferralProblem = 'not-fhir' | 'no-patient' | 'several-patients';

/** Entered in error, refuted or no longer so: not a fact of this client today. */
const WITHDRAWN = new Set(['entered-in-error', 'refuted', 'stopped', 'cancelled', 'not-taken', 'revoked', 'rejected']);

const wordsOf = (concept: Concept | undefined): string =>
  concept?.text || concept?.coding?.find(({ display }) => display)?.display || concept?.coding?.[0]?.code || '';
const codeOf = (concept: Concept | undefined): string => concept?.coding?.[0]?.code ?? '';
const cut = (text: string, most: number): string => (text.length <= most ? text : `${text.slice(0, most - 1)}…`);
const line = (text: string): string => cut(text, 300);
const dayOf = (instant: string | undefined): string => instant?.slice(0, 10) ?? '';

function sideOf(places: readonly Concept[], words: string): Side {
  const text = [...places.map(wordsOf), words].join(' ').toLowerCase();
  const [left, right] = [/\bleft\b/.test(text), /\bright\b/.test(text)];
  if (/\b(both|bilateral)\b/.test(text) || (left && right)) return 'both';
  return left ? 'left' : right ? 'right' : 'none';
}

/**
 * @param text the file
 * @param kinds diagnosis codes of the rule table: a file of our own names them; other systems' codes come as words
 */
export function readReferral(text: string, kinds: ReadonlySet<string>): Referral | ReferralProblem {
  const resources = resourcesOf(text);
  if (!resources) return 'not-fhir';
  const patients = resources.filter(({ resourceType }) => resourceType === 'Patient');
  if (patients.length === 0) return 'no-patient';
  if (patients.length > 1) return 'several-patients';
  const patient = shape.Patient.safeParse(patients[0]);
  if (!patient.success) return 'not-fhir';
  const { data } = patient;
  const speaks = data.communication.find(({ preferred }) => preferred) ?? data.communication[0];
  const language = Language.safeParse(codeOf(speaks?.language).slice(0, 2).toLowerCase());
  const referral: Referral = {
    name: cut(nameOf(data.name), 120),
    facts: {
      birthYear: data.birthDate ? Number(data.birthDate.slice(0, 4)) : null,
      diagnoses: [],
      precautions: [],
      medicines: [],
      referrer: line(data.generalPractitioner[0]?.display ?? ''),
      ...(language.success ? { language: language.data } : {}),
    },
    reasons: [],
    goals: [],
    observations: [],
    leftOut: [],
  };
  const left = new Map<string, number>();
  for (const resource of resources) {
    if (resource.resourceType === 'Patient' || take(referral, resource, kinds)) continue;
    left.set(resource.resourceType, (left.get(resource.resourceType) ?? 0) + 1);
  }
  referral.leftOut = [...left].map(([type, count]) => ({ type, count })).sort((a, b) => b.count - a.count);
  return referral;
}

function resourcesOf(text: string): Resource[] | null {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return null;
  }
  const bundle = shape.Bundle.safeParse(json);
  if (bundle.success) return bundle.data.entry.flatMap(({ resource }) => resource ?? []);
  const single = shape.Resource.safeParse(json);
  return single.success ? [single.data] : null;
}

function nameOf(names: readonly Name[]): string {
  const name = names.find(({ use }) => use === 'official') ?? names.find(({ use }) => use !== 'old') ?? names[0];
  return name ? name.text || [...(name.given ?? []), name.family ?? ''].filter(Boolean).join(' ') : '';
}

type Take = (referral: Referral, resource: unknown, kinds: ReadonlySet<string>) => boolean;

const take = (referral: Referral, resource: Resource, kinds: ReadonlySet<string>): boolean =>
  takers[resource.resourceType]?.(referral, resource, kinds) ?? false;

/** Puts one into a list that has room for it. */
function add<T>(list: T[], most: number, one: T | null): boolean {
  if (one === null || list.length >= most) return false;
  list.push(one);
  return true;
}

const takers: Readonly<Record<string, Take>> = {
  Condition: ({ facts }, resource, kinds) => add(facts.diagnoses, 20, diagnosisOf(resource, kinds)),
  AllergyIntolerance: ({ facts }, resource) => add(facts.precautions, 40, allergyOf(resource)),
  MedicationStatement: ({ facts }, resource) => add(facts.medicines, 40, medicineOf(resource)),
  MedicationRequest: ({ facts }, resource) => add(facts.medicines, 40, medicineOf(resource)),
  ServiceRequest: ({ facts, reasons }, resource) => {
    const { data } = shape.Service.safeParse(resource);
    if (!data || WITHDRAWN.has(data.status ?? '')) return false;
    if (data.requester?.display) facts.referrer = line(data.requester.display);
    reasons.push(...data.reasonCode.map(wordsOf).filter(Boolean).map(line));
    return true;
  },
  Goal: ({ goals }, resource) => {
    const { data } = shape.Goal.safeParse(resource);
    const words = wordsOf(data?.description);
    return add(goals, 40, data && words && !WITHDRAWN.has(data.lifecycleStatus ?? '') ? line(words) : null);
  },
  Observation: ({ observations }, resource) => add(observations, 60, observationLine(resource)),
};

function diagnosisOf(resource: unknown, kinds: ReadonlySet<string>): Diagnosis | null {
  const { data } = shape.Condition.safeParse(resource);
  const words = wordsOf(data?.code);
  if (!data || !words || WITHDRAWN.has(codeOf(data.verificationStatus))) return null;
  const ours = data.code?.coding?.find(({ system, code }) => system === systems.diagnosis && kinds.has(code ?? ''));
  const status = codeOf(data.clinicalStatus);
  const onset = IsoDate.safeParse(dayOf(data.onsetDateTime));
  const about = [
    status && status !== 'active' ? status : '',
    data.onsetDateTime && !onset.success ? data.onsetDateTime : '',
  ].filter(Boolean);
  return {
    kind: ours?.code ?? null,
    text: line(about.length ? `${words} (${about.join(', ')})` : words),
    onset: onset.success ? onset.data : null,
    side: sideOf(data.bodySite, words),
  };
}

function allergyOf(resource: unknown): Precaution | null {
  const { data } = shape.Allergy.safeParse(resource);
  const words = wordsOf(data?.code);
  return data && words && !WITHDRAWN.has(codeOf(data.verificationStatus)) ? { code: null, text: line(words) } : null;
}

function medicineOf(resource: unknown): Medicine | null {
  const { data } = shape.Medication.safeParse(resource);
  const name = wordsOf(data?.medicationCodeableConcept) || data?.medicationReference?.display;
  if (!data || !name || WITHDRAWN.has(data.status ?? '')) return null;
  const doses = [...data.dosage, ...data.dosageInstruction];
  const times = doses.flatMap(({ timing }) => timing?.repeat?.timeOfDay ?? []).map((time) => time.slice(0, 5));
  return {
    name: line(name),
    times: [...new Set(times.filter((time) => ClockTime.safeParse(time).success))].sort().slice(0, 12),
    note: line(doses.flatMap(({ text }) => text || []).join('; ')),
  };
}

/** "Grip strength: 18 kg (2026-03-04)"; measures of our own export are not read back: a hand-over keeps them whole. */
function observationLine(resource: unknown): string | null {
  const { data } = shape.Observation.safeParse(resource);
  if (!data || WITHDRAWN.has(data.status ?? '')) return null;
  if (data.code.coding?.some(({ system }) => system === systems.measure)) return null;
  const { valueQuantity: quantity } = data;
  const value =
    quantity?.value === undefined
      ? (data.valueString ?? data.valueInteger ?? data.valueBoolean ?? wordsOf(data.valueCodeableConcept))
      : [quantity.value, quantity.unit].filter((part) => part !== undefined).join(' ');
  const name = wordsOf(data.code);
  if (!name || value === '') return null;
  const day = dayOf(data.effectiveDateTime);
  return line(`${name}: ${String(value)}${day ? ` (${day})` : ''}`);
}
