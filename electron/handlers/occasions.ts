import { subDays } from 'date-fns/subDays';
import { textBands, languagesWithBands } from '../../renderer/logic/sample/text-bands.ts';
import { measuredText, sentencesAText } from '../../renderer/logic/sample/measured-text.ts';
import { seedOf } from '../../renderer/logic/sample/seeded-choice.ts';
import { knownTexts, type WrittenText } from '../../renderer/logic/sample/known-texts.ts';
import { threshold } from '../../db/types/rule-table/threshold.ts';
import { trialLines } from '../../renderer/logic/program/trials/trial-order.ts';
import { Refusal } from '../contract/envelope.ts';
import type { occasionRequests } from '../contract/occasions.ts';
import type { Handler } from './handler.ts';
import { currentRules } from './clinic-rules.ts';
import { refuseFuture, saveFact } from './saving.ts';
import type { Services } from './services.ts';

/** Languages that have frames and bands; any other is written from shipped texts. */
const hasTexts = (language: string): boolean => (languagesWithBands as readonly string[]).includes(language);

/** What is asked before a text is made: rules, the texts of the year, and how many there were (they seed the next). */
function textsOfYear(services: Services) {
  const rules = currentRules(services);
  const value = (code: string): number => threshold(rules.thresholds, code);
  const since = subDays(services.options.now(), value('text-days-apart')).toISOString();
  const written: WrittenText[] = services.need().textsSince(since);
  return { rules, written, known: knownTexts(written, value('text-frames-apart')) };
}

export const occasionHandlers: { [N in keyof typeof occasionRequests]: Handler<N> } = {
  'occasion.save': saveFact('writingOccasion'),
  'occasion.signatureCheck': (services, check) => {
    refuseFuture(services, check.accepted?.on ?? null);
    return saveFact('signatureCheck')(services, check);
  },
  'visit.plan': saveFact('visitPlan'),
  'trial.save': saveFact('trial'),

  'trial.begin': (services, { id, clientId, visitId, kind, options }) => {
    const { rules, written, known } = textsOfYear(services);
    const client = services.need().get('client', clientId);
    if (!client) throw new Refusal('not-found');
    const open = services
      .need()
      .record(clientId)
      .trials.find((trial) => trial.status === 'open');
    if (open && open.id !== id) throw new Refusal('trial-open');
    const language = hasTexts(client.language.slice(0, 2)) ? client.language.slice(0, 2) : 'en';
    const seed = seedOf(`${id} ${written.length}`);
    const bands = textBands(rules.thresholds, language);
    const lines = trialLines(options.length, seed, { library: rules.texts, bands, language, used: known.sentences });
    if (!lines) throw new Refusal('no-new-text');
    return services.need().put(
      'trial',
      {
        id,
        clientId,
        visitId,
        kind,
        options,
        seed,
        lines,
        wish: null,
        decision: null,
        retrialOn: null,
        status: 'open',
      },
      services.doing(),
    );
  },

  'sample.newText': (services, { clientId, language, goalLetters }) => {
    const { rules, written, known } = textsOfYear(services);
    const code = language.slice(0, 2);
    if (!hasTexts(code)) return { sentences: null, goalLettersShort: [] };
    const made = measuredText(rules.texts, {
      language: code,
      seed: seedOf(`${clientId} ${written.length}`),
      bands: textBands(rules.thresholds, code),
      used: known.sentences,
      lastFrames: known.lastFrames,
      goalLetters,
    });
    return made && made.sentences.length === sentencesAText
      ? { sentences: made.sentences, goalLettersShort: made.goalLettersShort }
      : { sentences: null, goalLettersShort: [] };
  },
};
