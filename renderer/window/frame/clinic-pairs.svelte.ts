import { ask } from '../../../electron/contract/ask.ts';
import type { Output } from '../../../electron/contract/index.ts';
import type { SaveHost } from './save-host.ts';

/** Repeat samples of the whole clinic as numbers without names; null until the shell has answered. */
export class ClinicPairs {
  pairs = $state.raw<Output<'progress.repeatPairs'>['pairs'] | null>(null);

  constructor(app: Pick<SaveHost, 'complain'>) {
    ask('progress.repeatPairs', {}).then(({ pairs }) => (this.pairs = pairs), app.complain);
  }
}
