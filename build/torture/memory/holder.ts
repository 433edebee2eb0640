/**
 * Opens a caseload as the window does, reads and changes a client, locks, and waits to be looked at from outside.
 * Arguments: folder, the client's id, initials where people sign in with their own. The passphrase comes from standard input. Says 'open' and 'locked', each until a line comes back.
 */
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { dispatch } from '../../../electron/handlers/dispatch.ts';
import { Services } from '../../../electron/handlers/services.ts';

const [folder = '', clientId = '', initials] = process.argv.slice(2);
const lines = createInterface({ input: process.stdin })[Symbol.asyncIterator]();
const line = async (): Promise<string> => String((await lines.next()).value);

const services = new Services({
  folder,
  port: { keyStore: null } as never,
  shell: 'browser',
  version: '0',
  now: () => new Date(),
  emit: () => undefined,
  demoSource: null,
});
const ask = (name: string, input: object = {}): Promise<string> => dispatch(services, JSON.stringify({ name, input }));
await ask('app.unlock', { passphrase: await line(), ...(initials && { initials }) });
for (let n = 0; n < 20; n++) await ask('client.open', { clientId });
await ask('backup.now');
writeSync(1, 'open\n');
await line();
await ask('app.lock');
// The memory of what is gone is given back.
await new Promise((resolve) => setTimeout(resolve, 2500));
writeSync(1, 'locked\n');
await line();
process.exit(0);
