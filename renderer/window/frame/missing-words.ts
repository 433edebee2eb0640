/** What the opening of a caseload found missing, in a sentence. */
import type { AppStatus } from '../../../electron/contract/app.ts';

export const missingWords: Readonly<Record<Exclude<AppStatus['missing'], 'nothing'>, string>> = {
  log: 'The log beside the caseload file was gone when it was opened: changes of the last session may be missing.',
  'newer-backup':
    'The newest backup holds changes that this caseload does not have: a part of the file may have been lost.',
  rewritten:
    'The trail of this caseload is not the one that a backup of it holds: entries were changed afterwards, outside Fairhand.',
};
