/** The words of the worklist: what waits, where it stands, what to do about it, and the screen on which it is done. */
import type { Tab } from './tabs.ts';
import type { WorkGroup, WorkItem } from './worklist.ts';

export const workGroupNames: Record<WorkGroup, string> = {
  flag: 'Red flags',
  today: 'Visits today',
  read: 'Samples to read',
  report: 'Reports and notes',
  ends: 'Ends or runs out',
  draft: 'Programs not approved',
  goal: 'Goals due',
  unplanned: 'No visit planned',
};

/** The lists beside the whole worklist, each with the groups it shows. */
export const workLists: readonly { list: string; label: string; groups: readonly WorkGroup[] }[] = [
  { list: 'read', label: 'Samples to read', groups: ['read'] },
  { list: 'report', label: 'Reports and notes', groups: ['report'] },
  { list: 'ends', label: 'Ends or runs out', groups: ['ends'] },
];

export interface WorkWords {
  what: string;
  stands: string;
  /** One verb. */
  action: string;
  tab: Tab;
}

const some = (count: number, one: string, many: string): string =>
  `${count === 1 ? 'One' : count} ${count === 1 ? one : many}`;

/** @param showDate writes an ISO date as the window does */
export function workWords(item: WorkItem, showDate: (iso: string) => string): WorkWords {
  const on = item.on === null ? '' : showDate(item.on);
  switch (item.kind) {
    case 'flag':
      return {
        what: some(item.count, 'red flag', 'red flags'),
        stands: 'not reviewed',
        action: 'Review',
        tab: 'intake',
      };
    case 'visit':
      return item.on === null
        ? { what: 'Visit', stands: 'planned, not begun', action: 'Start', tab: 'client' }
        : { what: 'Visit', stands: 'begun', action: 'Go on', tab: 'client' };
    case 'sample':
      return {
        what: some(item.count, 'sample', 'samples'),
        stands: `${item.count === 1 ? 'written' : 'the first written'} ${on}, no reader yet`,
        action: 'Read',
        tab: 'readback',
      };
    case 'progress-report':
      return { what: 'Progress report', stands: `due ${on}`, action: 'Write', tab: 'pages' };
    case 'visit-note':
      return item.count === 1
        ? { what: 'Visit note', stands: `of ${on}, not written`, action: 'Write', tab: 'client' }
        : { what: `${item.count} visit notes`, stands: `not written since ${on}`, action: 'Write', tab: 'client' };
    case 'co-sign':
      return {
        what: some(item.count, 'entry of an assistant', 'entries of an assistant'),
        stands: `${item.count === 1 ? 'of' : 'since'} ${on}, not co-signed`,
        action: 'Co-sign',
        tab: 'client',
      };
    case 'certification':
      return {
        what: 'Certification',
        stands: item.late ? `ended ${on}` : `ends ${on}`,
        action: 'Renew',
        tab: 'client',
      };
    case 'authorization':
      return {
        what: 'Authorized visits',
        stands:
          item.count > 0 ? `${item.count} left` : item.count === 0 ? 'all used' : `${-item.count} more than authorized`,
        action: 'Ask for more',
        tab: 'client',
      };
    case 'draft':
      return { what: 'Home program', stands: `draft of ${on}`, action: 'Finish', tab: 'program' };
    case 'goal':
      return { what: 'Goal', stands: `to be reached by ${on}`, action: 'Rate', tab: 'goals' };
    case 'first-visit':
      return { what: 'First visit', stands: 'not seen yet', action: 'Start', tab: 'client' };
    case 'no-visit-planned':
      return { what: 'No visit planned', stands: `last seen ${on}`, action: 'Plan', tab: 'client' };
  }
}

/** One sentence for the head: "2 visits today, 9 things due." */
export function dueSentence(items: readonly WorkItem[]): string {
  const visits = items.filter((item) => item.kind === 'visit').length;
  const others = items.length - visits;
  if (items.length === 0) return '';
  return [
    visits > 0 ? `${visits} ${visits === 1 ? 'visit' : 'visits'} today` : 'No visit today',
    others > 0 ? `${others} ${others === 1 ? 'thing' : 'things'} due` : 'nothing else due',
  ].join(', ');
}
