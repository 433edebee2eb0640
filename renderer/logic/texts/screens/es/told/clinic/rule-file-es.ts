import type { Told } from '../../../en/screens-en.ts';

/** In Spanish. What is wrong in a rule file. */
export const ruleFileToldEs: Told['ruleFile'] = {
  needed: {
    number: 'un número',
    int: 'un número entero',
    string: 'palabras entre comillas',
    boolean: 'true o false',
    array: 'una lista entre corchetes',
    object: 'entradas entre llaves',
    record: 'entradas entre llaves',
  },
  list: 'una lista',
  entries: 'entradas entre llaves',
  theFile: 'el archivo',
  notKnown: (key) => `"${key}" no se conoce aquí.`,
  missing: (name, wanted) => `Falta "${name}": ${wanted}.`,
  stands: (name, found, wanted) => `En "${name}" pone ${found}, pero ${wanted}.`,
  hasToBe: (what) => `tiene que ser ${what}`,
  oneOf: (values) => `tiene que ser uno de estos: ${values}`,
  saySomething: 'tiene que decir algo',
  least: (n) => `tiene que ser ${n} o más`,
  most: (n) => `tiene que ser ${n} o menos`,
  mostLetters: (n) => `tiene que tener ${n} letras o menos`,
  noForm: 'no es ninguna de las formas que pueden ir aquí',
  tooDeep: 'El archivo tiene demasiados niveles para un archivo de reglas.',
  unreadable: 'El archivo no se puede leer desde aquí: falta o sobra una comilla, una coma o un paréntesis.',
  noRuleFile: 'Esto no es un archivo de reglas de una clínica.',
  version: (found) => `El archivo tiene la versión ${found}; se pueden leer las versiones 1 y 2.`,
  none: 'ninguna',
  noThreshold: (code) => `No hay ningún umbral "${code}".`,
};
