/**
 * What a program keeps in its own words: why a line is in or out. It is stored in English and told anew from there
 * (`texts/retold.ts`): no sentence here may change with its values, else it could not be read back.
 */
export const draftToldEn = {
  graspFirst: 'Not tested is not safe: the pen grasp comes first.',
  notTested: (names: string) => `Not tested is not safe: ${names}.`,
  notKnown: (names: string, because: string) => `Not known: ${names}. It may forbid this line: ${because}`,
  flagOpen: (title: string) => `A red flag is open: ${title}. Nothing is approved until it was reviewed.`,
  forbidden: (title: string, because: string) =>
    `"${title}" is forbidden for this client: ${because} Remove it, or give a reason for keeping it.`,
  answeredYes: 'It was answered with yes.',
  noExercise: 'No exercise for now: words get on paper in other ways.',
  clash: (group: string) => `${group}: another line says it.`,
  fromLibrary: 'Added from the library by the therapist.',
  ownLine: "The therapist's own line.",
  noTime: 'No room: the minutes of the day are used.',
  noPlace: 'No room: the day has its items.',
  tooTired: 'Writing tires: drills go first.',
  tooHigh: 'Above the tier of the program by more than one.',
  inItsPlace: 'All that is written has its own place: no ruled paper is needed.',
  noWriting: 'A pen can be held, but no writing may be given now.',
  upAndBack: (up: string, back: string) => `Up: ${up} Back: ${back}`,
  up: (up: string) => `Up: ${up}`,
  redFlagIsOpen: 'a red flag is open',
};
