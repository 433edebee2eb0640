/** Whether a package can be signed and notarized with what the environment names; electron-builder reads the same names. */

type Environment = Readonly<Record<string, string | undefined>>;

/** Each row by itself lets Apple's service take the package. */
const NOTARY = [
  ['APPLE_API_KEY', 'APPLE_API_KEY_ID', 'APPLE_API_ISSUER'],
  ['APPLE_ID', 'APPLE_APP_SPECIFIC_PASSWORD', 'APPLE_TEAM_ID'],
  ['APPLE_KEYCHAIN_PROFILE'],
];

/** One sentence on what is missing; null where nothing is, and on Linux, where packages carry no signature of their own. */
export function missingToSign(env: Environment, platform: string): string | null {
  if (platform !== 'darwin' && platform !== 'win32') return null;
  const has = (name: string) => Boolean(env[name]);
  const certificates = ['CSC_LINK', 'CSC_NAME', ...(platform === 'win32' ? ['WIN_CSC_LINK'] : [])];
  if (!certificates.some(has)) {
    const warns = platform === 'win32' ? 'Windows will warn' : 'macOS will refuse to open it for';
    return `The package is not signed, because the environment names no certificate (${certificates.join(', ')}): ${warns} whoever gets it.`;
  }
  if (platform === 'darwin' && !NOTARY.some((names) => names.every(has))) {
    return 'The package is signed and not notarized, because the environment names no account of Apple’s notary service (APPLE_API_KEY with its id and issuer, or APPLE_ID with an app password and team): macOS will warn whoever opens it.';
  }
  return null;
}
