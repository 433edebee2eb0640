/** A sleeping or locked machine must not show a caseload when somebody else wakes it. */
import { powerMonitor } from 'electron';

export interface Lockable {
  lock(why: 'sleep'): void;
}

export function setupPower(caseload: Lockable): void {
  powerMonitor.on('suspend', () => caseload.lock('sleep'));
  powerMonitor.on('lock-screen', () => caseload.lock('sleep'));
}
