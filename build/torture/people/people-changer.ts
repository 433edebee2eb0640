/**
 * One change of people, as the handlers make it: `add` (a wrap, the list, settled) or `remove` (the list, the key).
 * Arguments: folder, which change. To be killed.
 */
import { addSignIn, openCaseload, rekeyCaseload, settleSignIns } from '../../../db/index.ts';
import { PEOPLE } from '../../../db/types/clinic/people.ts';
import { NOW, PASSPHRASE } from '../children.ts';
import { firstPerson, HERS, secondPerson } from './people-kill.ts';

const [folder = '', change = ''] = process.argv.slice(2);
const quick = { now: NOW, workFactor: 4 };
const doing = { at: NOW, by: firstPerson.initials };
const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
if (!opened.ok) throw new Error(opened.code);
const { caseload } = opened;
if (change === 'add') {
  const mine = { ...firstPerson, passphrase: PASSPHRASE };
  await addSignIn(caseload, { ...secondPerson, passphrase: HERS }, mine, quick);
  caseload.putSetting(PEOPLE, [firstPerson, secondPerson], doing);
  settleSignIns(folder);
  caseload.close();
} else {
  caseload.putSetting(PEOPLE, [firstPerson, { ...secondPerson, removedOn: '2026-03-04' }], doing);
  caseload.close();
  const done = await rekeyCaseload({
    folder,
    passphrase: PASSPHRASE,
    person: firstPerson.id,
    without: [secondPerson.id],
    ...quick,
  });
  if (!done.ok) throw new Error(done.code);
}
