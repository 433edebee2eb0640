/** Pages: their kinds, papers to practice on, what is counted for a payer. */
export const paperToldEn = {
  kinds: {
    'family-summary': ['Family summary', 'one page, plain words'],
    'home-program': ['Home program', 'with log and check card'],
    'practice-pages': ['Practice pages', 'true to scale'],
    'spiral-sheet': ['Spiral sheet', 'to draw on, true to scale'],
    caregiver: ['Page for the helper', 'one cue, then less'],
    'initial-evaluation': ['Initial evaluation', 'first visit, with the screen'],
    'visit-note': ['Visit note', 'text to copy'],
    'progress-report': ['Progress report', 'for the payer'],
    letter: ['Letter', 'to a referrer'],
    referral: ['Referral', 'after a red flag'],
    discharge: ['Discharge summary', 'with a plan to keep it up'],
  } as Record<string, [string, string]>,
  sheets: (count: number) => `${count} ${count === 1 ? 'sheet' : 'sheets'}`,
  rulings: {
    squares: (mm: string) => `Squares ${mm} mm`,
    dashed: (mm: string) => `Dashed midline ${mm} mm`,
    ruled: (mm: string, name: string) => `Ruled ${mm} mm (${name})`,
    guide: (mm: string) => `Guide to lie under plain paper ${mm} mm`,
    boxes: (mm: string) => `Form boxes ${mm} mm`,
  },
  ruledNames: { 'ruled-8.7': 'wide', 'ruled-8': 'feint', 'ruled-7.1': 'medium', 'ruled-6.35': 'narrow' } as Record<
    string,
    string
  >,
  otherRulings: {
    plain: 'Plain',
    signature: 'Signature boxes',
    'signature-large': 'Large signature boxes',
    'check-large': 'Large practice checks',
    'check-true': 'Practice checks, real size',
    'dots-30': 'Dots to join, 30 mm apart',
    'lean-10': 'Leaning lines to lie under the sheet',
  } as Record<string, string>,
  pictures: 'pictures',
  actualSize: 'Print at actual size (100 %). “Fit to page” makes the lines smaller than they should be.',
  sinceReport: (
    visits: number,
    days: number,
    due: 'none' | 'now' | 'later',
    dueVisits: number | null,
    dueDays: number | null,
    reported: boolean,
  ) => {
    const some = (n: number, one: string) => `${n} ${n === 1 ? one : `${one}s`}`;
    const limits = [dueVisits === null ? '' : some(dueVisits, 'visit'), dueDays === null ? '' : some(dueDays, 'day')];
    const rule =
      due === 'none'
        ? ''
        : `; a report is due ${due === 'now' ? 'now' : `after ${limits.filter(Boolean).join(' or ')}`}`;
    const gone = days === 0 ? '' : ` and ${some(days, 'day')}`;
    return `${some(visits, 'visit')}${gone} since the ${reported ? 'last report' : 'start of care'}${rule}.`;
  },
  authorized: (used: number, of: number) =>
    used > of
      ? `${used} visits used, ${used - of} more than the ${of} authorized.`
      : `${used} of ${of} authorized visits used, ${of - used} left.`,
  certified: (day: string, left: number) => {
    const days = Math.abs(left) === 1 ? '1 day' : `${Math.abs(left)} days`;
    return left < 0 ? `Certification ended on ${day}, ${days} ago.` : `Certified until ${day}: ${days} left.`;
  },
  missed: (visits: number) => (visits === 1 ? '1 visit missed.' : `${visits} visits missed.`),
};
