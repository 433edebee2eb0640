/** See find.js: the installed Chromium-family program, or null. */
export function findBrowser(
  platform?: NodeJS.Platform,
  env?: Readonly<Record<string, string | undefined>>,
): string | null;

/** Where an installed browser is looked for, with that system's separators. */
export function browserPlaces(platform: NodeJS.Platform, env: Readonly<Record<string, string | undefined>>): string[];
