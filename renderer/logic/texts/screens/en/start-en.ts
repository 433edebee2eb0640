import type { Shown } from '../shown.ts';

/** First start, unlocking, restoring, the recovery sheet. */
export const startEn = {
  recoverySheet: 'Recovery sheet',
  thisKeyOpensCaseload:
    'This key opens the caseload once if the passphrase is lost: choose “Passphrase lost” where the caseload is unlocked, set a new passphrase, and a new sheet takes the place of this one. It is shown only now. Print it or write it down, and keep it locked away from this computer. Case, hyphens and spaces do not matter.',
  withoutPassphraseAndWithout:
    'Without the passphrase and without this key nobody can open the caseload, neither you nor we.',
  print: 'Print',
  readingBackups: 'Reading the backups …',
  bringingBackupIn: 'Bringing the backup in …',
  readingWhatCanStill: 'Reading what can still be read …',
  takingCopyIntoUse: 'Taking the copy into use …',
  copyIsInUse: (keptAs: Shown) => `The copy is in use. What was there before is kept as ${keptAs}.`,
  restoringAndComparing: 'Restoring and comparing …',
  restoredWhatWasThere: (keptAs: Shown) => `Restored. What was there before is kept as ${keptAs}.`,
  restored: 'Restored.',
  restoreBackup: 'Restore a backup',
  caseloadFileIsDamaged:
    'The caseload file is damaged. It was not changed. Take the newest backup that opened whole; what was entered since then can perhaps be read from the damaged file.',
  nothingIsDeletedCaseload:
    'Nothing is deleted: a caseload that is here already is set aside under a new name. A backup brings back its key: it opens with the passphrase and the recovery sheet of its day. If one of them was changed since then because somebody may know it, change it again.',
  passphraseOfBackup: 'Passphrase of the backup',
  recoveryKeyWorksAs: 'The recovery key works as well.',
  showBackups: 'Show the backups',
  bringBackupFileFrom: 'Bring a backup file from elsewhere …',
  thereIsNoBackup: 'There is no backup in this folder. Bring one from the USB stick or the other computer.',
  made: 'Made',
  clients: 'Clients',
  lastVisit: 'Last visit',
  newestThatOpens: 'newest that opens',
  notReadableWithThis: 'not readable with this passphrase',
  unknown: 'unknown',
  none: 'none',
  restoreThisOne: 'Restore this one',
  caseloadIsDamagedAnd: 'The caseload is damaged and no backup is new enough',
  fairhandReadsWhatCan:
    'Fairhand reads what can still be read into a copy. The damaged file stays as it is until you take the copy into use.',
  readWhatCanBe: 'Read what can be read',
  readClientsLastVisit: (clients: Shown, day: Shown | null, lost: Shown) =>
    `Read: ${clients} clients, last visit ${day !== null ? day : 'none'}; ${lost} entries could not be read.`,
  takeThisCopyInto: 'Take this copy into use',
  unlocking: 'Unlocking …',
  openingDemo: 'Opening the demo …',
  initialsAreMissingNothing:
    'Initials are missing. Nothing was created. Type the initials that will sign your entries.',
  creatingCaseload: 'Creating the caseload …',
  typeKeyFromRecovery: 'Type the key from the recovery sheet. Nothing was changed.',
  openingByRecoveryKey: 'Opening by the recovery key …',
  yourNewPassphraseIs:
    'Your new passphrase is in use, and the recovery key you typed is used up: this sheet takes its place. Backups made before still open with the passphrase and the sheet of their day, so keep the old sheet as long as you keep them.',
  iHaveKeptIt: 'I have kept it. Open the caseload',
  iHaveKeptItUnlock: 'I have kept it. Unlock again',
  fairhandKeepsYourCaseload: 'Fairhand keeps your caseload in one encrypted file on this computer. Nothing leaves it.',
  createYourCaseload: 'Create your caseload',
  yourInitials: 'Your initials',
  theySignEveryEntry: 'They sign every entry.',
  clinic: 'Clinic',
  printedOnPagesOptional: 'Printed on pages. Optional.',
  passphrase: 'Passphrase',
  createCaseload: 'Create the caseload',
  keptIn: (folder: Shown) => `Kept in ${folder}`,
  openByRecoverySheet: 'Open by the recovery sheet',
  keyOfSheetWorks:
    'The key of the sheet works once. You set a new passphrase and get a new sheet. Nothing in the caseload is lost or changed.',
  recoveryKey: 'Recovery key',
  caseHyphensAndSpaces: 'Case, hyphens and spaces do not matter.',
  openCaseload: 'Open the caseload',
  back: 'Back',
  unlockCaseload: 'Unlock the caseload',
  demoNeedsNoneOpen: 'The demo needs none: “Open the demo caseload” is below.',
  unlock: 'Unlock',
  unlockByThisComputer: 'Unlock by this computer',
  passphraseLost: 'Passphrase lost …',
  orLookAroundFirst: 'Or look around first',
  inventedClinicWithInvented: 'An invented clinic with invented clients, in a file of its own.',
  openDemoCaseload: 'Open the demo caseload',
  orRestoreBackup: 'Or restore a backup',
  fromStickFolderOr: 'From a stick, a folder or another computer.',
  restoreBackup2: 'Restore a backup …',
  fairhandSupportsJudgementOf:
    'Fairhand supports the judgement of a licensed therapist and does not replace it. It does not diagnose. Local rules, the clinic’s policy and the referrer’s orders come first.',
  unlockItWithPassphrase: (words: Shown) => `${words} Unlock it with the passphrase of the backup.`,
  notAvailableInBrowser:
    'Not available in a browser window: a browser gives no page a way to it. In Fairhand’s own window it is.',
  notAvailableThisComputer: 'Not available: this computer offers Fairhand no key store.',
  notAvailableKeyStore:
    'Not available: the key store of this computer would write the key without protection, so Fairhand does not use it.',
  fromNowOnOne: 'From now on one button opens the caseload on this computer. The passphrase opens it as before.',
  onlyPassphraseAndRecovery: 'Only the passphrase and the recovery key open the caseload now.',
  keyStoreOfThis:
    'The key store of this computer can open the caseload for whoever is signed in to your account here, without the passphrase. Use it only where nobody else uses your account, and lock the computer when you leave it.',
  yourPassphraseToAllow: 'Your passphrase, to allow it',
  letThisComputerUnlock: 'Let this computer unlock',
  keyStoreOfThisComputer:
    'The key store of this computer can open the caseload for whoever is signed in to your account here.',
  askForPassphraseAgain: 'Ask for the passphrase again',
  orFromAnotherLaptop: 'Or move in',
  everythingComesAlong: 'Clients, pictures, what was changed and your settings come along in one encrypted file.',
  fromAnotherLaptop: 'I come from another laptop',
  moveInExplained:
    'On the old laptop, Backup writes the file: “Move to another laptop”. Choose that file here, for example on the stick.',
  chooseMovingFile: 'Choose the file …',
  orItsPath: 'Or its path',
  pathForLarge:
    'The whole path of the file or its folder. A file of more than 1 GB comes in this way, or by a double click.',
  takeItFromThere: 'Take it from there',
  fileIsHere: (name: Shown) => `The file is here: ${name}.`,
  openItBy: 'Open it by',
  passphraseOfOldLaptop: 'Passphrase of the old laptop',
  bringItOver: 'Bring it over',
  movedWhole: (clients: Shown, day: Shown | null, entries: Shown) =>
    `Everything is here: ${clients} ${clients === 1 ? 'client' : 'clients'}, last visit ${day !== null ? day : 'none'}. The trail is whole: ${entries} entries, each one matches the one before.`,
  movedTrailBroken:
    'The caseload is here, but its trail does not match at one entry: something was changed outside Fairhand, on the old laptop or on the way. Keep the old laptop as it is, and ask for help before you work here.',
  nowTellOldOne:
    'Compare these numbers with what the old laptop showed. Then say there whether its caseload is kept or erased: two that are worked in grow apart.',
};
