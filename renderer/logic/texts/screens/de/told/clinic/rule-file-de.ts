import type { Told } from '../../../en/screens-en.ts';

/** In German. What is wrong in a rule file. */
export const ruleFileToldDe: Told['ruleFile'] = {
  needed: {
    number: 'eine Zahl',
    int: 'eine ganze Zahl',
    string: 'Wörter in Anführungszeichen',
    boolean: 'true oder false',
    array: 'eine Liste in eckigen Klammern',
    object: 'Einträge in geschweiften Klammern',
    record: 'Einträge in geschweiften Klammern',
  },
  list: 'eine Liste',
  entries: 'Einträge in geschweiften Klammern',
  theFile: 'die Datei',
  notKnown: (key) => `"${key}" ist hier nicht bekannt.`,
  missing: (name, wanted) => `"${name}" fehlt: ${wanted}.`,
  stands: (name, found, wanted) => `In "${name}" steht ${found}; ${wanted}.`,
  hasToBe: (what) => `nötig ist ${what}`,
  oneOf: (values) => `nötig ist eines von ${values}`,
  saySomething: 'es darf nicht leer sein',
  least: (n) => `nötig ist ${n} oder mehr`,
  most: (n) => `nötig ist ${n} oder weniger`,
  mostLetters: (n) => `höchstens ${n} Buchstaben sind möglich`,
  noForm: 'das ist keine der Formen, die hier stehen können',
  tooDeep: 'Die Datei ist für eine Regeldatei zu tief verschachtelt.',
  unreadable:
    'Ab hier ist die Datei nicht lesbar: Ein Anführungszeichen, Komma oder eine Klammer fehlt oder ist zu viel.',
  noRuleFile: 'Das ist keine Regeldatei einer Praxis.',
  version: (found) => `Die Datei hat die Version ${found}; lesbar sind die Versionen 1 und 2.`,
  none: 'keine',
  noThreshold: (code) => `Es gibt keinen Grenzwert "${code}".`,
};
