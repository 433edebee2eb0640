import { frameEn } from './en/frame-en.ts';
import { partsEn } from './en/parts-en.ts';
import { peopleEn } from './people/people-en.ts';
import { placesEn } from './en/places-en.ts';
import { startEn } from './en/start-en.ts';

/** What can be said before a caseload is open: the start shows these, and the rest comes while they are read. */
export const firstWordsEn = { frame: frameEn, parts: partsEn, people: peopleEn, places: placesEn, start: startEn };
