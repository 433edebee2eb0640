/** Kinds of task that may be compared with each other, and kinds of readers. */

/** Task family of each kind of task that is read word by word; others are not scored. */
const FAMILIES: Readonly<Record<string, string>> = {
  copy: 'copy',
  pangram: 'copy',
  sentences: 'copy',
  'date-line': 'copy',
  own: 'own',
  free: 'own',
  'goal-output': 'own',
  digits: 'digits',
};

/** @returns the family of a task or of a family itself; null when the task is not scored */
export const familyOf = (task: string): string | null => (Object.hasOwn(FAMILIES, task) ? FAMILIES[task]! : null);

/** Kinds of readers, least familiar with the client's hand first. */
export const READER_KINDS: readonly string[] = ['unfamiliar', 'family', 'therapist'];
