import type { PageKind } from '../../../../db/types/page.ts';
import { dayOf, longDate, mediumDate, type PageInput } from './page-facts.ts';
import { familyCaptionMm } from '../kinds/family.ts';
import type { WritingPicture } from './packet.ts';
import { thenAndNowPictures } from './pictures.ts';
import type { Texts } from '../../texts/en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export const noPictures = { pictures: [] as WritingPicture[], trueSize: true, warning: '' };

/** Writing at the start and at the chosen visit; the family's page has to stay one sheet, a letter shows true size. */
export function picturesFor(kind: PageKind, input: PageInput, t: Texts): typeof noPictures {
  const day = dayOf(input);
  const days = new Map(input.record.visits.map((visit) => [visit.id, visit.date]));
  const samples = input.record.samples.filter((s) => (days.get(s.visitId) ?? s.takenAt.slice(0, 10)) <= day);
  const family = kind === 'family-summary';
  const room = family ? { widthMm: 178 - familyCaptionMm, heightMm: 13 } : { widthMm: 170, heightMm: 32 };
  const { pictures, trueSize, sameScale } = thenAndNowPictures(
    { ...input.record, samples },
    (on, which) =>
      family
        ? t.family[which](mediumDate(on, input.locale).replaceAll(' ', '\u00a0'))
        : t.family.picture(longDate(on, input.locale)),
    room,
  );
  if (pictures.length === 0) return { ...noPictures, warning: toldEnglish.printed.noPictures };
  const told = family ? sameScale : trueSize;
  const why = sameScale ? toldEnglish.printed.lineTooWide : toldEnglish.printed.noScale;
  return { pictures, trueSize, warning: told ? '' : toldEnglish.printed.notTrueSize(why) };
}
