import type { Told } from '../../../en/screens-en.ts';

const check = (language: string) =>
  `Las palabras en ${language} vienen con Fairhand. Lo que usted o su clínica escribieron queda como está: cámbielo en la hoja donde haga falta, y haga que antes lo lea alguien que hable el idioma.`;
const rest = (lines: string) =>
  `Se muestran ${lines} líneas de práctica; el resto está en la hoja del programa en casa.`;

export const printedToldEs: Told['printed'] = {
  redFlagOpen: (title) =>
    `Hay una señal de alarma abierta (${title}). No se imprime práctica hasta que se revise; la hoja de derivación dice qué hacer.`,
  leftOff: (title, because) => `«${title}» se dejó fuera: ${because}`,
  cautionForbids: 'una precaución lo prohíbe.',
  noProgram: 'Aún no hay programa en casa. Hágalo en Programa.',
  draft: 'Este programa es un borrador. Se imprime con la palabra BORRADOR hasta que se apruebe.',
  notCoSigned: 'Un asistente preparó o cambió este programa y nadie lo ha contrafirmado: cada hoja lo dice al pie.',
  spanish: check('español'),
  german: check('alemán'),
  noPictures: 'Aún no hay dos días con una hoja escaneada, así que no se muestran imágenes.',
  notTrueSize: (why) => `Las imágenes no están a tamaño real: ${why}.`,
  lineTooWide: 'una línea es más ancha que la hoja',
  noScale: 'una hoja no tiene escala, así que los tamaños no se pueden comparar',
  printsEnglish: (why, shown) => `En inglés, porque ${why}: ${shown}.`,
  changedAfter: (language) => `las palabras se cambiaron después de escribir la versión en ${language}`,
  noWordsFor: (language) => `Fairhand no tiene versión en ${language} para ello`,
  howInEnglish: 'Cómo se hace cada línea se imprime en inglés donde sus palabras no vienen con Fairhand.',
  noOwnWords: (occasion) =>
    `No hay palabras propias del cliente anotadas para «${occasion}»: sus hojas usan palabras generales. Añada nombres, tiendas o frases en la derivación.`,
  longerThanLine: (words) => `«${words}» es más largo que una línea de este papel: se imprime en dos líneas.`,
  bothSides:
    'Con esta letra la página ocupa las dos caras de una hoja. Imprímala por las dos caras o elija letra más pequeña.',
  tooLong:
    'La página ocupa más de las dos caras de una hoja o pasa de 250 palabras. Acorte las líneas más largas de abajo o elija letra más pequeña.',
  noConsent: 'No consta permiso para compartir con la familia de este cliente. Pregunte antes de entregarla.',
  stillDraft: 'El programa en casa aún es un borrador. Apruébelo antes de entregarla.',
  nobodyToCall: 'No consta a quién llamar para este cliente; la hoja tiene una línea en blanco.',
  readByFamily: 'Las palabras no las leyó alguien que desconociera el texto; la hoja dice quién las leyó.',
  letterEmpty: 'La pregunta de la carta está vacía; la hoja tiene una línea en blanco para ella.',
  notShownBack: 'No consta si el cliente mostró el programa en casa.',
  noBring: 'Se omitió qué traer.',
  noWordCount: 'Se omitió cuántas palabras cuenta la meta.',
  noDrawing: 'Se omitió el dibujo de silla y mesa; sus alturas están en el texto.',
  fourLines: rest('cuatro'),
  threeLines: rest('tres'),
  noHelperAdvice: 'Se omitieron los consejos para ayudantes; silla y mesa siguen ahí.',
  noHand: 'Se omitieron qué mano, las gafas y qué hacer tras un día perdido.',
  noStart: 'Se omitió cómo era al principio.',
  twoLines: rest('dos'),
  noSeat: 'Se omitieron silla y mesa.',
  cautionsTogether: 'Las precauciones del cliente están en un solo párrafo.',
  noPaperPen: 'Se omitieron papel, bolígrafo y frecuencia; están en la hoja del programa en casa.',
  noGoal: 'Se omitió la meta.',
  picturesOut: 'Se omitieron las imágenes.',
  practiceElsewhere: 'Qué practicar está solo en la hoja del programa en casa.',
  cautionsElsewhere:
    'Las precauciones propias del cliente están solo en la hoja del programa en casa: entréguela junto con esta.',
  factorMissing: 'Aún no están escritos el factor limitante y su valoración.',
  careMissing: 'Aún no está escrito el plan de tratamiento.',
  goalMissing: 'Aún no hay ninguna meta acordada.',
  skillMissing: 'Aún no está escrito por qué hace falta la competencia de un terapeuta.',
  planMissing: 'Aún no está escrito el plan (seguir, cambiar o terminar).',
  afterMissing: 'Aún no está escrito el plan tras el alta.',
  noFlagOpen: 'No hay ninguna señal de alarma abierta. Escriba en «Usted añade» por qué deriva.',
  noVisitToday: 'No hay visita; la hoja lleva la fecha de hoy.',
  noVisitForNote: 'No hay visita para la que escribir una nota. Empiece antes una visita.',
  judgementMissing:
    'No hay nada escrito sobre la valoración profesional de esta visita. Añada por qué no pudo hacerlo un ayudante.',
  readsTheSame: (what, day, sentence) =>
    `${what} dice lo mismo que el ${day} («${sentence}»). Diga qué fue distinto esta vez.`,
  skilledJudgement: 'La valoración profesional',
  theResponse: 'La respuesta',
  thePlan: 'El plan',
};
