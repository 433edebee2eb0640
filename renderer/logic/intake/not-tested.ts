/** Usual reasons why an item was not tested; the therapist may write another. */
export const notTestedReasons: readonly string[] = [
  'No time today',
  'Too tired',
  'Pain',
  'Client preferred not to',
  'Could not follow the task',
  'Nothing to test with',
];
