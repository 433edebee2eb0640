/** The operating system's own key store, as far as a shell has one. */

/**
 * `usable`; `none` when the system offers no store; `plain-text` when it would write secrets without protection: then
 * it is never used.
 */
export type KeyStoreState = 'usable' | 'none' | 'plain-text';

export interface KeyStore {
  /** May make the system ask its user to open the store. */
  state(): Promise<KeyStoreState>;
  /** Only this system account opens it again. Rejects when the store does not answer. */
  seal(secret: string): Promise<Uint8Array>;
  /** Rejects when the store does not answer, or did not seal it. */
  open(sealed: Uint8Array): Promise<string>;
}

/** What Electron says about its safeStorage. `backend` is known on Linux only. */
export interface KeyStoreFacts {
  platform: string;
  available: boolean;
  backend: string | null;
}

/** Stores of Linux desktops that encrypt with a key of the signed-in user (Electron's documentation, safeStorage). */
const LINUX_STORES: readonly string[] = ['gnome_libsecret', 'kwallet', 'kwallet5', 'kwallet6'];

/** On Linux only a store that is known by name counts: `available` is true for the plain-text fallback too. */
export function keyStoreState({ platform, available, backend }: KeyStoreFacts): KeyStoreState {
  if (platform === 'linux' && backend === 'basic_text') return 'plain-text';
  if (!available) return 'none';
  if (platform === 'linux') return backend !== null && LINUX_STORES.includes(backend) ? 'usable' : 'none';
  return platform === 'darwin' || platform === 'win32' ? 'usable' : 'none';
}
