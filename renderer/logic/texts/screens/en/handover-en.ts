import type { Shown } from '../shown.ts';

/** Hand over: clients given to a colleague and taken in. */
export const handoverEn = {
  changedOnBothSides: 'Changed on both sides',
  nothingToLookAt: 'Nothing to look at.',
  whatDiffersInOf: (what: Shown, code: Shown) => `What differs in ${what} of ${code}`,
  field: 'Field',
  stands: (said: Shown) => `Stands (${said})`,
  otherSide: (said: Shown) => `Other side (${said})`,
  leaveItSo: 'Leave it so',
  takeOtherSide: 'Take the other side',
  copied: 'Copied.',
  itCouldNotBe: 'It could not be copied: mark the line and copy it.',
  yourKey: 'Your key',
  giveThisLineTo:
    'Give this line to colleagues, by any way: it locks, it does not open. The key that opens stays encrypted in this caseload. Short:',
  copyYourKey: 'Copy your key',
  colleagues: 'Colleagues',
  shortKey: (name: Shown, short: Shown) => `${name}, short key ${short}`,
  takeOffList: 'Take off the list',
  nameOrInitials: 'Name or initials',
  herKey: 'Their key',
  lineThatBeginsWith: 'The line that begins with age1.',
  addThisColleague: 'Add this colleague',
  sharedFolder: 'Shared folder',
  folderOnClinicsShare: 'Folder on the clinic’s share',
  wholePathHandOvers: 'The whole path. Hand-overs lie there encrypted. Empty: none.',
  handClientsOver: 'Hand clients over',
  addColleaguesKeyBelow: 'Add a colleague’s key below first: what is handed over can be opened with their key only.',
  to: 'To',
  whom: 'Whom',
  chosenClients: 'Chosen clients',
  all: (nClients: Shown) => `All ${nClients}`,
  filter: 'Filter',
  clientsToHandOver: 'Clients to hand over',
  moreTypeNameOr: (nFound: Shown) => `${nFound} more; type a name or code.`,
  handOverAsFile: (count: number) => `Hand over ${count} ${count === 1 ? 'client' : 'clients'} as a file …`,
  putIntoSharedFolder: 'Put into the shared folder',
  openingHandOver: 'Opening the hand-over …',
  takingIn: 'Taking in …',
  newCodesHere: (recoded: Shown) => ` New codes here: ${recoded}.`,
  everythingInItWas: 'Everything in it was here already. Nothing was changed.',
  takenIn: (changes: number, codes: Shown) => `Taken in: ${changes} ${changes === 1 ? 'entry' : 'entries'}.${codes}`,
  handOver: 'Hand over',
  encryptedForOneColleague: 'Encrypted for one colleague; by a stick or the clinic’s shared folder, never by a server.',
  takeInFile: 'Take in a file …',
  takeIn: 'Take in',
  anotherLaptopWithSame: (time: Shown) =>
    `Another laptop with the same key looked into this folder at ${time}. Nothing is taken in twice. If you do not use two laptops, tell your clinic that the key was copied.`,
  shareIsGone:
    'The shared folder for hand-overs is not there now. Nothing was lost; it is looked for again every half minute.',
  shareIsBack: 'The shared folder for hand-overs is there again.',
  waitsForYou: (files: number) =>
    files === 1
      ? 'A hand-over for you waits in the shared folder. Nothing of it is taken in yet.'
      : `${files} hand-overs for you wait in the shared folder. Nothing of them is taken in yet.`,
  goToHandOver: 'Go to Hand over',
  stillArrives: (files: number) =>
    files === 1 ? 'One more is still being copied.' : `${files} more are still being copied.`,
  sharedFolderIsNot:
    'The shared folder is not there now. Everything written stays here; it is looked for again every half minute.',
  waitingInSharedFolder: 'Waiting in the shared folder',
  lookIntoIt: 'Look into it',
  nothingWaitsForYou: 'Nothing waits for you there.',
  noSharedFolderIs: 'No shared folder is set.',
  notedInHistoryOf: 'Noted in the history of the client.',
  makingYourKey: 'Making your key …',
  encrypting: 'Encrypting …',
  handedOverIn: (clients: number, name: Shown) =>
    `${clients} ${clients === 1 ? 'client' : 'clients'} handed over in ${name}.`,
  canBeHandedOver: (name: Shown) =>
    `${name} can be handed over to now. Compare the short key with her on the telephone.`,
  takenOffList: 'Taken off the list.',
  folderIsLookedInto: 'The folder is looked into.',
  noSharedFolder: 'No shared folder.',
  newHere: 'new here',
  nothingNew: 'nothing new',
  wasErasedHere: 'was erased here',
  handOver2: (from: Shown | null, day: Shown, time: Shown) =>
    `Hand-over ${from !== null ? `from ${from}` : 'without a name'}, ${day}, ${time}`,
  nothingWasTakenIn:
    'Nothing was taken in yet. Where both sides changed the same entry, the newer one stands and the other is kept and shown. Ask your colleague whether it is hers: anybody who has your key can write such a file.',
  clientsInThisHand: 'Clients in this hand-over',
  client: 'Client',
  whatItBrings: 'What it brings',
  entries: (n: number) => `${n} ${n === 1 ? 'entry' : 'entries'}`,
  takeIn2: (code: Shown) => `Take in ${code}`,
  codeBelongsToAnother: (code: Shown, codeHere: Shown) =>
    `Code ${code} belongs to another client here: ${codeHere} instead.`,
  mayBeSamePerson: (code: Shown, name: Shown) =>
    `May be the same person as ${code} · ${name}: both records stay, joining is offered afterwards.`,
  takeIn3: (nTicked: number) => `Take in ${nTicked} ${nTicked === 1 ? 'client' : 'clients'}`,
  leaveIt: 'Leave it',
  perhapsOnePersonEntered: 'Perhaps one person entered twice',
  and: (code: Shown, name: Shown, code2: Shown, name2: Shown) => `${code} · ${name} and ${code2} · ${name2}`,
  join: 'Join …',
  into: (code: Shown, code2: Shown) => `${code} into ${code2}`,
  joinInto: (code: Shown, code2: Shown) => `Join ${code} into ${code2}?`,
  onlyWhenBothAre: (code: Shown, code2: Shown) =>
    `Only when both are one person. All visits, samples and pages of ${code} come to ${code2}, whose own details stay. Until the caseload is locked, Undo at ${code2} brings both back.`,
  joinTwoRecords: 'Join the two records',
};
