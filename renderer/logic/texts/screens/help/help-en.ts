/**
 * Help (F1) of each screen: what it is for, in one sentence, and how it goes, in the order in which it is done.
 * Short sentences, the words of the screen itself.
 */
export const helpEn = {
  start: {
    purpose: 'Makes your caseload, opens it, or shows the demo.',
    steps: [
      'Type your initials and a passphrase twice, then “Create the caseload”.',
      'Print or write down the recovery sheet: without it a lost passphrase is a lost caseload.',
      'To look around first, open the demo: its clients are invented.',
    ],
  },
  caseload: {
    purpose: 'Shows what is due today, and every client.',
    steps: [
      'New client: “Add a client”. A name is enough.',
      'Choose a row with the arrow keys; the right side follows. Enter does what the row says.',
      'The lists at the left show parts of it: samples to read, notes, what ends or runs out.',
    ],
  },
  client: {
    purpose: 'Keeps the note of a visit, the plan for the next one, and the facts of the record.',
    steps: [
      '“Start the first visit” below, or “Start a visit today” at the left, if today’s visit is not there yet.',
      'What the client told, your own judgement, the response: each field is saved as you leave it.',
      '“Whole record” holds diagnosis, precautions, medicine and what the client wants to write.',
      'Then go down the steps at the left: Screen, Sample, Read back, Program, Goal, Pages.',
    ],
  },
  intake: {
    purpose: 'Tells what may start, and what to do before writing.',
    steps: [
      'Red flags first: one yes stops the work until you have looked at it.',
      'Hand and body: look at the drawing, then press 3, 2, 1 or 0. Only what matters is asked.',
      'Seat and table: measure, and the drawing shows what to change.',
      'Findings says what follows. Then: Sample.',
    ],
  },
  sample: {
    purpose: 'Keeps a page of writing, measured, with how it was written.',
    steps: [
      '“New sample …”: choose the task, print or say the text, let the client write.',
      'Bring the page in: scan, photo, or paste. Fairhand finds lines, words and letters.',
      'Words: look at those with a dotted line; correct what was read wrongly. Then: Read back.',
    ],
  },
  readback: {
    purpose: 'Counts the words that somebody who does not know the text can read.',
    steps: [
      'A reader sits down at this window, types the initials and reads line by line. You look away.',
      'Two readers show how far readers differ. “Enter a count from paper” takes a count made elsewhere.',
      'The row shows words read with its interval. Then: Program.',
    ],
  },
  program: {
    purpose: 'Drafts the home program from what was found; you change and approve it.',
    steps: [
      'Each row is a line of the page. The right side tells why, by which rule, and what to mind.',
      'Change the dose, take lines out, add some from the library.',
      '“Approve” when it is yours. It then prints, and the next visit compares with it.',
    ],
  },
  goals: {
    purpose: 'Agrees on one written thing that a reader shall be able to read.',
    steps: [
      'The next reachable step is proposed from the samples. Change it until it fits.',
      'At each visit choose the level that was reached.',
    ],
  },
  pages: {
    purpose: 'Prints what leaves the room: for family, payer, referrer, and for practice.',
    steps: [
      'Choose a page at the left; what is shown is what prints.',
      'What is missing is named above the page. Tick several to print them in one go.',
      '“Keep as issued” keeps this very page in the record.',
    ],
  },
  progress: {
    purpose: 'Shows whether something has changed, and whether that is more than day-to-day noise.',
    steps: [
      'The sentence at the right is the answer. “The numbers behind this” shows how it was found.',
      'Then and now lays two pages side by side. The table holds every number.',
    ],
  },
  rules: {
    purpose: 'Shows every rule and number that decides something, with its source.',
    steps: [
      'Search, or choose kind and source. The right side tells when a rule acts.',
      'Switch a rule off, or set a number of your own: it counts from the next draft on.',
    ],
  },
  records: {
    purpose: 'Makes and checks backups, and moves clients between caseloads.',
    steps: [
      '“Back up now” writes an encrypted copy, opens it again and compares.',
      'Name a second place, such as a USB stick: copies then go there too.',
    ],
  },
  figures: {
    purpose: 'Asks the caseload as a whole: goals met, change beyond noise, practice, visits.',
    steps: [
      'Choose how to group: by diagnosis, or by what is written. No share is given below ten clients.',
      'Read what may not be concluded: nothing here compares people or proves what helped.',
      'The same figures leave as a table without names.',
    ],
  },
  handover: {
    purpose: 'Hands clients to a colleague as an encrypted file, and takes theirs in.',
    steps: [
      'Give your colleague your own key; keep theirs under a name, once each.',
      'Choose clients and a key, then write the file to a stick or the shared folder.',
      'Taking in shows first what would change. What both of you changed is shown side by side.',
    ],
  },
  settings: {
    purpose: 'Your initials, the look, keys, lock and passphrase.',
    steps: [
      'Each field is saved as you leave it.',
      '“People”: each one who uses this caseload gets a sign-in. Lock with Ctrl+L to hand the laptop over.',
    ],
  },
};
