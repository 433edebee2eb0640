import { shownIn } from '../../told.ts';
import { isUnreadable, type Caseload } from '../../../db/index.ts';
import {
  figureFacts,
  figureRows,
  rulesChanged,
  type FigureFacts,
  type GroupedBy,
} from '../../../renderer/logic/caseload/figures.ts';
import { figuresCsv } from '../../../renderer/logic/caseload/figures-csv.ts';
import { languages, type Language } from '../../../renderer/logic/texts/languages.ts';
import { screensIn } from '../../../renderer/logic/texts/screens/screen-languages.ts';
import { Refusal } from '../../contract/envelope.ts';
import type { figureRequests } from '../../contract/sharing/figures.ts';
import type { Handler } from '../handler.ts';
import { clinicRulesSoon, currentRules, readOn } from '../clinic-rules.ts';
import type { Services } from '../services.ts';

/** The last answer of each open caseload, good until anything is written. */
const known = new WeakMap<Caseload, { mark: string; facts: FigureFacts[]; unread: number }>();

async function factsOf(services: Services): Promise<{ facts: FigureFacts[]; unread: number }> {
  const caseload = services.need();
  const rules = await clinicRulesSoon(services);
  const today = services.today();
  const mark = `${caseload.lastSeq()} ${today}`;
  const before = known.get(caseload);
  if (before?.mark === mark) return before;
  const facts: FigureFacts[] = [];
  let unread = 0;
  for (const [i, { id }] of caseload.clients().entries()) {
    await readOn(services, caseload, i + 1);
    try {
      facts.push(figureFacts(caseload.record(id), rules, today));
    } catch (error) {
      if (!isUnreadable(error)) throw error;
      unread += 1;
    }
  }
  const found = { mark, facts, unread };
  known.set(caseload, found);
  return found;
}

function namer(services: Services, by: GroupedBy, language: Language): (group: string) => string {
  const words = screensIn(language).told.trail;
  const { vocabulary } = currentRules(services);
  const names =
    by === 'diagnoses'
      ? new Map(vocabulary.diagnoses.map(({ code, name }) => [code as string, name as string]))
      : new Map(Object.entries<string>(languages[language].texts.occasions));
  return (group) =>
    group === 'all'
      ? words.allClients
      : group === 'none'
        ? words.noneNoted
        : (names.get(group) ?? group.replaceAll('-', ' '));
}

export const figureHandlers: { [N in keyof typeof figureRequests]: Handler<N> } = {
  'figures.all': async (services) => {
    const { facts, unread } = await factsOf(services);
    const rows = (by: GroupedBy) => {
      const nameOf = namer(services, by, shownIn(services.preferences().language));
      return figureRows(facts, by).map((row) => ({ ...row, name: nameOf(row.group) }));
    };
    const because = new Map(currentRules(services).rules.map((rule) => [rule.id, rule.because]));
    const rules = rulesChanged(facts).map((row) => ({ ...row, because: because.get(row.rule) ?? '' }));
    return { diagnoses: rows('diagnoses'), occasions: rows('occasions'), rules, unread };
  },
  'figures.csv': async (services, { by }) => {
    const { facts } = await factsOf(services);
    const text = figuresCsv(figureRows(facts, by), namer(services, by, 'en'));
    // Byte order mark: spreadsheets take the file for UTF-8.
    const bytes = new TextEncoder().encode(`\ufeff${text}`);
    const suggestedName = `figures-${by}-${services.today()}.csv`;
    try {
      return { saved: (await services.options.port.chooseSave({ suggestedName, bytes, mime: 'text/csv' })).saved };
    } catch {
      throw new Refusal('save-failed');
    }
  },
};
