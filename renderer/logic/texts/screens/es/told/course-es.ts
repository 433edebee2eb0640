import type { Told } from '../../en/screens-en.ts';

/** In Spanish. Words read and fatigue over time: series, marks, rows, notes and the numbers behind a verdict. */
export const courseEs: Told['course'] = {
  readers: { unfamiliar: 'lector nuevo', family: 'lector de la familia', therapist: 'terapeuta, no a ciegas' },
  manyReaders: {
    unfamiliar: (n) => `${n} lectores nuevos`,
    family: (n) => `${n} lectores de la familia`,
    therapist: (n) => `${n} terapeutas, no a ciegas`,
  },
  notBlind: (readers) => `${readers}, no a ciegas`,
  wordsAndReaders: (right, words, readers) => `${right} de ${words} palabras, ${readers}`,
  wordsReadBy: {
    unfamiliar: 'Palabras leídas, lector nuevo',
    family: 'Palabras leídas, lector de la familia',
    therapist: 'Palabras leídas, terapeuta, no a ciegas',
    probe: 'Palabras leídas, papel liso sin ayudas',
  },
  fatigue: {
    before: ['Cansancio antes de escribir, visita', (value) => `cansancio antes ${value} de 10`],
    after: ['Cansancio después de escribir, visita', (value) => `cansancio después ${value} de 10`],
    homeBefore: [
      'Cansancio antes de practicar, registro de casa',
      (value) => `en casa, cansancio antes ${value} de 10`,
    ],
    homeAfter: [
      'Cansancio después de practicar, registro de casa',
      (value) => `en casa, cansancio después ${value} de 10`,
    ],
  },
  goal: (percent, output) => `Meta: ${percent} % de las palabras, ${output}`,
  programStarts: (tier) => `Empieza el programa, nivel ${tier}`,
  programChanged: (tier) => `Cambia el programa, nivel ${tier}`,
  otherConditions: (names) => `Cambió: ${names}`,
  /** Dates below the chart, as date-fns writes them. */
  axis: { day: 'd MMM', month: 'MMM yyyy' },
  changes: (n) => `${n} cambios`,
  noSample: 'Aún no hay ninguna muestra de escritura. Tome una en una visita y se verá aquí.',
  noneInSpan: 'No hay ninguna muestra en este periodo. Elija uno más largo.',
  unread: (n) =>
    n === 1
      ? 'Una muestra aún no se ha leído: no se conoce su legibilidad.'
      : `${n} muestras aún no se han leído: no se conoce su legibilidad.`,
  orphans: (n) =>
    n === 1
      ? 'Una lectura es de una muestra que se quitó y no se cuenta.'
      : `${n} lecturas son de una muestra que se quitó y no se cuentan.`,
  kindsOfReaders: 'Han leído lectores de distinta clase; solo se compara la clase que menos conoce la letra.',
  probe: 'Prueba sin ayudas',
  baseline: 'Muestra de partida',
  sample: 'Muestra',
  notRead: 'aún sin leer',
  homePractice: 'Práctica en casa',
  columns: [
    'Fecha',
    'Qué',
    'Palabras leídas',
    'Palabras escritas',
    'Porcentaje',
    'Mínimo (95 %)',
    'Máximo (95 %)',
    'Lector',
    'Cansancio antes (0-10)',
    'Cansancio después (0-10)',
    'Dolor después (0-10)',
    'Minutos',
    'Nota',
  ],
  spans: {
    all: 'desde el principio',
    '30': 'el último mes',
    '91': 'los últimos 3 meses',
    '365': 'el último año',
  },
  wordsRead: 'Palabras leídas',
  aboutThenNow: (before, now, of) => `unas ${before} de ${of} palabras, ahora ${now}`,
  ofWords: (right, words) => `${right} de ${words} palabras`,
  fatigueAfter: 'Cansancio después de escribir',
  ofTen: 'de 10; 10 es el mayor cansancio posible',
  change: (mid, low, high, held, more) =>
    `Cambio más probable: ${mid} puntos; con una probabilidad del ${held} %, entre ${low} y ${high}. Probabilidad de más que antes: ${more} %.`,
  numbers: {
    range: (mid, low, high) => `${mid} puntos (de ${low} a ${high} puntos)`,
    moreThan: (percent) => `más del ${percent} %`,
    lessThan: (percent) => `menos del ${percent} %`,
    level: 'Antes y ahora',
    levelHow: (before, now, decay) =>
      `nivel que hay detrás de ${before} y ${now} visitas, porcentaje de palabras; una visita posterior cuenta más (${decay} por cada visita que la sigue)`,
    change: 'Cambio',
    changeHow: (held) => `el intervalo contiene el cambio verdadero con una probabilidad del ${held} %`,
    chance: 'Probabilidad de más, de menos',
    chanceHow: (sure, leaning) => `«sí» se dice desde el ${sure} %, «probablemente» desde el ${leaning} %`,
    steady: (points) => `Probabilidad de un cambio menor de ${points} puntos`,
    steadyHow: (chance) => `«más o menos igual» se dice desde el ${chance} %`,
    spread: 'De un día a otro',
    spreadHow:
      'desviación estándar entre visitas, logit de la parte de palabras; de este cliente y de los pares repetidos de la clínica',
    smallest: 'Cambio mínimo que cuenta',
    smallestValue: (mdc, callable) => `${mdc} puntos; ${callable} puntos se reconocen en 8 de cada 10 clientes`,
    smallestHow: (words) =>
      `con este número de visitas de ${words} palabras; textos más largos y más visitas lo hacen menor`,
    method: 'Método',
    methodHow: 'sus tasas de error se simularon: véase la guía',
  },
};
