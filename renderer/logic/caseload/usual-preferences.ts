/** What a therapist's window looks like until she chooses otherwise. Apart from its schema, which the first screen can do without. */
export const usualPreferences = {
  theme: 'system' as const,
  largeTargets: false,
  singleKeys: true,
  lockMinutes: 10,
  language: 'system' as const,
  keys: {},
};
