/** The operating system's key store by Electron's safeStorage (its asynchronous half: the other is going away). */
import { safeStorage } from 'electron';
import { keyStoreState, type KeyStore } from '../key-store.ts';

export function desktopKeyStore(platform: string): KeyStore {
  return {
    async state() {
      // The plain-text fallback is asked about first: it must not even be woken.
      const backend = platform === 'linux' ? safeStorage.getSelectedStorageBackend() : null;
      if (backend === 'basic_text') return keyStoreState({ platform, available: true, backend });
      return keyStoreState({ platform, available: await safeStorage.isAsyncEncryptionAvailable(), backend });
    },
    seal: (secret) => safeStorage.encryptStringAsync(secret),
    open: async (sealed) => (await safeStorage.decryptStringAsync(Buffer.from(sealed))).result,
  };
}
