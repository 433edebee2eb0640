import type { ConditionName } from '../../../change/index.ts';
import type { ChangeTexts } from './change-texts.ts';
import { capital, countWord, listed, plural } from '../count-words.ts';

const conditions: Partial<Record<ConditionName, Readonly<Record<string, string>>>> = {
  task: { copy: 'as copying', own: 'in own words', digits: 'in digits' },
  cue: { none: 'without a cue', visual: 'with a visual cue', verbal: 'with a spoken cue' },
  dose: {
    on: 'with medicine on',
    off: 'with medicine off',
    unsure: 'not sure whether medicine was on',
    none: 'without medicine',
  },
  hand: { right: 'with the right hand', left: 'with the left hand', same: 'with the same hand' },
  surface: {
    paper: 'on paper',
    screen: 'on a screen',
    'screen-film': 'on a screen with film',
    'tablet-paper': 'on paper on a tablet',
    'tablet-blind': 'on a tablet',
  },
  view: { 'true-size': 'read at true size', 'unknown-size': 'read at a size not known' },
};

/** "none", "2 words fewer". */
function amount(words: number): string {
  if (words === 0) return 'none';
  return `${plural(Math.abs(words), 'word')} ${words > 0 ? 'more' : 'fewer'}`;
}

/** Surface and device, as "screen, Slate 12". */
function surfaceWords(value: string): string {
  const [surface = '', ...device] = value.split(', ');
  return [
    conditions.surface?.[surface] ?? `on ${surface}`,
    ...(device.length > 0 ? [`(${device.join(', ')})`] : []),
  ].join(' ');
}

export const changeEn: ChangeTexts = {
  headline: {
    nothing: 'Nothing read yet',
    'not-comparable': 'Not comparable',
    'cannot-tell': 'Cannot tell yet',
    steady: 'About the same',
    sure: { up: 'Yes, up', down: 'Yes, down' },
    probable: { up: 'Probably, up', down: 'Probably, down' },
  },
  visits: (n) => capital(plural(n, 'visit', 'visits', true)),
  nothing: 'No sample has been read yet. As soon as somebody who does not know the text has read one, it shows here.',
  oneVisit: (right, of, low, high) =>
    `One visit: ${right} of ${of} words could be read (${low} to ${high} would be no surprise on the same day). ` +
    'One visit cannot show change: two more samples under the same conditions make a baseline.',
  afterBreak:
    'It is the first visit after a long break; what happened in between is not known: take it as a new baseline.',
  sinceBreak: (day) => `Counted since the break, from ${day}.`,
  onlyBaseline: 'All visits so far belong to the baseline. Two more samples after it can show a change.',
  moved: (direction, { from, to, of }, chances, least, leastChances) =>
    `${direction} from about ${from} to about ${to} words in ${of}; at least ${chances} that it is ` +
    `${direction === 'up' ? 'more' : 'less'} than at the start` +
    (least
      ? `, about ${leastChances} that it is at least ${plural(least, 'word')} ${direction === 'up' ? 'more' : 'fewer'}`
      : '') +
    '.',
  steady: ({ to, of }, largest, chances) =>
    `about ${to} of ${of} words. A change larger than ${plural(largest, 'word')} in ${of} is unlikely (${chances}).`,
  unclear: ({ from, to, of }, low, high) =>
    `${from === to ? `about ${to} words in ${of}` : `from about ${from} to about ${to} words in ${of}`}; ` +
    `anything from ${low > 0 || high < 0 ? amount(low) : low < 0 ? amount(low) : 'none'} to ${amount(high)} is possible. ` +
    'Cannot tell yet whether this is more than day-to-day change.',
  probably: (direction, chances) => `Probably ${direction}: about ${chances}. Take one more sample on another day.`,
  more: (n) =>
    `About ${plural(n, 'more sample', 'more samples', true)} under the same conditions would tell, if it goes on like this.`,
  moreHardly: 'More samples of this kind would hardly tell: use a longer text, or two samples in one visit.',
  notes: {
    'readers-differ': 'The two readers point opposite ways: ask a third.',
    'readers-change': 'Others read the first and the later visits; how readers differ is allowed for.',
  },
  allRight: (n) =>
    `Every word could be read at all ${countWord(n)} visits. This measure can show no further gain: choose a harder task, less help or more speed.`,
  noneRight: (n) =>
    `No word could be read at all ${countWord(n)} visits. Single letters will show change sooner than words: count letters, or shorten the task.`,
  notComparable: (first, later) =>
    `Not comparable: the first visits were written ${first}, the later ones ${later}. ` +
    'Take one sample as at the start, or two more as now.',
  condition: (name, value) =>
    conditions[name]?.[value] ??
    (name === 'view' ? `read at ${value} % of its size` : name === 'surface' ? surfaceWords(value) : value),
  visitsOf: (n, words) => `${countWord(n)} written ${words}`,
  partly: (compared, leftOut) => `Compared: ${compared}. Left out: ${leftOut}.`,
  readByTherapist: 'Only the therapist has read, who knows text and hand: a stranger would read fewer words.',
  askRepeat: 'Fewer words than before: take a sample on another day within two weeks.',
  chances: (part, of) => `${part} of ${of} chances`,
  and: listed,
};
