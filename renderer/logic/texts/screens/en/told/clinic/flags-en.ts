/** Red flags: what stands in the way, and why. */
export const flagsToldEn = {
  stopEverything: (title: string, more: number) => `Stop everything: ${title}${more > 0 ? ` and ${more} more` : ''}.`,
  noExercises: (title: string, more: number) =>
    `No exercises until this is reviewed: ${title}${more > 0 ? ` and ${more} more` : ''}.`,
  notAsked: (questions: number) =>
    questions === 1
      ? 'One red-flag question was not asked yet.'
      : `${questions} red-flag questions were not asked yet.`,
  yesTo: (question: string) => `Yes to: “${question}”`,
  seenAgain: 'It was reviewed before, and seen again since.',
  fewerWords: (before: number, of: number, now: number) =>
    `Fewer words than before: about ${before} of ${of} at the start, about ${now} now, with no explanation noted.`,
  painRoseInSample: (before: number, after: number) =>
    `Pain rose from ${before} to ${after} of 10 while a sample was written.`,
  painRoseInLog: (by: string) =>
    `Pain rose by ${by} of 10 from the first three days of the practice log to the last three.`,
  call: {
    'emergency-number': 'your local emergency number, now.',
    'crisis-service': 'the crisis service or the doctor, together with the client, before the client leaves.',
    'doctor-today': "the client's doctor, today.",
    'referrer-today': 'whoever referred the client, today.',
    neurology: "the client's doctor today, with a request for a neurologist's opinion.",
  },
};
