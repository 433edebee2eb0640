/** Who works with the open caseload: from the sign-in, or, with one for all, as Settings say. */
import { peopleIn, type Caseload } from '../../../db/index.ts';
import { PEOPLE, type Person } from '../../../db/types/clinic/people.ts';
import { usualPreferences } from '../../../renderer/logic/caseload/usual-preferences.ts';
import { Preferences } from '../../contract/app.ts';
import { Refusal } from '../../contract/envelope.ts';
import type { MessageCode } from '../../contract/messages.ts';

const Therapist = { name: '', initials: '', clinic: '', credentials: '', assistant: false };

export class SignedIn {
  /** The person's id; null with one sign-in for all, and while locked. */
  id: string | null = null;
  readonly #caseload: () => Caseload | null;
  constructor(caseload: () => Caseload | null) {
    this.#caseload = caseload;
  }

  /** Everybody who has or had a sign-in; null while there is one for all. */
  people(): Person[] | null {
    return peopleIn(this.#caseload()?.setting(PEOPLE));
  }

  /** Who is left where all others were removed: the key store opens for her. */
  onlyOne(): string | null {
    const left = this.people()?.filter(({ removedOn }) => removedOn === null) ?? [];
    return left.length === 1 ? left[0]!.id : null;
  }

  /** The list's own entry of whoever signed in. */
  me(): Person | null {
    return this.people()?.find(({ id }) => id === this.id) ?? null;
  }

  therapist(): typeof Therapist {
    const kept = { ...Therapist, ...(this.#caseload()?.setting('therapist') as object | null) };
    const me = this.me();
    if (!me) return kept;
    const { name, initials, credentials, role } = me;
    return { clinic: kept.clinic, name, initials, credentials, assistant: role === 'assistant' };
  }

  /** @throws Refusal with this code when an assistant or student works here */
  refuseAssistant(code: MessageCode): void {
    if (this.therapist().assistant) throw new Refusal(code);
  }

  /** What the window keeps for whoever signed in; as usual where nothing is kept, or what is kept does not fit. */
  preferences(): Preferences {
    const caseload = this.#caseload();
    const kept = Preferences.safeParse(caseload?.setting(this.#preferencesName()) ?? caseload?.setting('preferences'));
    return kept.success ? kept.data : usualPreferences;
  }
  prefer(preferences: Preferences, doing: { at: string; by: string }): void {
    this.#caseload()?.putSetting(this.#preferencesName(), preferences, doing);
  }
  #preferencesName(): string {
    return this.id === null ? 'preferences' : `preferences.${this.id}`;
  }

  /** Where words of a form are kept: each person has her own. Those from before others came stay with who was there. */
  wordsPlace(form: string): string {
    return this.id === null || this.id === this.people()?.[0]?.id ? form : `${this.id}/${form}`;
  }
}
