/** What the opening of a caseload found missing, in a sentence. */
import type { AppStatus } from '../../../electron/contract/app.ts';

export const missingWords: Readonly<Record<Exclude<AppStatus['missing'], 'nothing'>, string>> = {
  log: 'The log beside the caseload file was gone when it was opened: changes of the last session may be missing.',
  'newer-backup':
    'The newest backup holds changes that this caseload does not have: a part of the file may have been lost.',
  rewritten:
    'The trail of this caseload is not the one that a backup or its sealed note holds: entries were changed afterwards, outside Fairhand.',
  'rolled-back':
    'This caseload is older than it was when it was last closed: somebody or something put an earlier state in its place.',
  'other-caseload':
    'The sealed note beside this caseload belongs to another one: the caseload file and its key were exchanged, or a change of the passphrase was cut off.',
  'seal-missing':
    'The sealed note that tells how far this caseload went is gone: whether it was set back to an earlier state cannot be told.',
  'foreign-tables':
    'The caseload file holds tables or triggers that Fairhand did not make, or lacks some of its own: it was changed with another program.',
};
