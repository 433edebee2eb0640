import type { Told } from '../../../en/screens-en.ts';

export const draftToldEs: Told['draft'] = {
  graspFirst: 'No probado no es seguro: primero va el agarre del bolígrafo.',
  notTested: (names) => `No probado no es seguro: ${names}.`,
  notKnown: (names, because) => `No se sabe: ${names}. Puede prohibir esta línea: ${because}`,
  flagOpen: (title) => `Hay una señal de alarma abierta: ${title}. No se aprueba nada hasta que se revise.`,
  forbidden: (title, because) =>
    `«${title}» está prohibido para este cliente: ${because} Quítelo o dé una razón para mantenerlo.`,
  answeredYes: 'Se respondió que sí.',
  noExercise: 'Por ahora sin ejercicios: lo escrito se logra de otras maneras.',
  clash: (group) => `${group}: ya lo dice otra línea.`,
  fromLibrary: 'Añadido de la biblioteca por el terapeuta.',
  ownLine: 'Línea propia del terapeuta.',
  noTime: 'No cabe: los minutos del día están usados.',
  noPlace: 'No cabe: el día ya tiene sus puntos.',
  tooTired: 'Escribir cansa: los ejercicios salen primero.',
  tooHigh: 'Está más de un nivel por encima del programa.',
  inItsPlace: 'Todo lo que se escribe tiene su propio sitio: no hace falta papel rayado.',
  noWriting: 'Se puede sostener un bolígrafo, pero ahora no se puede dar escritura.',
  upAndBack: (up, back) => `Avanzar: ${up} Retroceder: ${back}`,
  up: (up) => `Avanzar: ${up}`,
  redFlagIsOpen: 'hay una señal de alarma abierta',
};
