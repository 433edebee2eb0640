import type { InkDocument, InkQuality, InkWarning } from './ink-types.ts';
import type { Contacts } from './prepare/contacts.ts';
import { LIMITED } from './quality.ts';

const MESSAGES = {
  empty: 'There is no pen-down ink in this recording, so nothing is measured.',
  'no-scale': 'The size of a unit is not known: times and pressure are told, lengths and speeds are not.',
  'no-time': 'The samples carry no times: the ink can be drawn, but no movement is told.',
  'no-pressure': 'The pen tells no pressure, or one that never moves.',
  'no-hover': 'Nothing is known of the pen while it was in the air; lifts come from the gaps between contacts.',
  'low-rate': 'The pen was asked fewer than 80 times a second: fine movement is not told.',
  dropped: 'More than 2 % of the samples were lost on the way; movement is told with care.',
  'time-backward': 'Some samples were not later than the one before them; they were left out.',
} as const;

type InkWarningCode = keyof typeof MESSAGES;

/** What to know about a recording before its numbers are read. */
export function inkWarnings(document: InkDocument, read: Contacts, quality: InkQuality): InkWarning[] {
  const contacts = document.traces.filter(({ kind, x }) => kind === 'down' && x.length > 0);
  const isEmpty = contacts.length === 0;
  const hasTime = contacts.every(({ t }) => t !== null);
  const codes: Record<InkWarningCode, boolean> = {
    empty: isEmpty,
    'no-scale': !isEmpty && !document.calibrated,
    'no-time': !isEmpty && !hasTime,
    'no-pressure': !isEmpty && !quality.pressure,
    'no-hover': contacts.length > 1 && !quality.hover,
    'low-rate': quality.rateHz !== null && quality.rateHz < LIMITED.rateHz,
    dropped: quality.droppedShare > LIMITED.lost,
    'time-backward': read.backward > 0,
  };
  return (Object.keys(MESSAGES) as InkWarningCode[])
    .filter((code) => codes[code])
    .map((code) => ({ code, message: MESSAGES[code] }));
}
