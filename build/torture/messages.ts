/**
 * Random messages against the contract: whole, spoiled and meaningless ones. Only declared answers may come back, and
 * neither a refusal nor a request that only reads may change a row.
 */
import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { z } from 'zod';
import { openCaseload, type Caseload } from '../../db/index.ts';
import { contract, type RequestName } from '../../electron/contract/index.ts';
import { messages } from '../../electron/contract/messages.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import type { ShellPort } from '../../electron/shell-port.ts';
import { answer, client, page, sample, visit } from '../../tests/db/plain-facts.ts';
import { freshCaseload, NOW } from './children.ts';
import { mutatedJson, mutatedText, nastyValue } from './fuzz/mutate.ts';
import { pick, seeded } from './random.ts';

type Random = () => number;
type Schema = Record<string, unknown>;

/** Input of each request as JSON schema, from which whole inputs are made. */
const schemas = Object.fromEntries(
  Object.entries(contract).map(([name, { input }]) => [
    name,
    z.toJSONSchema(input, { unrepresentable: 'any', io: 'input' }) as Schema,
  ]),
);
export const requestNames = Object.keys(contract) as RequestName[];

const TEXTS = ['', 'a', 'Milk and bread', 'MK', 'grasp', 'right', '<b>x</b>', 'x'.repeat(500)];

/** Strings that a pattern or format asks for. */
function text(schema: Schema, random: Random, ids: readonly string[]): string {
  const format = schema['format'];
  const pattern = String(schema['pattern'] ?? '');
  if (format === 'uuid' || pattern.includes('0-9a-f')) return random() < 0.7 ? pick(random, ids) : randomUUID();
  if (format === 'date-time' || /T.*Z/.test(pattern)) return NOW;
  if (format === 'date' || pattern.includes('\\d{4}')) return pick(random, ['2026-03-04', '2026-02-30', '1999-12-31']);
  if (/\\d.*:/.test(pattern)) return '08:30';
  const longest = Number(schema['maxLength'] ?? 2000);
  return pick(random, TEXTS).slice(0, longest);
}

/** A value that fits the schema as far as JSON schema can say it. */
export function whole(schema: Schema, random: Random, ids: readonly string[], root: Schema = schema): unknown {
  const inner = (each: unknown): unknown => whole(each as Schema, random, ids, root);
  const ref = schema['$ref'];
  if (typeof ref === 'string') {
    if (ref === '#') return null;
    return inner(
      ref
        .split('/')
        .slice(1)
        .reduce((at, step) => (at as Schema)[step], root as unknown),
    );
  }
  if ('const' in schema) return schema['const'];
  if (Array.isArray(schema['enum'])) return pick(random, schema['enum'] as unknown[]);
  const choices = (schema['anyOf'] ?? schema['oneOf']) as Schema[] | undefined;
  if (choices) return inner(pick(random, choices));
  if (Array.isArray(schema['allOf'])) return Object.assign({}, ...(schema['allOf'] as Schema[]).map(inner));
  const type = Array.isArray(schema['type']) ? pick(random, schema['type'] as string[]) : schema['type'];
  const low = Number(schema['minimum'] ?? schema['exclusiveMinimum'] ?? 0);
  const high = Math.min(Number(schema['maximum'] ?? low + 100), low + 1e6);
  switch (type) {
    case 'string':
      return text(schema, random, ids);
    case 'integer':
      return Math.ceil(low) + Math.floor(random() * (Math.floor(high) - Math.ceil(low) + 1));
    case 'number':
      return low + random() * (high - low);
    case 'boolean':
      return random() < 0.5;
    case 'null':
      return null;
    case 'array': {
      const { items, prefixItems, minItems } = schema as { items?: Schema; prefixItems?: Schema[]; minItems?: number };
      if (prefixItems) return prefixItems.map(inner);
      return Array.from({ length: (minItems ?? 0) + Math.floor(random() * 3) }, () => inner(items ?? {}));
    }
    case 'object': {
      const made: Record<string, unknown> = {};
      for (const [key, each] of Object.entries((schema['properties'] ?? {}) as Record<string, Schema>)) {
        const needed = ((schema['required'] ?? []) as string[]).includes(key);
        if (needed || random() < 0.7) made[key] = inner(each);
      }
      return made;
    }
    default:
      return random() < 0.5 ? nastyValue(random) : {};
  }
}

/** A whole input of a request. */
export const wholeInput = (name: RequestName, random: Random, ids: readonly string[]): unknown =>
  whole(schemas[name]!, random, ids);

/** These start workers or write files: in a run of thousands they are asked whole only now and then. */
const SLOW: readonly RequestName[] = [
  'backup.now',
  'backup.state',
  'records.check',
  'client.erase',
  'client.export',
  'caseload.export',
];

/** One message: JSON text that may or may not be one of the contract's. */
function message(random: Random, ids: readonly string[]): string {
  const chance = random();
  if (chance < 0.03) return JSON.stringify(nastyValue(random));
  if (chance < 0.05) {
    return JSON.stringify({ name: pick(random, ['', '__proto__', 'toString', 'client.nothing', 7]), input: {} });
  }
  const name = pick(random, requestNames);
  const input = wholeInput(name, random, ids);
  // No folder of the machine is to be made for a second place.
  if (name === 'backup.setSecond') return JSON.stringify({ name, input: { folder: 'not/a/whole/path' } });
  if (chance < 0.08) return mutatedText(JSON.stringify({ name, input }), random);
  const spoil = SLOW.includes(name) ? random() < 0.98 : random() < 0.55;
  return JSON.stringify({ name, input: spoil ? mutatedJson(input, random) : input });
}

/** Dialogs that nobody answers. */
const port: ShellPort = {
  chooseOpen: async () => null,
  chooseSave: async () => ({ saved: false, name: null }),
  printPdf: async () => Buffer.from('%PDF-1.4'),
  printPaper: async () => {},
  allowCameraOnce: async () => {},
  keyStore: null,
  close: () => {},
};

/** One fact of the common kinds. Answers every id that is in the caseload then. */
function fill(caseload: Caseload): string[] {
  const doing = { at: NOW, by: 'TY' };
  const ids: string[] = [];
  for (const code of ['M1', 'M2']) {
    const { id } = caseload.put('client', client({ code }), doing);
    const { id: visitId } = caseload.put('visit', visit(id), doing);
    const { id: answerId } = caseload.put('intakeAnswer', answer(id, visitId), doing);
    const { id: sampleId } = caseload.put('sample', sample(id, visitId), doing);
    const blob = caseload.putBlob(id, 'image/png', Buffer.from('original bytes'), doing);
    const { id: pageId } = caseload.put('samplePage', page({ clientId: id, visitId, sampleId }, blob), doing);
    ids.push(id, visitId, answerId, sampleId, blob.id, pageId);
  }
  return ids;
}

export interface MessagesReport {
  messages: number;
  /** Answered with a value. */
  answered: number;
  /** Writes among them: whole messages that a therapist could have sent. */
  written: number;
  refusals: Record<string, number>;
  faults: string[];
}

export async function messageTest(count: number, seed: number): Promise<MessagesReport> {
  const random = seeded(seed);
  const report: MessagesReport = { messages: 0, answered: 0, written: 0, refusals: {}, faults: [] };
  let caseload = await freshCaseload();
  const { folder } = caseload;
  const identity = caseload.withKey((key) => Buffer.from(key));
  const ids = fill(caseload);
  const opened = { folder, port, shell: 'browser', version: '0', demoSource: null, emit: () => {} } as const;
  const services = new Services({ ...opened, now: () => new Date(NOW) });
  services.caseload = caseload;
  let rows = JSON.stringify(caseload.counts());
  const fault = (sent: string, what: string): void => {
    if (report.faults.length < 50) report.faults.push(`${what}: ${sent.slice(0, 300)}`);
  };
  try {
    for (let n = 0; n < count; n++) {
      const sent = message(random, ids);
      const said = JSON.parse(await dispatch(services, sent)) as { ok: boolean; code?: string; detail?: string };
      report.messages++;
      if (said.ok) report.answered++;
      else {
        const code = String(said.code);
        report.refusals[code] = (report.refusals[code] ?? 0) + 1;
        if (!Object.hasOwn(messages, code) || code === 'internal') fault(sent, `answered ${code}`);
        if (/\n|node_modules|\/tmp\//.test(said.detail ?? '')) fault(sent, 'a detail that is no sentence');
      }
      // Some requests lock the caseload: open it as its therapist would.
      if (services.caseload === null) {
        const again = await openCaseload({ folder, now: NOW, identity: Buffer.from(identity) });
        if (!again.ok) {
          fault(sent, `the caseload did not open again (${again.code})`);
          break;
        }
        services.caseload = caseload = again.caseload;
        services.demo = false;
      }
      const now = JSON.stringify(caseload.counts());
      if (now === rows) continue;
      const name = said.ok ? (JSON.parse(sent) as { name: RequestName }).name : null;
      if (name === null || contract[name].effect === 'read') fault(sent, 'rows changed');
      else report.written++;
      rows = now;
    }
    if (caseload.quickCheck() !== 'ok') report.faults.push('the file is damaged');
    if (!caseload.verifyTrail().whole) report.faults.push('the trail broke');
  } finally {
    services.lock('asked');
    identity.fill(0);
    rmSync(folder, { recursive: true, force: true });
  }
  return report;
}
