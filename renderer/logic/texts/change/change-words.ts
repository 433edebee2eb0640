/** The verdict about change as sentences that a therapist can defend, and the words that stand over it. */
import { CONDITIONS, type ChangeExamination, type ChangeLimits, type Visit } from '../../../change/index.ts';
import { wilson } from '../../../statistics/wilson.ts';
import { decimalsIn } from '../decimals.ts';
import { changeDe } from './change-de.ts';
import { changeEn } from './change-en.ts';
import { changeEs } from './change-es.ts';
import type { ChangeTexts } from './change-texts.ts';
import type { Language } from '../languages.ts';

const texts: Readonly<Record<Language, ChangeTexts>> = { en: changeEn, es: changeEs, de: changeDe };

/** "17 of 20 chances", "199 of 200 chances": in twentieths, near certainty as one in so many. */
function chanceWords(chance: number, t: ChangeTexts): string {
  if (chance < 0.95) return t.chances(Math.round(chance * 20), 20);
  const of = Math.min(10_000, Math.round(1 / (1 - chance)));
  return t.chances(of - 1, of);
}

/** "9 of 10 chances". */
const tenths = (chance: number, t: ChangeTexts): string => t.chances(Math.round(chance * 10), 10);

/** The verdict in a few words. */
export function changeHeadline({ answer }: ChangeExamination, language: Language = 'en'): string {
  const { headline } = texts[language];
  const { verdict, leaning } = answer;
  if (verdict === 'up' || verdict === 'down') return headline.sure[verdict];
  return leaning ? headline.probable[leaning] : headline[verdict];
}

/**
 * The verdict in sentences; "not comparable" comes before any number.
 * @param day how a calendar day is written
 */
export function changeSentences(
  found: ChangeExamination,
  limits: ChangeLimits,
  { language = 'en', day = (iso) => iso }: { language?: Language; day?: (iso: string) => string } = {},
): string[] {
  const t = texts[language];
  const { answer } = found;
  const { verdict, notes, loss } = answer;
  if (verdict === 'nothing') return [t.nothing];
  if (verdict === 'not-comparable') return [notComparable(found, t)];
  const known = found.kind === 'therapist' ? [t.readByTherapist] : [];
  if (answer.compared === 0) return [...beforeAnything(found, t, language), ...known];
  const edge = notes.includes('all-right') ? t.allRight : notes.includes('none-right') ? t.noneRight : null;
  return [
    edge ? edge(answer.compared) : `${t.visits(answer.compared)}: ${judged(found, limits, t)}`,
    ...(['readers-differ', 'readers-change'] as const).flatMap((note) =>
      notes.includes(note) ? [t.notes[note]!] : [],
    ),
    ...(notes.includes('comparable-part') && found.leftOut.length > 0 ? [partly(found, t)] : []),
    ...(notes.includes('break') && answer.sinceDay ? [t.sinceBreak(day(answer.sinceDay))] : []),
    ...known,
    ...(loss ? [t.askRepeat] : []),
  ];
}

function judged({ answer }: ChangeExamination, limits: ChangeLimits, t: ChangeTexts): string {
  const { verdict, change, before, now, leaning, moreSamples, notes, atLeastWords } = answer;
  const of = answer.perWords!;
  const inWords = (percent: number): number => Math.round((percent * of) / 100);
  const words = { from: inWords(before!), to: inWords(now!), of };
  if (verdict === 'up' || verdict === 'down') {
    return t.moved(verdict, words, chanceWords(limits.sure, t), atLeastWords, tenths(limits.atLeastChance, t));
  }
  if (verdict === 'steady') return t.steady(words, inWords(limits.steadyPoints), chanceWords(limits.steadyChance, t));
  const said = t.unclear(words, inWords(change!.low), inWords(change!.high));
  if (notes.includes('readers-differ')) return said;
  if (leaning) return `${said} ${t.probably(leaning, chanceWords(answer.probability!, t))}`;
  return `${said} ${moreSamples === null ? t.moreHardly : t.more(moreSamples)}`;
}

/** One visit, or a baseline without anything after it. */
function beforeAnything({ answer, visits }: ChangeExamination, t: ChangeTexts, language: Language): string[] {
  if (!answer.notes.includes('one-visit')) return [t.onlyBaseline];
  const read = visits.flatMap(({ readers }) => [...readers.values()]);
  const most = Math.max(...read.map(({ words }) => words));
  const share = read.reduce((sum, { right, words }) => sum + right / words, 0) / read.length;
  const right = share * most;
  const { low, high } = wilson(Math.round(right), most);
  const said = t.oneVisit(decimalsIn(language)(right, 1, 0), most, Math.round(low * most), Math.round(high * most));
  return answer.notes.includes('break') ? [said, t.afterBreak] : [said];
}

/** The conditions by which the visits differ, of these visits. */
function conditionsOf(visit: Visit, { answer }: ChangeExamination, t: ChangeTexts): string {
  const named = CONDITIONS.filter((name) => answer.differs.includes(name));
  return t.and(named.map((name) => t.condition(name, visit.conditions[name])));
}

function notComparable(found: ChangeExamination, t: ChangeTexts): string {
  const { visits } = found;
  return t.notComparable(conditionsOf(visits[0]!, found, t), conditionsOf(visits.at(-1)!, found, t));
}

function partly(found: ChangeExamination, t: ChangeTexts): string {
  const { answer, now, leftOut } = found;
  const compared = t.visitsOf(answer.compared, conditionsOf(now[0]!, found, t));
  return t.partly(
    compared,
    t.and(leftOut.map((visits) => t.visitsOf(visits.length, conditionsOf(visits[0]!, found, t)))),
  );
}
