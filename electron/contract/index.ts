/** The whole contract between window and shell: every request, its effect and both of its shapes. Declared here, once. */
import type { z } from 'zod';
import { appRequests } from './app.ts';
import { caseloadRequests } from './caseload.ts';
import { exchangeRequests } from './exchange.ts';
import { goalRequests } from './goals.ts';
import { intakeRequests } from './intake.ts';
import { pageRequests } from './pages.ts';
import { programRequests } from './program.ts';
import { progressRequests } from './progress.ts';
import { readbackRequests } from './readback.ts';
import { recordRequests } from './records.ts';
import { rulesRequests } from './rules.ts';
import { sampleRequests } from './sample.ts';

export const contract = {
  ...appRequests,
  ...caseloadRequests,
  ...intakeRequests,
  ...sampleRequests,
  ...readbackRequests,
  ...programRequests,
  ...goalRequests,
  ...progressRequests,
  ...exchangeRequests,
  ...pageRequests,
  ...recordRequests,
  ...rulesRequests,
} as const;

export type Contract = typeof contract;
export type RequestName = keyof Contract;
export type Input<N extends RequestName> = z.infer<Contract[N]['input']>;
export type Output<N extends RequestName> = z.infer<Contract[N]['output']>;

/**
 * What is answered while the caseload is locked: opening and restoring it, the demo, printing the recovery sheet.
 * Everything else answers `locked` before its handler is asked.
 */
export const whileLocked: readonly RequestName[] = [
  'app.status',
  'app.create',
  'app.unlock',
  'app.recover',
  'app.unlockWithSystem',
  'app.used',
  'app.lock',
  'app.openDemo',
  'app.removeDemo',
  'app.leaveDemo',
  'pages.print',
  'backup.listWith',
  'backup.bring',
  'backup.restore',
  'backup.undoRestore',
  'records.salvage',
];

/** What the shell tells the window without being asked. */
export type ShellEvent =
  | { kind: 'locked'; why: 'idle' | 'sleep' | 'asked' }
  | { kind: 'progress'; task: string; id: string; done: number }
  | { kind: 'damage' }
  | { kind: 'closing' };
