/** Changing what opens the caseload, without touching the caseload file. */
import { normalPassphrase } from './age.ts';
import { CaseloadError, type OpenCode } from './codes.ts';
import { newRecoveryKey, wrapWithPassphrase, wrapWithRecoveryKey, writeKeyFile } from './key-file.ts';
import { refusal, SHORTEST_PASSPHRASE, unlock } from './open.ts';

export interface ChangeOptions {
  folder: string;
  /** The passphrase in use. */
  passphrase: string;
  next: string;
  now: string;
  /** log2 of scrypt's N; lower only in tests. */
  workFactor?: number;
}

/**
 * Wraps the same secret with another passphrase. The recovery key stays valid; backups made before keep opening
 * with the passphrase they were made under.
 */
export async function changePassphrase(options: ChangeOptions): Promise<{ ok: true } | { ok: false; code: OpenCode }> {
  const { folder, passphrase, next, now, workFactor } = options;
  try {
    const { file, secrets } = await unlock(folder, { passphrase });
    try {
      const identity = secrets[0]?.identity;
      if (file === null || identity === undefined) throw new CaseloadError('wrong-passphrase');
      if ([...normalPassphrase(next)].length < SHORTEST_PASSPHRASE) throw new CaseloadError('passphrase-too-short');
      if (file.outgoing !== null) throw new CaseloadError('locked-by-another');
      writeKeyFile(folder, { ...file, at: now, passphrase: await wrapWithPassphrase(identity, next, workFactor) });
    } finally {
      for (const each of secrets) each.identity.fill(0);
    }
    return { ok: true };
  } catch (error) {
    return refusal(error);
  }
}

/**
 * The passphrase is lost: the recovery key gives way to a new passphrase and a new recovery key, in one write. It opens
 * this caseload once; backups made before keep the wraps of their day.
 * @returns the new recovery key, for a new sheet
 */
export async function useRecoveryKey(options: {
  folder: string;
  recoveryKey: string;
  next: string;
  now: string;
  /** log2 of scrypt's N; lower only in tests. */
  workFactor?: number;
}): Promise<{ ok: true; recoveryKey: string } | { ok: false; code: OpenCode }> {
  const { folder, next, now, workFactor } = options;
  try {
    if ([...normalPassphrase(next)].length < SHORTEST_PASSPHRASE) throw new CaseloadError('passphrase-too-short');
    const { file, secrets } = await unlock(folder, { recoveryKey: options.recoveryKey });
    try {
      const identity = secrets[0]?.identity;
      if (file === null || identity === undefined) throw new CaseloadError('wrong-passphrase');
      if (file.outgoing !== null) throw new CaseloadError('locked-by-another');
      const recoveryKey = newRecoveryKey();
      const recovery = await wrapWithRecoveryKey(identity, recoveryKey);
      const passphrase = await wrapWithPassphrase(identity, next, workFactor);
      writeKeyFile(folder, { ...file, at: now, passphrase, recovery });
      return { ok: true, recoveryKey };
    } finally {
      for (const each of secrets) each.identity.fill(0);
    }
  } catch (error) {
    return refusal(error);
  }
}

/** A new recovery sheet: the old recovery key no longer opens the caseload. Asks for the passphrase. */
export async function renewRecoveryKey(options: {
  folder: string;
  passphrase: string;
  now: string;
}): Promise<{ ok: true; recoveryKey: string } | { ok: false; code: OpenCode }> {
  try {
    const { file, secrets } = await unlock(options.folder, { passphrase: options.passphrase });
    try {
      const identity = secrets[0]?.identity;
      if (file === null || identity === undefined) throw new CaseloadError('wrong-passphrase');
      const recoveryKey = newRecoveryKey();
      const recovery = await wrapWithRecoveryKey(identity, recoveryKey);
      writeKeyFile(options.folder, { ...file, at: options.now, recovery });
      return { ok: true, recoveryKey };
    } finally {
      for (const each of secrets) each.identity.fill(0);
    }
  } catch (error) {
    return refusal(error);
  }
}
