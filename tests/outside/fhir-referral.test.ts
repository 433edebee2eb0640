/**
 * Referrals that other systems wrote. The files are HL7 FHIR R4 (4.0.1) by the published definitions in the npm package
 * fhir 4.12.0; the people in them are invented. What must be read of each was written before the reader.
 */
import { Fhir } from 'fhir';
import { expect, test } from 'vitest';
import { rulesInUse } from '../../db/rules/in-use.ts';
import { Client } from '../../db/types/client.ts';
import { newClient } from '../../renderer/logic/caseload/new-client.ts';
import { clientBundle } from '../../renderer/logic/exchange/bundle.ts';
import { readReferral, type Referral } from '../../renderer/logic/exchange/read-referral.ts';
import { record } from '../logic/pages/record.ts';

const rules = rulesInUse(null);
const kinds = new Set(rules.vocabulary.diagnoses.map(({ code }) => code));
const subject = { reference: 'Patient/p' };
const clinical = (code: string) => ({
  coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code }],
});
const sure = (code: string) => ({
  coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-ver-status', code }],
});

const referral = {
  resourceType: 'Bundle',
  type: 'collection',
  entry: [
    {
      resourceType: 'Patient',
      name: [
        { use: 'old', family: 'Thistlewood', given: ['Perpetua'] },
        { use: 'official', family: 'Quillfeather', given: ['Perpetua', 'Ann'] },
      ],
      birthDate: '1961-07-14',
      communication: [{ language: { coding: [{ system: 'urn:ietf:bcp:47', code: 'es-US' }] }, preferred: true }],
      generalPractitioner: [{ display: 'Dr. Fennimore Oakes' }],
    },
    {
      resourceType: 'Condition',
      clinicalStatus: clinical('active'),
      code: {
        coding: [
          { system: 'http://hl7.org/fhir/sid/icd-10-cm', code: 'I69.351', display: 'Hemiplegia following infarction' },
        ],
        text: 'Weakness of the right arm after a stroke',
      },
      onsetDateTime: '2026-02-03T08:00:00Z',
      subject,
    },
    {
      resourceType: 'Condition',
      clinicalStatus: clinical('resolved'),
      code: { coding: [{ system: 'http://snomed.info/sct', code: '263102004', display: 'Fracture of wrist' }] },
      bodySite: [{ text: 'Left wrist' }],
      onsetDateTime: '2019',
      subject,
    },
    {
      resourceType: 'Condition',
      clinicalStatus: clinical('active'),
      verificationStatus: sure('refuted'),
      code: { text: 'Parkinson’s disease' },
      subject,
    },
    {
      resourceType: 'AllergyIntolerance',
      clinicalStatus: {
        coding: [{ system: 'http://terminology.hl7.org/CodeSystem/allergyintolerance-clinical', code: 'active' }],
      },
      code: { text: 'Latex' },
      patient: subject,
    },
    {
      resourceType: 'MedicationStatement',
      status: 'active',
      medicationCodeableConcept: { text: 'Baclofen 10 mg' },
      dosage: [{ text: 'three times a day', timing: { repeat: { timeOfDay: ['20:00:00', '08:00:00', '14:00:00'] } } }],
      subject,
    },
    { resourceType: 'MedicationStatement', status: 'stopped', medicationCodeableConcept: { text: 'Aspirin' }, subject },
    {
      resourceType: 'ServiceRequest',
      status: 'active',
      intent: 'order',
      requester: { display: 'Dr. Ludmila Featherstone' },
      reasonCode: [{ text: 'Cannot fill in forms at work' }],
      subject,
    },
    {
      resourceType: 'Goal',
      lifecycleStatus: 'proposed',
      description: { text: 'Write a shopping list that a neighbor can read' },
      subject,
    },
    {
      resourceType: 'Observation',
      status: 'final',
      code: { text: 'Grip strength, right' },
      valueQuantity: { value: 18, unit: 'kg', system: 'http://unitsofmeasure.org', code: 'kg' },
      effectiveDateTime: '2026-03-04',
      subject,
    },
    {
      resourceType: 'Immunization',
      status: 'completed',
      vaccineCode: { text: 'x' },
      patient: subject,
      occurrenceString: 'y',
    },
  ].map((resource) => ({ resource })),
};
const read = (file: unknown) => readReferral(typeof file === 'string' ? file : JSON.stringify(file), kinds);

test('the file itself is FHIR R4', () => {
  const { messages } = new Fhir().validate(referral, { errorOnUnexpected: true });
  expect(messages.filter(({ severity }) => severity === 'error')).toEqual([]);
});

test('person, diagnoses, allergies, medicines, referrer, goals and observations come as given', () => {
  expect(read(referral)).toEqual({
    name: 'Perpetua Ann Quillfeather',
    facts: {
      birthYear: 1961,
      language: 'es',
      diagnoses: [
        { kind: null, text: 'Weakness of the right arm after a stroke', onset: '2026-02-03', side: 'right' },
        { kind: null, text: 'Fracture of wrist (resolved, 2019)', onset: null, side: 'left' },
      ],
      precautions: [{ code: null, text: 'Latex' }],
      medicines: [{ name: 'Baclofen 10 mg', times: ['08:00', '14:00', '20:00'], note: 'three times a day' }],
      referrer: 'Dr. Ludmila Featherstone',
    },
    reasons: ['Cannot fill in forms at work'],
    goals: ['Write a shopping list that a neighbor can read'],
    observations: ['Grip strength, right: 18 kg (2026-03-04)'],
    leftOut: [
      { type: 'Condition', count: 1 },
      { type: 'MedicationStatement', count: 1 },
      { type: 'Immunization', count: 1 },
    ],
  });
});

test('a file of our own brings back who it is and the diagnoses by their kinds, never its measures', () => {
  const full = record(() => {});
  const file = clientBundle(
    full,
    rules,
    { withName: true, withPersonalText: true },
    {
      now: '2026-05-04T10:00:00.000Z',
      bundleId: '7b1f0f5e-2f6c-4a51-9d1e-00000000000f',
      idOf: (name) => `7b1f0f5e-2f6c-4a51-9d1e-${name.length.toString().padStart(12, '0')}`,
      files: () => null,
    },
  );
  const answer = read(file) as Referral;
  expect(answer.name).toBe(full.client.name);
  expect(answer.facts.birthYear).toBe(full.client.birthYear);
  const known = full.client.diagnoses.filter(({ kind }) => kind !== null);
  expect(answer.facts.diagnoses.map(({ kind }) => kind)).toEqual(known.map(({ kind }) => kind));
  expect(answer.observations).toEqual([]);
});

test('whatever comes in is a client that can be stored', () => {
  const long = 'x'.repeat(5000);
  const many = Array.from({ length: 90 }, () => ({
    resource: { resourceType: 'Condition', code: { text: `${long}\n\u0007y` }, onsetDateTime: 'soon', subject },
  }));
  const answer = read({ ...referral, entry: [...referral.entry, ...many] }) as Referral;
  const client = {
    ...newClient(crypto.randomUUID(), answer.name, 'C-1'),
    ...answer.facts,
    at: '2026-05-04T10:00:00Z',
    by: 'QM',
  };
  expect(Client.safeParse(client).error).toBeUndefined();
  expect(answer.facts.diagnoses).toHaveLength(20);
  expect(answer.leftOut[0]).toEqual({ type: 'Condition', count: 73 });
});

test.each([
  ['{', 'not-fhir'],
  ['[]', 'not-fhir'],
  ['{"resourceType":"Patient","birthDate":7}', 'not-fhir'],
  ['{"resourceType":"Bundle","type":"collection"}', 'no-patient'],
  [
    '{"resourceType":"Bundle","entry":[{"resource":{"resourceType":"Patient"}},{"resource":{"resourceType":"Patient"}}]}',
    'several-patients',
  ],
])('%s is refused: %s', (file, problem) => expect(read(file)).toBe(problem));

test('a single Patient resource, with a byte order mark, is enough', () =>
  expect(read('\uFEFF{"resourceType":"Patient","name":[{"text":"Ignatius Plover"}]}')).toMatchObject({
    name: 'Ignatius Plover',
  }));
