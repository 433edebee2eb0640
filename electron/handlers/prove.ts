import { CaseloadError } from '../../db/index.ts';
import { unlock as unlockSecrets } from '../../db/open.ts';
import { Refusal } from '../contract/envelope.ts';

/** That whoever asks knows the passphrase. @throws Refusal wrong-passphrase */
export async function prove(folder: string, passphrase: string): Promise<void> {
  try {
    const { secrets } = await unlockSecrets(folder, { passphrase });
    for (const { identity } of secrets) identity.fill(0);
  } catch (error) {
    if (error instanceof CaseloadError) throw new Refusal(error.code);
    throw error;
  }
}
