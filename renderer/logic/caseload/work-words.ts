/** The words of the worklist: what waits, where it stands, what to do about it, and the screen on which it is done. */
import type { Told } from '../texts/screens/en/screens-en.ts';
import type { Tab } from './tabs.ts';
import type { WorkGroup, WorkItem } from './worklist.ts';

/** The lists beside the whole worklist, each named as the group that it shows. */
export const workLists: readonly WorkGroup[] = ['read', 'report', 'ends'];

export interface WorkWords {
  what: string;
  stands: string;
  /** One verb. */
  action: string;
  tab: Tab;
}

/** @param showDate writes an ISO date as the window does */
export function workWords(item: WorkItem, showDate: (iso: string) => string, words: Told['worklist']): WorkWords {
  const on = item.on === null ? '' : showDate(item.on);
  const { count } = item;
  const of = (tab: Tab, what: string, stands: string, action: string): WorkWords => ({ what, stands, action, tab });
  switch (item.kind) {
    case 'flag':
      return of('intake', words.redFlags(count), words.notReviewed, words.review);
    case 'visit':
      return item.on === null
        ? of('client', words.visit, words.plannedNotBegun, words.start)
        : of('client', words.visit, words.begun, words.goOn);
    case 'sample':
      return of('readback', words.samples(count), words.noReaderYet(count, on), words.read);
    case 'progress-report':
      return of('pages', words.progressReport, words.dueOn(on), words.write);
    case 'visit-note':
      return of('client', words.visitNotes(count), words.notesNotWritten(count, on), words.write);
    case 'co-sign':
      return of('client', words.assistantEntries(count), words.notCoSigned(count, on), words.coSign);
    case 'certification':
      return of('client', words.certification, words.certificationEnds(on, item.late), words.renew);
    case 'authorization':
      return of('client', words.authorizedVisits, words.visitsLeft(count), words.askForMore);
    case 'draft':
      return of('program', words.homeProgram, words.draftOf(on), words.finish);
    case 'co-sign-program':
      return of('program', words.homeProgram, words.draftNotCoSigned(on), words.coSign);
    case 'goal':
      return of('goals', words.goal, words.toBeReachedBy(on), words.rate);
    case 'first-visit':
      return of('client', words.firstVisit, words.notSeenYet, words.start);
    case 'no-visit-planned':
      return of('client', words.noVisitPlanned, words.lastSeen(on), words.plan);
  }
}

/** One sentence for the head: "2 visits today, 9 things due." */
export function dueSentence(items: readonly WorkItem[], words: Told['worklist']): string {
  const visits = items.filter((item) => item.kind === 'visit').length;
  return items.length === 0 ? '' : words.dueSentence(visits, items.length - visits);
}

/** "in 16 days", "18 days late", "today": words, never color alone. */
export function dueWords(item: Pick<WorkItem, 'due' | 'days'>, words: Told['worklist']): string {
  if (item.due === null) return words.now;
  if (item.days === 0) return words.today;
  return item.days > 0 ? words.inDays(item.days) : words.daysLate(-item.days);
}
