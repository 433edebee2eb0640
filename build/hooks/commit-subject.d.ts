/** See commit-subject.js. */
export function wrongWithSubject(subject: string): string | null;
