import { doseHows } from './dose-hows.ts';
import type { OccasionCode } from '../../../db/types/occasions.ts';
import type { Rest } from '../../../db/types/program.ts';

/** First letter small, but for names in capitals. */
export const smallFirst = (title: string): string =>
  /^\p{Lu}\p{Ll}/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title;
const minutes = (n: number): string => `${n} ${n === 1 ? 'minute' : 'minutes'}`;

/**
 * Words that printed pages are made of, in one place, so that another language is one more object of this shape.
 * Family words: short and plain, no diagnosis, no jargon (tests/pages-print/readability.test.ts measures them).
 */
const en = {
  practice: {
    bar: (mm: number) => `${mm} mm`,
    measured: (mm: number) => `Measured ${mm} mm?`,
    yes: 'yes',
    no: 'no',
    title: 'Practice page',
    /** One page of several days: "Practice page 3 of 12: shopping list". */
    dayTitle: (day: number, days: number, what: string) => `Practice page ${day} of ${days}: ${what}`,
    instruction: 'Stop when a line gets hard to read.',
    sample: 'Please call me back before half past eight.',
    rest: (minutes: number) => `Stop here. Rest ${minutes} minutes, then look back at your lines.`,
    restFresh: 'Stop here. Rest until you are as fresh as at the start, then look back at your lines.',
    nextTime: 'Stop here for today. The lines below are for next time.',
    /** Words on a practice check. */
    check: { date: 'Date', payTo: 'Pay to', sum: 'Sum in words', sign: 'Signature', mark: 'PRACTICE' },
    /** Figures that are taken for each other, and sums as they are written. */
    figures: ['1 7 1 7', '4 9 4 9', '0 6 0 6', '12.50', '407.96'],
  },
  /** The sheet of two spirals. */
  spiral: {
    title: 'Two spirals',
    hand: 'Hand',
    seconds: 'Seconds',
    traced: '1  On the line',
    tracedHow: [
      'From the middle outwards,',
      'along the gray line,',
      'without a stop.',
      'Dark pen. The hand does',
      'not lie on the table.',
    ],
    free: '2  Free',
    freeHow: ['From the middle outwards,', 'four turns without a line,', 'about as large as above,', 'without a stop.'],
  },
  /** What the client wants to write, as a short name on a page. */
  occasions: {
    signature: 'signature',
    check: 'check',
    list: 'list',
    message: 'message',
    form: 'form',
    card: 'card',
    diary: 'diary',
    work: 'notes at work',
    recipe: 'recipe',
    'name-address': 'name and address',
    numbers: 'dates and numbers',
    board: 'board',
    other: 'own words',
  } as Record<OccasionCode, string>,
  common: {
    name: 'Name',
    date: 'Date',
    next: 'Next visit',
    hand: { right: 'right', left: 'left' },
    call: (name: string, number: string) => `Questions? Call ${[name, number].filter(Boolean).join(': ')}.`,
    callBlank: 'Questions? Call: ______________________',
    deferShort: 'This sheet is from your therapist. If something is different from what you were told, ask us first.',
    deferLong:
      'This sheet supports, and does not replace, the judgement of the licensed therapist who gave it to you. ' +
      'It is not a diagnosis. Follow your therapist and local rules; if they differ from this sheet, follow them. ' +
      'In an emergency call your local emergency number.',
    from: (who: string, clinic: string) => [who, clinic].filter(Boolean).join(', '),
    pageOf: (page: number, pages: number) => `Page ${page} of ${pages}`,
  },
  dose: {
    minutes,
    lines: (n: number) => `${n} ${n === 1 ? 'line' : 'lines'}`,
    reps: (sets: number | null, reps: number) => (sets && sets > 1 ? `${sets} times ${reps}` : `${reps} times`),
    restTime: ({ least, most }: Rest) =>
      most === null ? `at least ${minutes(least)}` : most === least ? minutes(least) : `${least} to ${most} minutes`,
    rest: (time: string) => `rest ${time}`,
    restAfterEach: (time: string) => `rest ${time} after each`,
    doThese: (often: string) => `Do these ${often}.`,
    perDay: (n: number) => (n === 1 ? 'once a day' : n === 2 ? 'twice a day' : `${n} times a day`),
    perWeek: (n: number) => (n === 7 ? 'every day' : `${n} ${n === 1 ? 'day' : 'days'} a week`),
    turns: (turns: number, each: number) => `${turns === 1 ? 'one turn' : `${turns} turns`} of ${minutes(each)}`,
    linesATurn: (n: number) => `${n} ${n === 1 ? 'line' : 'lines'} a turn`,
    /** English; other languages are laid over it by db/rules/texts. */
    how: doseHows as Readonly<Record<string, string>>,
  },
  stop: {
    title: 'When to stop',
    line: 'Stop when a line gets hard to read. Stopping then is part of the plan.',
    signs: 'Stop and call us: pain that is more than mild or grows, tingling, numb fingers, a change of skin color.',
    /** For whom pain of 3 or more is known. */
    signsSore: 'Stop and call us: more pain than when you began, tingling, numb fingers, a change of skin color.',
    emergency:
      'Call the emergency number: new weakness or a numb side, a change of face or speech, sudden or new dizziness, ' +
      'loss of balance, double vision, trouble walking.',
  },
  family: {
    title: 'Your writing visit',
    sawTitle: 'What we saw',
    saw: {
      unfamiliar: (right: number, of: number, readers: number) =>
        `${readers > 1 ? `${readers} people read about` : 'One person read'} ${right} of ${of} words.${of < 20 ? ' A short text can flatter.' : ''}`,
      family: (right: number, of: number, readers: number) =>
        `${readers > 1 ? `${readers} people close to you read about` : 'One person close to you read'} ${right} of ${of} words.`,
      therapist: (right: number, of: number, _readers: number) => `Your therapist read ${right} of ${of} words.`,
    },
    allAgain: 'It was all of them last time too. We can try something harder.',
    noneAgain: 'It was the same last time. Next we look at single letters: they change first.',
    sawMore: {
      up: 'That is more than before, and more than the usual ups and downs.',
      down: 'That is less than before, and more than the usual ups and downs. We will look at the plan with you.',
      steady: 'That is about the same as before.',
      'cannot-tell': 'Writing is better on some days than on others. We cannot tell yet.',
      'not-comparable': 'You wrote in another way this time, so we cannot compare it yet.',
      nothing: '',
    },
    probably: {
      up: 'It looks like more than before. One more day of writing will show if that is so.',
      down: 'It looks like less than before. One more day of writing will show if that is so.',
    },
    lastTime: (right: number, of: number) => `Last time it was ${right} of ${of}.`,
    firstTime: (right: number, of: number) => `At the start it was ${right} of ${of}.`,
    notReadYet: 'You wrote for us today. Nobody has read it yet. We will tell you next time.',
    noSample: 'Today we did not test your writing.',
    harderChanged: 'Today was harder. We changed the plan.',
    harder: 'Today was harder. That happens. We will look again next time.',
    otherConditions: 'Some things were not the same this time, so the two are hard to compare.',
    picture: (date: string) => `Written ${date}`,
    pictureOf: (caption: string) => `Picture of lines written by hand. ${caption}.`,
    then: (date: string) => `At the start, ${date}`,
    now: (date: string) => `Now, ${date}`,
    goalTitle: 'Your goal',
    goalRead: {
      unfamiliar: (right: number, of: number) => `A new reader reads ${right} of ${of} words.`,
      family: (right: number, of: number) => `Your family can read ${right} of ${of} words.`,
    },
    inYourWords: (words: string) => `You said: “${words}”`,
    nextStep: (step: string) => `Next step: ${step.replace(/[.\s]*$/, '.')}`,
    practiceTitle: 'What to practice',
    noProgram: 'No home practice for now.',
    more: 'More is on your home program sheet.',
    elsewhere: 'What to practice is on your home program sheet.',
    careElsewhere: 'Take care as your home program sheet says.',
    use: (what: string) => `Use: ${what}.`,
    /** A title inside a sentence: "Squares of 7 mm" as "squares of 7 mm"; "TV pen" stays. */
    inSentence: smallFirst,
    hand: (hand: string) => `Write with your ${hand} hand.`,
    glasses: 'Wear your glasses.',
    afterTablet: (minutes: number) => `Start about ${minutes} minutes after your tablet.`,
    missed: 'Missed a day? Skip it. Do not do double.',
    bring: 'Please bring your pen, your pages and your log.',
    helpTitle: 'How others can help',
    setUp: 'Set up chair, table and paper.',
    help: ['Praise the effort. Do not fix each letter.', 'Do not hold the hand unless we showed you how.'],
    setupTitle: 'Chair and table',
    setup: {
      like: 'Set up chair and table like this.',
      seat: (cm: string) => `Seat: ${cm} high while you sit on it.`,
      table: (cm: string) => `Table: ${cm} high.`,
      footrest: (cm: string) => `Put a firm block of ${cm} under both feet and push it away before you stand.`,
      raiseChair: ({ now, by, cushion }: { now: string; by: string; cushion: boolean }) =>
        `Your chair is ${now}: raise it ${by}${cushion ? ' with a firm cushion' : ''}.`,
      lowerChair: ({ now, by }: { now: string; by: string }) => `Your chair is ${now}: lower it ${by}.`,
      raise: (cm: string) => `Raise the table by ${cm} with firm blocks.`,
      labels: { seat: 'Seat', table: 'Table', footrest: 'Feet' },
    },
  },
  program: {
    title: 'Home program',
    forAll: 'In all of these:',
    visitTitle: 'With us, at your visits',
    setupTitle: 'Before you start',
    doTitle: 'What to do',
    useTitle: 'What to use',
    goodTitle: 'Good to know',
    careTitle: 'Take care',
    helpTitle: 'For helpers',
    dayTotal: (minutes: number) => `All in all about ${minutes} minutes on a practice day.`,
    draft: 'DRAFT, not yet approved by the therapist',
    /** An assistant's draft; the short one stands at the foot of every sheet that comes from it. */
    notCoSigned: 'Not co-signed',
    preparedBy: (by: string, signedBy: string | null) =>
      `Prepared by ${by} (assistant or student), ${signedBy === null ? 'not co-signed' : `co-signed by ${signedBy}`}.`,
    approved: (date: string, by: string, rules: string) => `Approved ${date} by ${by}. Rules ${rules}.`,
  },
  log: {
    title: 'Practice log',
    intro:
      'One row a day. Fill in the circle that fits, or put an X in it. Tired and pain: 0 is none, 10 is the most. A helper may mark for you.',
    head: ['Day', 'Done', 'Minutes', 'Tired before', 'Tired after', 'Pain', 'It was'],
    /** What stands beside the circles that have no number. */
    circles: { done: 'yes', felt: ['easy', 'fair', 'hard'] },
    stop: 'Stop when a line gets hard to read. Stopping then is part of the plan.',
    bring: 'Bring this sheet to your next visit.',
  },
  caregiver: {
    title: 'How you can help',
    setupTitle: 'Before you start',
    seat: (height: string) => `The seat is ${height} high.`,
    cueTitle: 'One word before the line',
    task: (title: string) => `Today’s task: ${title.replace(/[.\s]*$/, '.')}`,
    cue: [
      'Say one short word before the line, the one we showed you.',
      'Say nothing while the pen moves.',
      'Wait 10 seconds before you help.',
      'Then say one thing that went well.',
    ],
    fadingTitle: 'Then help less',
    fading: [
      'First: one word before each line.',
      'Then: before every second line.',
      'Then: only before the first line.',
      'Then: no word at all.',
      'Take the next step after 3 good days. Go back one step after a hard day.',
    ],
    notTitle: 'What does not help',
    not: [
      'Do not hold the hand.',
      'Do not fix letters.',
      'Do not finish words.',
      'Do not go on when the hand is tired.',
    ],
  },
  card: {
    title: 'Check as you write',
    beforeTitle: 'Before I start',
    before: [
      'Body and arm placed the way I was shown.',
      'Paper turned the way it was shown to me.',
      'Pen ready, glasses on if I need them.',
    ],
    duringTitle: 'After each line',
    during: [
      'Look at the line. Can I read every word?',
      'Do I hold the pen the way I was shown? Is my hand where it should be?',
      'Pause. Let the hand rest open.',
    ],
    afterTitle: 'At the end',
    after: [
      'I guess: a reader can read ____ of ____ words.',
      'A reader could read ____ of ____ words.',
      'If lines got worse after a pause, I take a longer pause next time.',
    ],
    stop: 'I stop when a line gets hard to read. I come back later or tomorrow.',
    signed: {
      duringTitle: 'After each signature',
      look: 'Look at it. Is it mine?',
      stop: 'I stop when my hand gets tired. I come back later or tomorrow.',
    },
  },
};
export type Texts = typeof en;
export const texts: Texts = en;
