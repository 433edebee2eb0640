import type { Told } from '../../en/screens-en.ts';

/** In Spanish. Read back: what waits, who knows a text, how far two readers agree, own spellings. */
export const readingEs: Told['reading'] = {
  linesWaiting: (n) => (n === 0 ? 'No hay líneas por leer.' : n === 1 ? '1 línea por leer' : `${n} líneas por leer`),
  wordsRead: (right, words, percent) => `${right} de ${words} palabras leídas (${percent})`,
  of: (right, words) => `${right} de ${words}`,
  baseline: 'punto de partida',
  readersAgree: (same, words) => `Los dos lectores coinciden: la misma respuesta en ${same} de ${words} palabras.`,
  readersDiffer: (same, words) =>
    `Los dos lectores difieren; ayudaría una tercera lectura: la misma respuesta en ${same} de ${words} palabras.`,
  textKnown: (samples, times, day) =>
    `Este lector conoce ${samples === 1 ? 'el texto de una muestra que espera' : `los textos de ${samples} muestras que esperan`}: ${times === 1 ? 'lo vio una vez' : `lo vio hasta ${times} veces`}, la última el ${day}.`,
  takenByReader: (n) => (n === 1 ? 'Esta persona tomó una de ellas.' : `Esta persona tomó ${n} de ellas.`),
  sameTextTwice: 'Algunas muestras que esperan tienen el mismo texto: la segunda se lee con la primera en la memoria.',
  whoKnowsReadsMore:
    'Quien conoce un texto lee más de lo que está escrito. Pida a otra persona que lea si puede; cada lectura guarda cuántas veces se vio el texto.',
  spelling: {
    bothWords: 'Escriba las dos palabras: la que se quiso y cómo la escribe el cliente. No se anotó nada.',
    oneWord: 'Una palabra a cada lado: un espacio perdido cuenta como espacio, no como ortografía. No se anotó nada.',
    same: 'Las dos son la misma palabra. No se anotó nada.',
    known: 'Esta ortografía ya está anotada.',
    most: (n) => `Se pueden anotar como mucho ${n} palabras por muestra. No se anotó nada.`,
    notInText:
      'Ninguna de las dos palabras está en el texto de esta muestra. Revise el texto en Muestra. No se anotó nada.',
  },
  sizeUnknown: 'a un tamaño desconocido',
  trueSize: 'a tamaño real',
  timesAsLarge: (times) => `${times} veces más grande de lo escrito`,
};
