import { CaseloadError } from '../../db/index.ts';
import { unlock as unlockSecrets } from '../../db/open.ts';
import { Refusal } from '../contract/envelope.ts';
import type { Services } from './services.ts';

/** That whoever asks knows the passphrase. @throws Refusal wrong-passphrase */
export async function prove(services: Services, passphrase: string): Promise<void> {
  try {
    const { secrets } = await unlockSecrets(services.folder, { passphrase });
    for (const { identity } of secrets) identity.fill(0);
  } catch (error) {
    if (error instanceof CaseloadError) throw new Refusal(error.code);
    throw error;
  }
}
