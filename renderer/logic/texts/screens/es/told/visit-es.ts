import type { Told } from '../../en/screens-en.ts';

/** In Spanish. A visit: how far its steps are, what is next, what was planned. */
export const visitEs: Told['visit'] = {
  answersFlagsAsked: (n) => `${n === 1 ? '1 respuesta' : `${n} respuestas`}, alarmas preguntadas`,
  flagsAsked: 'alarmas preguntadas',
  answersFlagsLeft: (answers, left) =>
    `${answers === 0 ? '' : answers === 1 ? '1 respuesta, ' : `${answers} respuestas, `}${left === 1 ? '1 alarma' : `${left} alarmas`} por preguntar`,
  doneEarlier: 'hecho en una visita anterior',
  notBegun: 'sin empezar',
  noSampleHere: 'ninguna en esta visita',
  noPageYet: 'aún sin hoja',
  pagesMeasured: (measured, pages) =>
    measured === pages
      ? measured === 1
        ? '1 hoja medida'
        : `${measured} hojas medidas`
      : `${measured} de ${pages === 1 ? '1 hoja medida' : `${pages} hojas medidas`}`,
  nothingToRead: 'aún nada que leer',
  waitsForReader: 'espera a un lector',
  wordsRead: (right, words) => `${right} de ${words} palabras`,
  readKeptApart: 'leída, guardada aparte',
  approved: 'aprobado',
  draft: 'borrador',
  approvedEarlier: 'aprobado antes',
  noProgram: 'aún ninguno',
  goalsAgreed: (n) => (n === 1 ? '1 acordada' : `${n} acordadas`),
  noGoal: 'ninguna acordada',
  pagesIssued: (n) => (n === 1 ? '1 emitida' : `${n} emitidas`),
  nonePage: 'ninguna emitida',
  next: {
    firstVisit: ['Empezar la primera visita', 'Todo lo observado pertenece a una visita.'],
    redFlags: ['Preguntar las señales de alarma', 'Dos minutos, antes que nada.'],
    screen: ['Cribado', '¿Están listas la mano, la postura y la mesa?'],
    sample: ['Tomar una muestra de escritura', 'Aún no hay muestra en esta visita.'],
    program: ['Programa en casa', 'Aún no hay programa.'],
    draft: ['Programa en casa', 'El borrador aún no está aprobado.'],
    goal: ['Acordar una meta', 'No hay ninguna meta activa.'],
    summary: ['Imprimir un resumen', 'Una hoja para la familia.'],
  },
  readBack: 'Lectura',
  samplesWait: (n) => (n === 1 ? 'Una muestra espera a un lector.' : `${n} muestras esperan a un lector.`),
  plannedFor: (day, hour) => `La visita se planificó para el ${day}${hour ? ` a las ${hour}` : ''}.`,
  writeAgain: (task) => `Escribir otra vez: ${task}, a la misma hora del día.`,
  medicine: (dose) => `Medicina: ${dose}`,
  goOnWithTrial: 'Seguir con el ensayo abierto.',
  ask: (questions) => `Preguntar: ${questions}`,
};
