/** Passphrases: whether one is right, whether a new one is too easily guessed, and opening by one. */
import { CaseloadError, openCaseload, SHORTEST_PASSPHRASE, type Secret } from '../../../db/index.ts';
import { unlock as unlockSecrets } from '../../../db/open.ts';
import { isWeak } from '../../../db/weak-passphrase.ts';
import { Refusal } from '../../contract/envelope.ts';
import { isGuessable } from '../../files/passphrase-guess.ts';
import type { Services } from '../services.ts';

/** That whoever asks knows the passphrase: anybody's, or that of one person. @throws Refusal wrong-passphrase */
export async function prove(folder: string, passphrase: string, person?: string): Promise<void> {
  try {
    const { secrets } = await unlockSecrets(folder, { passphrase, person });
    for (const { identity } of secrets) identity.fill(0);
  } catch (error) {
    if (error instanceof CaseloadError) throw new Refusal(error.code);
    throw error;
  }
}

/** That whoever signed in types it: who only finds the window open must not get further. */
export function proveMine(services: Services, passphrase: string): Promise<void> {
  const { id } = services.signedIn;
  return services.slowed(() => prove(services.folder, passphrase, id ?? undefined), services.therapist().initials);
}

/** Of a new passphrase. @throws Refusal passphrase-too-short, passphrase-too-weak */
export async function refuseGuessable(passphrase: string, words: readonly string[]): Promise<void> {
  if ([...passphrase].length < SHORTEST_PASSPHRASE) throw new Refusal('passphrase-too-short');
  if (isWeak(passphrase) || (await isGuessable(passphrase, words))) throw new Refusal('passphrase-too-weak');
}

/** Opens the caseload and takes it over. @throws Refusal */
export async function openFolder(services: Services, secret: Secret): Promise<void> {
  const now = services.options.now().toISOString();
  const opened = await openCaseload({ folder: services.folder, now, ...secret });
  if (!opened.ok) throw new Refusal(opened.code);
  await services.took(opened.caseload, opened.person);
}
