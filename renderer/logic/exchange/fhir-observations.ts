import type { Device, Observation, ObservationComponent } from './fhir-types.ts';
import type { Sample } from '../../../db/types/sample.ts';
import { concept, measureConcept, quantity, refer, systems } from './fhir-codes.ts';
import type { ExchangeValue } from './exchange-value.ts';

/** What an observation needs besides its value. */
export interface ObservationContext {
  clientId: string;
  /** Visits that stand in the bundle. */
  visits: ReadonlySet<string>;
  /** A stable id for each name: the same record always gives the same ids. */
  idOf: (name: string) => string;
}

/** Every value as an observation with unit, interval, method and the conditions of writing. */
export function observationOf(value: ExchangeValue, { clientId, visits, idOf }: ObservationContext): Observation {
  const components: ObservationComponent[] = [];
  if (value.low !== null) components.push(component('interval-low', lower(value), value.low, value));
  if (value.high !== null) components.push(component('interval-high', upper(value), value.high, value));
  if (value.n !== null)
    components.push({
      code: concept(systems.measure, 'n', 'Readings, words or letters that it rests on'),
      valueInteger: value.n,
    });
  // A verdict that compares nothing has its words as value.
  const notes = [
    value.value === null ? '' : value.about,
    value.who && `by ${value.who}`,
    value.sample ? circumstances(value.sample) : '',
  ];
  return {
    resourceType: 'Observation',
    id: idOf([value.factId, value.code, value.who === 'ruler' ? 'ruler' : ''].join(' ')),
    status: value.corrected ? 'amended' : 'final',
    code: measureConcept(value.code),
    subject: refer(clientId),
    ...(value.visitId && visits.has(value.visitId) ? { encounter: refer(value.visitId) } : {}),
    effectiveDateTime: value.at ?? value.day,
    ...(value.value === null ? { valueString: value.about } : valueOf(value.value, value.unit)),
    ...(value.method ? { method: { text: [value.method, value.version].filter(Boolean).join('; version ') } } : {}),
    ...(value.device ? deviceOf(value.device) : {}),
    ...(components.length > 0 ? { component: components } : {}),
    note: notes.filter(Boolean).map((text) => ({ text })),
  };
}

/** The pen and its surface, told inside the observation: they are no device of a register. */
function deviceOf(name: string): Pick<Observation, 'contained' | 'device'> {
  const pen: Device = { resourceType: 'Device', id: 'pen', deviceName: [{ name, type: 'user-friendly-name' }] };
  return { contained: [pen], device: { reference: '#pen' } };
}

/** The interval of a change has its own width, told in the method. */
const lower = ({ code }: ExchangeValue): string =>
  code === 'change' ? 'Lower end of the interval' : 'Lower end of the 95 % interval';
const upper = ({ code }: ExchangeValue): string =>
  code === 'change' ? 'Upper end of the interval' : 'Upper end of the 95 % interval';

/** Grades, levels and ratings are whole numbers; all else has a unit. */
const valueOf = (value: number, unit: string): Pick<Observation, 'valueInteger' | 'valueQuantity'> =>
  unit === 'level' || unit === '0 to 3' || unit === '0 to 10'
    ? { valueInteger: value }
    : { valueQuantity: quantity(value, unit) };

const component = (code: string, name: string, number: number, { unit }: ExchangeValue): ObservationComponent => ({
  code: concept(systems.measure, code, name),
  valueQuantity: quantity(number, unit),
});

/** Under what it was written, as far as it was noted; never what was written. */
function circumstances({ task, conditions: c, baseline }: Sample): string {
  const parts = [
    `task: ${task.kind.replaceAll('-', ' ')}${baseline ? ', baseline' : ''}`,
    c.hand && `${c.hand} hand`,
    c.pen && `pen: ${c.pen}`,
    c.paper && `paper: ${c.paper}`,
    c.time && `at ${c.time}`,
    c.doseState && c.doseState !== 'none' && `medicine ${c.doseState}`,
    c.minutesSinceDose !== null && `${c.minutesSinceDose} min after the dose`,
    c.cue && `cue: ${c.cue}`,
    c.grip && `grip: ${c.grip}`,
    c.armSupport && `arm: ${c.armSupport}`,
  ];
  return parts.filter(Boolean).join('; ');
}
