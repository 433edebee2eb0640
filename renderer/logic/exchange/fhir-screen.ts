import type { QuestionnaireResponse, QuestionnaireResponseItem } from './fhir-types.ts';
import type { RulesInUse } from '../../../db/types/rules-in-use.ts';
import type { ClientRecord } from '../../../db/types/record.ts';
import { refer, systems } from './fhir-codes.ts';

type Answer = ClientRecord['intakeAnswers'][number];

/** The intake screen and the red-flag questions of each visit as answered; what was not asked is not there. */
export function screenResponses(
  record: ClientRecord,
  rules: Pick<RulesInUse, 'intake' | 'redFlagTable'>,
  options: { withPersonalText: boolean },
  idOf: (name: string) => string,
): QuestionnaireResponse[] {
  const title = new Map(rules.intake.items.map((item) => [item.code, item.title]));
  const flags = new Map(rules.redFlagTable.flags.map((flag) => [flag.code, flag]));
  return record.visits.flatMap((visit) => {
    const response = (kind: 'intake' | 'redFlags', item: QuestionnaireResponseItem[]): QuestionnaireResponse[] =>
      item.length === 0
        ? []
        : [
            {
              resourceType: 'QuestionnaireResponse',
              id: idOf(`${visit.id} ${kind}`),
              questionnaire: systems[kind],
              status: 'completed',
              subject: refer(record.client.id),
              encounter: refer(visit.id),
              authored: visit.date,
              item,
            },
          ];
    const answers = record.intakeAnswers.filter((answer) => answer.visitId === visit.id);
    // A talk about self-harm is the client's most private word: it leaves only when personal text was asked for.
    const asked = record.redFlags.filter(
      (flag) => flag.visitId === visit.id && (options.withPersonalText || flags.get(flag.flag)?.path !== 'self-harm'),
    );
    return [
      ...response(
        'intake',
        answers.map((answer) => itemOf(answer, title.get(answer.item) ?? answer.item, options.withPersonalText)),
      ),
      ...response(
        'redFlags',
        asked.map((flag) => ({
          linkId: flag.flag,
          text: flags.get(flag.flag)?.title ?? flag.flag,
          answer: [{ valueBoolean: flag.present }],
          ...(flag.review
            ? {
                item: [
                  { linkId: `${flag.flag}.reviewed`, text: 'Reviewed on', answer: [{ valueDate: flag.review.on }] },
                ],
              }
            : {}),
        })),
      ),
    ];
  });
}

function itemOf(answer: Answer, title: string, withPersonalText: boolean): QuestionnaireResponseItem {
  const linkId = answer.side === 'none' ? answer.item : `${answer.item}.${answer.side}`;
  const under: QuestionnaireResponseItem[] = [];
  const add = (part: string, text: string, value: string | number | null) => {
    if (value === null || value === '') return;
    const given = typeof value === 'number' ? { valueInteger: value } : { valueString: value };
    under.push({ linkId: `${linkId}.${part}`, text, answer: [given] });
  };
  add('detail', 'Detail', answer.detail?.replaceAll('-', ' ') ?? null);
  add('before', 'Rating before, 0 to 10', answer.before);
  add('after', 'Rating after, 0 to 10', answer.after);
  if (withPersonalText) add('note', 'Note', answer.note.trim());
  const given =
    answer.grade === null
      ? { valueString: answer.state === 'not-indicated' ? 'not indicated' : 'not tested' }
      : { valueInteger: answer.grade };
  return {
    linkId,
    text: answer.side === 'none' ? title : `${title}, ${answer.side}`,
    answer: [{ ...given, ...(under.length > 0 ? { item: under } : {}) }],
  };
}
