/**
 * One request of the window: name known? input valid? run, check the answer, wrap. An error becomes a code;
 * what it said is not passed on, because it could hold a path, SQL or a client's data.
 */
import { CaseloadError } from '../../db/index.ts';
import { contract, whileLocked, type Contract, type RequestName } from '../contract/index.ts';
import { Refusal, type Envelope } from '../contract/envelope.ts';
import { messages, type MessageCode } from '../contract/messages.ts';
import { isTooDeep } from '../../renderer/logic/program/clinic/json-lines.ts';
import { noteFailure } from '../files/diagnostics.ts';
import { aboutHandlers } from './about.ts';
import { appHandlers } from './app.ts';
import { caseloadHandlers } from './caseload.ts';
import { exchangeHandlers } from './sharing/exchange.ts';
import { figureHandlers } from './sharing/figures.ts';
import { goalHandlers } from './goals.ts';
import { occasionHandlers } from './occasions.ts';
import { movingHandlers } from './years/moving.ts';
import { retentionHandlers } from './years/retention.ts';
import { handoverHandlers } from './sharing/handover.ts';
import type { Handler } from './handler.ts';
import { inkHandlers } from './ink.ts';
import { intakeHandlers } from './intake.ts';
import { pageHandlers } from './pages.ts';
import { peopleHandlers } from './sign-in/people.ts';
import { programHandlers } from './program.ts';
import { progressHandlers } from './clinic-rules.ts';
import { readbackHandlers } from './readback.ts';
import { recordHandlers } from './records.ts';
import { rulesHandlers } from './rules.ts';
import { sampleHandlers } from './sample.ts';
import type { Services } from './services.ts';
import { spiralHandlers } from './spiral.ts';

type Handlers = { [N in keyof Contract]: Handler<N> };

export const handlers: Handlers = {
  ...appHandlers,
  ...aboutHandlers,
  ...peopleHandlers,
  ...caseloadHandlers,
  ...intakeHandlers,
  ...sampleHandlers,
  ...inkHandlers,
  ...spiralHandlers,
  ...readbackHandlers,
  ...programHandlers,
  ...goalHandlers,
  ...occasionHandlers,
  ...progressHandlers,
  ...exchangeHandlers,
  ...pageHandlers,
  ...recordHandlers,
  ...figureHandlers,
  ...handoverHandlers,
  ...movingHandlers,
  ...retentionHandlers,
  ...rulesHandlers,
};

/** Longest request: a record's largest fact is a measured page, some hundred kB. */
const maxRequestChars = 8_000_000;

const failure = (code: MessageCode, detail?: string): Envelope =>
  detail === undefined ? { ok: false, code } : { ok: false, code, detail };

export async function dispatch(services: Services, json: string): Promise<string> {
  return JSON.stringify(await answer(services, json));
}

async function answer(services: Services, json: string): Promise<Envelope> {
  if (typeof json !== 'string' || json.length > maxRequestChars) return failure('malformed-request', 'too long');
  if (isTooDeep(json)) return failure('malformed-request', 'nested too deep');
  let asked: unknown;
  try {
    asked = JSON.parse(json);
  } catch {
    return failure('malformed-request', 'not JSON');
  }
  if (typeof asked !== 'object' || asked === null || !('name' in asked)) return failure('malformed-request', 'no name');
  const name = (asked as { name: unknown }).name;
  if (typeof name !== 'string' || !Object.hasOwn(contract, name)) return failure('unknown-request');
  const request = contract[name as RequestName];
  const input = request.input.safeParse((asked as { input?: unknown }).input);
  if (!input.success) return failure('malformed-request', fieldOf(input.error.issues));
  if (!services.caseload && !whileLocked.includes(name as RequestName)) return failure('locked');
  try {
    const run = handlers[name as RequestName] as (services: Services, input: unknown) => unknown;
    return { ok: true, value: request.output.parse(await run(services, input.data)) };
  } catch (error) {
    const failed = failureOf(error, name);
    const kind = failed.ok ? '' : failed.code === 'internal' && error instanceof Error ? error.name : failed.code;
    noteFailure({ at: services.options.now().toISOString(), request: name, kind });
    return failed;
  }
}

/** Names the field, never its value. */
const fieldOf = (issues: readonly { path: readonly PropertyKey[] }[]): string =>
  issues[0]?.path.map(String).join(' ') || 'whole entry';

function failureOf(error: unknown, name: string): Envelope {
  if (error instanceof Refusal) return failure(error.code, error.detail);
  if (error instanceof CaseloadError) return failure(error.code, error.detail);
  const code = (error as { code?: unknown } | null)?.code;
  if (code === 'ENOSPC') return failure('disk-full');
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM') return failure('folder-not-writable');
  if (typeof code === 'string' && Object.hasOwn(messages, code)) return failure(code as MessageCode);
  // Only the name of the request and the kind of error: the text could name a client.
  process.stderr.write(`request ${name} failed: ${error instanceof Error ? error.name : 'unknown'}\n`);
  return failure('internal');
}
