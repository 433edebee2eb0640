import type { Shown } from '../shown.ts';

/** Who signs in to the caseload. */
export const peopleEn = {
  people: 'People',
  /** Settings of whoever signed in. */
  yours: 'Yours',
  eachSignsIn: 'Each signs in with initials and a passphrase of their own, and every entry says who.',
  oneSignInForAll:
    'This caseload has one sign-in. Where several people use it, give each one of their own: the trail then says who did what, and a colleague who leaves can be shut out.',
  notInDemo: 'The demo has one sign-in for everybody.',
  assistantsManageNobody: 'Only a therapist adds or removes people.',
  initials: 'Initials',
  name: 'Name',
  role: 'Role',
  state: 'State',
  therapist: 'Therapist',
  assistant: 'Assistant or student',
  signedInNow: 'signed in',
  removedOn: (day: Shown) => `removed on ${day}`,
  notFinished: 'removal not finished',
  removalCutOff: (initials: Shown) =>
    `The removal of ${initials} was cut off before the key was changed. The window no longer lets ${initials} in, but an old copy of the key file would. Finish it on the right.`,
  addPerson: 'Add a person',
  addThisPerson: 'Add this person',
  cancel: 'Cancel',
  nameAndInitials: 'Name and initials are missing. Nobody was added.',
  initialsHint: 'They sign every entry. Nobody else here has or had the same.',
  newPersonTypes: 'The new person types their own passphrase here now; nobody else needs to know it.',
  herPassphrase: 'Passphrase of the new person',
  yourPassphrase: 'Your own passphrase',
  yourPassphraseHint: 'So that nobody who merely finds the window open can add a person.',
  sheetWillFollow:
    'A new recovery sheet follows, and the old one no longer opens this caseload. Where this computer unlocked the caseload by itself, that ends.',
  wrapping: 'Making the sign-in …',
  canSignIn: (initials: Shown) => `${initials} can sign in now: Lock, then initials and passphrase.`,
  newSheetFollows: 'The person is added. This new recovery sheet takes the place of the old one.',
  signIn: 'This sign-in',
  signsAs: (initials: Shown) => `Signs entries as ${initials}.`,
  whatAssistantsMay:
    'Records; what is recorded waits for a co-signature. Cannot approve a program, clear a red flag, sign an evaluation, make a recovery sheet or manage people.',
  removedMeans: (day: Shown) =>
    `Removed on ${day}; the key of the file was changed then. Earlier entries stay as they are. Backups made before still open with the passphrase of their day: delete those that must not be opened.`,
  ownInSettings: 'Your credentials, passphrase and look are under Settings. Another therapist can change your role.',
  removeOf: (initials: Shown) => `Remove ${initials} …`,
  finishRemoval: (initials: Shown) => `Finish the removal of ${initials} …`,
  removeQuestion: (initials: Shown) => `End the sign-in of ${initials}?`,
  whatRemovingDoes:
    'The whole file is encrypted under a new key. The passphrase of this person opens nothing of it any more, nor does an old copy of the key file. Everybody else signs in as before, and the recovery sheet stays in use. Entries stay; words left in forms by this person are not shown to anybody. Backups made before still open with the passphrases of their day.',
  removeSignIn: 'End the sign-in',
  initialsToSignIn: 'Initials',
  whoeverComesNext: 'Of whoever works here next.',
  whosePassphrase: 'Whose passphrase is set anew.',
  signedInAs: (initials: Shown) => `Signed in: ${initials}`,
  fromTheSignIn: (initials: Shown) => `Initials: ${initials}, from the sign-in.`,
  onePersonOnly:
    'Not available where several people sign in: the computer account cannot tell who of them is at the keyboard.',
  ownPassphraseChanges:
    'The whole file is encrypted under a new key and locked. Your old passphrase and old key files then open nothing of this caseload; the passphrases of the others and the recovery sheet stay. Backups made before still open with the passphrases of their day.',
  passphraseIsChanged: 'Your passphrase is changed. Sign in with the new one.',
};
