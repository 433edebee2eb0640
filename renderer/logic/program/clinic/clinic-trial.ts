import { type RuleTable } from '../../../../db/types/rules.ts';
import type { ProgramInput } from '../../../../db/types/program-input.ts';
import { compose } from '../draft/compose.ts';
import type { Told } from '../../texts/screens/en/screens-en.ts';
import { toldEnglish } from '../../texts/screens/told-english.ts';

export interface Trial {
  /** Drafts that would come out differently, of all drafts. */
  changed: number;
  of: number;
  /** Positions of those clients in the list given. */
  clients: number[];
  sentence: string;
}

/**
 * "Would change 3 of 41 drafts": the same clients drafted with both tables.
 * @param inputsAfter the clients as the new table sees them, where it changes what counts as a finding
 */
export function tryOnCaseload(
  inputs: readonly ProgramInput[],
  before: RuleTable,
  after: RuleTable,
  inputsAfter: readonly ProgramInput[] = inputs,
  words: Told['ruleWords'] = toldEnglish.ruleWords,
): Trial {
  const draft = (input: ProgramInput, rules: RuleTable): string =>
    JSON.stringify(compose(input, rules).lines.map((line) => [line.item, line.dose, line.text]));
  const clients = inputs.flatMap((input, i) =>
    draft(input, before) === draft(inputsAfter[i] ?? input, after) ? [] : [i],
  );
  return {
    changed: clients.length,
    of: inputs.length,
    clients,
    sentence: words.wouldChange(clients.length, inputs.length),
  };
}

/** More than this many clients are counted only. */
const NAMED = 12;

/** What a trial says, with the clients whose drafts it would change. */
export function trialWords(
  sentence: string,
  codes: readonly string[],
  words: Told['ruleWords'] = toldEnglish.ruleWords,
): string {
  if (codes.length === 0) return sentence;
  return words.ofClients(sentence, codes.slice(0, NAMED).join(', '), Math.max(0, codes.length - NAMED));
}
