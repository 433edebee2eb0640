import type { Told } from '../../../en/screens-en.ts';

export const goalsToldEs: Told['goals'] = {
  levelNames: {
    [-2]: 'mucho menos de lo esperado',
    [-1]: 'menos de lo esperado',
    0: 'lo esperado',
    1: 'más de lo esperado',
    2: 'mucho más de lo esperado',
  },
  percentOfWords: '% de las palabras',
  wordsOf: (words) => `palabras de ${words}`,
  wordsOfTogether: (words, tries) => `palabras de ${words} (${tries} intentos juntos)`,
  fewerThan: (value, unit) => `menos de ${value} ${unit}`,
  to: (low, high, unit) => `${low} a ${high} ${unit}`,
  orMore: (value, unit) => `${value} ${unit} o más`,
  mustBeNumbers: 'El nivel inicial y el esperado tienen que ser números.',
  expectedAbove: 'El nivel esperado tiene que estar por encima del inicial.',
  stepTooSmall: (unit) =>
    `El paso es menor que una unidad (${unit}). Elija un nivel esperado más alto o una tarea más larga.`,
  topTooHigh: (value, unit, max, most) =>
    `El nivel +2 sería ${value} ${unit}, por encima de ${max}. Ponga el nivel esperado en ${most} o menos, o elija una tarea más larga.`,
  tooNarrow: (tries, words, width, longer) =>
    `Juzgado por ${tries === 1 ? 'un intento' : `${tries} intentos juntos`} de ${words} palabras, un nivel tiene que abarcar al menos ${width} puntos, o se alcanza por azar: ` +
    `${longer === null ? 'cuente más intentos juntos' : `escriba al menos ${longer} palabras por intento`}, o ponga más bajo el nivel esperado.`,
  noText: (levels) => `El nivel ${levels} aún no tiene texto.`,
  noNumber: (levels) =>
    `El nivel ${levels} no tiene número, así que no se puede comprobar si se solapan. Empiécelo con un número, por ejemplo «6 a 8 palabras».`,
  twoVariables: 'Los niveles nombran más de una variable. Deje una y ponga lo demás en la meta misma.',
  doNotRise: (a, b) => `Los niveles ${a} y ${b} no suben.`,
  overlap: (a, b) => `Los niveles ${a} y ${b} se solapan.`,
  hole: (a, b) => `Entre los niveles ${a} y ${b} hay un hueco.`,
  notEqual: 'Los niveles no están a la misma distancia.',
  firstRung: 'Aún no se ha leído ninguna muestra: este es el primer peldaño. Una muestra leída lo ajusta a esta mano.',
  seen: (samples, low, high) =>
    `${samples === 1 ? 'La última muestra da' : `Las últimas ${samples} muestras dan`} ${low === high ? `un ${low} %` : `entre ${low} y ${high} %`} de palabras leídas`,
  readyForNext: (seen, output) => `${seen} con ${output}: listo para el siguiente peldaño.`,
  passes100: (seen, points) =>
    `${seen}. Un paso que la medida pudiera distinguir (${points} puntos) pasaría del 100 %: suba con más escritura o menos ayuda.`,
  lessThanWord: (seen, output) => `${seen} con ${output}, a menos de una palabra de la marca de este peldaño.`,
  nextStepIs: (seen, target, mdc) =>
    `${seen}; el siguiente paso es ${target} %${mdc === null ? '' : `, más de los ${mdc} puntos en que difieren dos muestras de una mano sin cambio`}.`,
  stepAgreed: 'Este paso está acordado y se trabaja.',
  firstStep: 'El primer paso de lo que el cliente quiere escribir.',
  wasMet: (output) => `Se cumplió «${output}».`,
  success: (right, of, percent) => `${right} de unas ${of} palabras leídas (${percent} % o más).`,
  successBy: {
    exact: 'cada palabra y cada cifra son exactas',
    accepted: 'se acepta en el uso; se anota dónde y cuándo',
  },
  tellsApart: (right, of) => `otra persona distingue bien al menos ${right} de ${of} parejas de firmas`,
  somethingUnnamed: 'algo aún sin nombrar',
  cue: { none: 'sin ayudas', visual: 'con una ayuda visual', verbal: 'con una ayuda hablada' },
  reader: { unfamiliar: 'alguien que no conoce el texto', family: 'alguien de la familia' },
  by: (day) => `Hasta el ${day}, `,
  willWrite: (who, output, words, paper, aid, cue) =>
    `${who} escribirá ${output}${words === null ? '' : ` (unas ${words} palabras)`}${paper ? ` en ${paper}` : ''}${aid ? ` con ${aid}` : ''}, ${cue}`,
  soThat: (success) => `, de modo que ${success}`,
  onTries: (need, of) => `, en ${need} de ${of} intentos`,
  reads: (reader, percent, counted) => `, de modo que ${reader} lea el ${percent} % de las palabras${counted}`,
  readsWords: (reader, counted, percent, tries) =>
    `, de modo que ${reader} lea ${counted} palabras (${percent} % o más${tries})`,
  triesTogether: (of) => `${of} intentos juntos`,
  atStart: (day, baseline) => `; al inicio (${day}): ${baseline}`,
  because: (reason) => `; porque: ${reason}`,
  missing: {
    output: 'qué se escribe',
    paper: 'el papel',
    percent: 'cuántas palabras hay que leer',
    date: 'una fecha',
    start: 'el nivel inicial',
    why: 'por qué le importa al cliente',
    tries: 'intentos posibles (se piden más de los que hay)',
  },
  status: { active: '', met: 'cumplido', revised: 'revisado', dropped: 'abandonado' },
  acceptedIn: (where) => ` Aceptada en el uso: ${where}.`,
  placeNotNoted: 'lugar no anotado',
  pairsJudged: (said, of) => `${said} de ${of} parejas juzgadas; lo que hay queda guardado.`,
  toldApart: (right, of) => `${right} de ${of} parejas bien distinguidas: la firma se distingue.`,
  notToldApart: (right, of, needed) =>
    `${right} de ${of} parejas bien distinguidas, hacen falta ${needed}: la práctica sigue.`,
};
