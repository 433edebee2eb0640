/** One of the processes that share the settings: gets the number of one, answers its rates, until there are no more. */
import { settings } from './index.ts';

process.on('message', ({ at, clients, seed }: { at: number; clients: number; seed: number }) => {
  process.send?.({ at, rates: settings[at]!.run(clients, seed + at) });
});
process.on('disconnect', () => process.exit(0));
process.send?.({ ready: true });
