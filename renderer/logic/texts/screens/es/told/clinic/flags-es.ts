import type { Told } from '../../../en/screens-en.ts';

export const flagsToldEs: Told['flags'] = {
  stopEverything: (title, more) => `Deténgalo todo: ${title}${more > 0 ? ` y ${more} más` : ''}.`,
  noExercises: (title, more) => `Sin ejercicios hasta que se revise: ${title}${more > 0 ? ` y ${more} más` : ''}.`,
  notAsked: (questions) =>
    questions === 1
      ? 'Falta por hacer una pregunta sobre señales de alarma.'
      : `Faltan por hacer ${questions} preguntas sobre señales de alarma.`,
  yesTo: (question) => `Sí a: «${question}»`,
  seenAgain: 'Ya se revisó una vez y ha vuelto a verse desde entonces.',
  fewerWords: (before, of, now) =>
    `Menos palabras que antes: unas ${before} de ${of} al principio, unas ${now} ahora, sin explicación anotada.`,
  painRoseInSample: (before, after) => `El dolor subió de ${before} a ${after} sobre 10 mientras escribía una muestra.`,
  painRoseInLog: (by) =>
    `El dolor subió ${by} puntos sobre 10 entre los tres primeros días del registro de práctica y los tres últimos.`,
  call: {
    'emergency-number': 'el número de emergencias de su zona, ahora mismo.',
    'crisis-service': 'el servicio de crisis o el médico, junto con el cliente y antes de que se marche.',
    'doctor-today': 'el médico del cliente, hoy.',
    'referrer-today': 'quien derivó al cliente, hoy.',
    neurology: 'el médico del cliente, hoy, para solicitar la valoración de neurología.',
  },
};
