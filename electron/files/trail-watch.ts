/** Looks at an opened caseload for what was done to it from outside, and seals how far its trail goes. */
import type { Caseload } from '../../db/index.ts';
import type { AppStatus } from '../contract/app.ts';
import { dropSeals, judgeSeals, readSeal, sealPlaces, writeSeals } from './trail-seal.ts';

export class TrailWatch {
  readonly #state: string | null;
  /** The next opening seals what it finds. */
  #replaced = false;

  /** @param state folder of the second note, outside the caseload's; null: nowhere */
  constructor(state: string | null) {
    this.#state = state;
  }

  /** Tables that are not ours, or a trail that does not go on from where the sealed notes left it. */
  strange(caseload: Caseload, sealedToo: boolean): AppStatus['missing'] {
    if (caseload.schemaDifferences().length > 0) return 'foreign-tables';
    if (!sealedToo || this.#replaced) return 'nothing';
    const { beside, outside } = sealPlaces(caseload.folder, this.#state);
    const trail = { entries: caseload.lastSeq(), hashAt: (entry: number) => caseload.trailHashAt(entry) };
    const found = caseload.withKey((identity) => ({
      beside: readSeal(beside, identity),
      outside: readSeal(outside, identity),
    }));
    const verdict = judgeSeals(found, trail, caseload.setting('sealed') === true);
    return verdict === 'fits' ? 'nothing' : verdict;
  }

  /** Seals the trail as it is. */
  seal(caseload: Caseload, at: string): void {
    this.#replaced = false;
    const entries = caseload.lastSeq();
    const trail = { entries, head: caseload.trailHashAt(entries) ?? '' };
    caseload.withKey((identity) => this.sealUnder(caseload.folder, identity, trail, at));
  }

  /** After a change of the key, and after a restore. */
  sealUnder(folder: string, identity: Uint8Array, trail: { entries: number; head: string }, at: string): void {
    writeSeals(sealPlaces(folder, this.#state), identity, { ...trail, at });
  }

  /** What was put in place just now was put there by the therapist. */
  replaced(folder: string): void {
    dropSeals(sealPlaces(folder, this.#state));
    this.#replaced = true;
  }
}
