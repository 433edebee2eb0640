import type { Told } from '../../en/screens-en.ts';

/** In Spanish. The worklist: what waits, where it stands, what to do about it. */
export const worklistEs: Told['worklist'] = {
  groups: {
    flag: 'Señales de alarma',
    today: 'Visitas de hoy',
    read: 'Muestras por leer',
    report: 'Informes y notas',
    ends: 'Termina o se agota',
    draft: 'Programas sin aprobar',
    goal: 'Metas que vencen',
    unplanned: 'Sin visita planificada',
  },
  redFlags: (n) => (n === 1 ? 'Una señal de alarma' : `${n} señales de alarma`),
  notReviewed: 'sin revisar',
  review: 'Revisar',
  visit: 'Visita',
  plannedNotBegun: 'planificada, no empezada',
  begun: 'empezada',
  start: 'Empezar',
  goOn: 'Seguir',
  samples: (n) => (n === 1 ? 'Una muestra' : `${n} muestras`),
  noReaderYet: (n, day) => `${n === 1 ? 'del' : 'desde el'} ${day}, sin leer`,
  read: 'Leer',
  progressReport: 'Informe de evolución',
  dueOn: (day) => `vence el ${day}`,
  write: 'Escribir',
  visitNotes: (n) => (n === 1 ? 'Nota de visita' : `${n} notas de visita`),
  notesNotWritten: (n, day) => (n === 1 ? `del ${day}, sin escribir` : `sin escribir desde el ${day}`),
  assistantEntries: (n) => (n === 1 ? 'Una anotación de asistente' : `${n} anotaciones de asistente`),
  notCoSigned: (n, day) => `${n === 1 ? 'del' : 'desde el'} ${day}, sin firmar`,
  coSign: 'Contrafirmar',
  certification: 'Certificación',
  certificationEnds: (day, ended) => (ended ? `terminó el ${day}` : `termina el ${day}`),
  renew: 'Renovar',
  authorizedVisits: 'Visitas autorizadas',
  visitsLeft: (left) =>
    left > 0
      ? left === 1
        ? 'queda 1'
        : `quedan ${left}`
      : left === 0
        ? 'todas usadas'
        : `${-left} más de las autorizadas`,
  askForMore: 'Pedir más',
  homeProgram: 'Programa en casa',
  draftOf: (day) => `borrador del ${day}`,
  draftNotCoSigned: (day) => `borrador del ${day}, sin contrafirmar`,
  finish: 'Terminar',
  goal: 'Meta',
  toBeReachedBy: (day) => `por alcanzar hasta el ${day}`,
  rate: 'Valorar',
  firstVisit: 'Primera visita',
  notSeenYet: 'aún sin atender',
  noVisitPlanned: 'Sin visita planificada',
  lastSeen: (day) => `última vez el ${day}`,
  plan: 'Planificar',
  dueSentence: (visits, others) =>
    `${visits === 0 ? 'Ninguna visita hoy' : visits === 1 ? '1 visita hoy' : `${visits} visitas hoy`}, ${others === 0 ? 'nada más pendiente' : others === 1 ? '1 tarea pendiente' : `${others} tareas pendientes`}`,
  now: 'ahora',
  today: 'hoy',
  inDays: (n) => (n === 1 ? 'en 1 día' : `en ${n} días`),
  daysLate: (n) => (n === 1 ? '1 día de retraso' : `${n} días de retraso`),
};
