/**
 * One change of people, as the handlers make it: `add` (a wrap, the list, settled) or `remove` (the list, the key).
 * Arguments: folder, which change. To be killed.
 */
import { openCaseload, rekeyCaseload } from '../../../db/index.ts';
import { PEOPLE } from '../../../db/types/clinic/people.ts';
import { NOW, PASSPHRASE } from '../children.ts';
import { addSecondPerson, firstPerson, secondPerson } from './people-kill.ts';

const [folder = '', change = ''] = process.argv.slice(2);
const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
if (!opened.ok) throw new Error(opened.code);
const { caseload } = opened;
if (change === 'add') {
  await addSecondPerson(caseload);
  caseload.close();
} else {
  caseload.putSetting(PEOPLE, [firstPerson, { ...secondPerson, removedOn: '2026-03-04' }], {
    at: NOW,
    by: firstPerson.initials,
  });
  caseload.close();
  const done = await rekeyCaseload({
    folder,
    passphrase: PASSPHRASE,
    person: firstPerson.id,
    without: [secondPerson.id],
    now: NOW,
    workFactor: 4,
  });
  if (!done.ok) throw new Error(done.code);
}
