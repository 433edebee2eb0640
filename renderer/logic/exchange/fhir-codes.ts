/**
 * Codes of the FHIR export. No published code fits these measures one to one, so none is borrowed: all come from code
 * systems of our own, explained by the data dictionary. Units are UCUM only where UCUM has them.
 */
import type { CodeableConcept, Quantity, Reference } from './fhir-types.ts';
import { nameOf } from './dictionary.ts';

/** Our own code systems and identifiers, as URNs that no server has to answer. */
export const systems = {
  measure: 'urn:x-fairhand:code:measure',
  diagnosis: 'urn:x-fairhand:code:diagnosis',
  item: 'urn:x-fairhand:code:screening-item',
  flag: 'urn:x-fairhand:code:red-flag',
  task: 'urn:x-fairhand:code:writing-task',
  lineKind: 'urn:x-fairhand:code:program-line',
  page: 'urn:x-fairhand:code:page',
  clientCode: 'urn:x-fairhand:client-code',
  intake: 'urn:x-fairhand:questionnaire:intake-screen',
  redFlags: 'urn:x-fairhand:questionnaire:red-flags',
} as const;

const ucum = 'http://unitsofmeasure.org';

/** Our units in UCUM (the Unified Code for Units of Measure); others are words only. */
const ucumOf: Readonly<Record<string, string>> = {
  mm: 'mm',
  '%': '%',
  deg: 'deg',
  s: 's',
  min: 'min',
  '1/min': '/min',
  'mm/s': 'mm/s',
  Hz: 'Hz',
  '%/min': '%/min',
  count: '1',
  '1': '1',
};

/** @param text shown instead of the code's own name */
export const concept = (system: string, code: string, text: string): CodeableConcept => ({
  coding: [{ system, code, display: text }],
  text,
});

export const measureConcept = (code: string): CodeableConcept => concept(systems.measure, code, nameOf(code));

export function quantity(value: number, unit: string): Quantity {
  const code = ucumOf[unit];
  const plain = { value: Number(value.toPrecision(6)), unit };
  return code === undefined ? plain : { ...plain, system: ucum, code };
}

export const urn = (id: string): string => `urn:uuid:${id}`;
export const refer = (id: string): Reference => ({ reference: urn(id) });
