/** The whole contract between window and shell: every request, its effect and both of its shapes. Declared here, once. */
import type { z } from 'zod';
import { aboutRequests } from './about.ts';
import { appRequests } from './app.ts';
import { caseloadRequests } from './caseload.ts';
import { exchangeRequests } from './sharing/exchange.ts';
import { figureRequests } from './sharing/figures.ts';
import { goalRequests } from './goals.ts';
import { handoverRequests } from './sharing/handover.ts';
import { inkRequests } from './ink.ts';
import { intakeRequests } from './intake.ts';
import { movingRequests } from './years/moving.ts';
import { retentionRequests } from './years/retention.ts';
import { occasionRequests } from './occasions.ts';
import { pageRequests } from './pages.ts';
import { peopleRequests } from './sign-in/people.ts';
import { programRequests } from './program.ts';
import { progressRequests } from './progress.ts';
import { readbackRequests } from './readback.ts';
import { recordRequests } from './records.ts';
import { rulesRequests } from './rules.ts';
import { sampleRequests } from './sample.ts';
import { spiralRequests } from './spiral.ts';

export const contract = {
  ...appRequests,
  ...aboutRequests,
  ...peopleRequests,
  ...caseloadRequests,
  ...intakeRequests,
  ...sampleRequests,
  ...inkRequests,
  ...spiralRequests,
  ...readbackRequests,
  ...programRequests,
  ...goalRequests,
  ...progressRequests,
  ...exchangeRequests,
  ...pageRequests,
  ...recordRequests,
  ...figureRequests,
  ...handoverRequests,
  ...movingRequests,
  ...retentionRequests,
  ...rulesRequests,
  ...occasionRequests,
} as const;

export type Contract = typeof contract;
export type RequestName = keyof Contract;
export type Input<N extends RequestName> = z.infer<Contract[N]['input']>;
export type Output<N extends RequestName> = z.infer<Contract[N]['output']>;

/**
 * The requests that are answered while the caseload is locked, each with its reason. Everything else answers `locked`
 * before its handler is asked.
 */
const answeredWhileLocked = {
  'app.status': 'the window asks whether it is locked, and which languages and folders there are',
  'app.create': 'a first caseload is made before any is open',
  'app.unlock': 'opens it',
  'app.recover': 'opens it by the recovery key, where the passphrase is forgotten',
  'app.unlockWithSystem': 'opens it by the key store of the computer account',
  'app.used': 'keys and pointer are told whatever is open; nothing is answered',
  'app.handed': 'the name of a file that somebody just opened by hand; nothing of the caseload',
  'app.putHandedAway': 'that file is not wanted',
  'app.lock': 'locking again changes nothing, and a window that is late must not fail at it',
  'app.openDemo': 'the demo is a caseload of its own, with invented clients',
  'app.removeDemo': 'deletes the demo, which holds no client',
  'app.leaveDemo': 'back from the demo to the locked caseload',
  'about.facts': 'versions and the folder are asked for when something does not open',
  'about.licences': 'holds what others wrote',
  'about.diagnostics': 'help is needed most when the caseload does not open; it holds nothing of a client',
  'about.saveDiagnostics': 'the same text as a file',
  'app.printRecoverySheet': 'the recovery sheet of a caseload that was just made or opened by its key',
  'backup.listWith': 'backups are shown to whoever gives the passphrase of that day, when the caseload does not open',
  'backup.bring': 'a backup file is looked at before it is restored; it opens by its passphrase alone',
  'backup.restore': 'a caseload that does not open is replaced by a backup, by its passphrase',
  'backup.undoRestore': 'the caseload from before the restore is put back',
  'records.salvage': 'what can still be read of a damaged caseload is saved, by its passphrase',
} as const satisfies Partial<Record<RequestName, string>>;

export const whileLocked = Object.keys(answeredWhileLocked) as readonly RequestName[];

/** What the shell tells the window without being asked. */
export type ShellEvent =
  | { kind: 'locked'; why: 'idle' | 'sleep' | 'asked' }
  /** Nobody was at work: the caseload locks in so many seconds unless somebody is. */
  | { kind: 'locking-soon'; seconds: number }
  | { kind: 'progress'; task: string; id: string; done: number }
  | { kind: 'damage' }
  /** The system handed a file over: `app.handed` says which. */
  | { kind: 'handed' }
  | { kind: 'closing' };
