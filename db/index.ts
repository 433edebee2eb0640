/** The caseload, for everything above: import from here, not from the files behind. */
export type * from './caseload.ts';
export type * from './caseload-rows.ts';
export { CaseloadError, isUnreadable } from './codes.ts';
export { caseloadExists, createCaseload, openCaseload, SHORTEST_PASSPHRASE } from './open.ts';
export { rekeyCaseload } from './rekey.ts';
export { addSignIn, peopleIn, settleSignIns, signInsIn } from './keys/people.ts';
