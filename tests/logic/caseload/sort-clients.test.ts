import { expect, test } from 'vitest';
import { sortClients } from '../../../renderer/logic/caseload/sort-clients.ts';

const client = (name: string, visits: number, lastVisit: string | null, code = name) => ({
  name,
  code,
  diagnoses: '',
  visits,
  lastVisit,
});
const clients = [
  client('Öst', 3, '2026-01-02', 'C-10'),
  client('anders', 12, null, 'C-9'),
  client('Zett', 3, '2026-03-01', 'C-2'),
];
const names = (...by: Parameters<typeof sortClients> extends [unknown, ...infer Rest] ? Rest : never) =>
  sortClients(clients, ...by).map((one) => one.name);

test('names go by the words of the language, without regard to case and accents', () => {
  expect(names('name', false)).toEqual(['anders', 'Öst', 'Zett']);
  expect(names('name', true)).toEqual(['Zett', 'Öst', 'anders']);
});
test('numbers inside codes count as numbers', () => {
  expect(names('code', false)).toEqual(['Zett', 'anders', 'Öst']);
});
test('visits by how many, equal ones by name', () => {
  expect(names('visits', true)).toEqual(['anders', 'Öst', 'Zett']);
});
test('who has no visit yet comes last, whichever way', () => {
  expect(names('lastVisit', false).at(-1)).toBe('anders');
  expect(names('lastVisit', true).at(-1)).toBe('anders');
});
test('the list given is left as it was', () => {
  const frozen = Object.freeze([...clients]);
  sortClients(frozen, 'name', true);
  expect(frozen.map((one) => one.name)).toEqual(['Öst', 'anders', 'Zett']);
});
