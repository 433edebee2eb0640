import type { Told } from '../../en/screens-en.ts';

/** In Spanish. A client in short and over time. */
export const clientEs: Told['client'] = {
  writesWith: (hand) => `escribe con la mano ${hand === 'left' ? 'izquierda' : 'derecha'}`,
  goal: 'Meta',
  goalReached: (output, percent) => `${output}${percent === null ? '' : `, ${percent} % de las palabras`}`,
  lastVisit: 'Última visita',
  noneYet: 'aún ninguna',
  planThen: 'Plan de entonces',
  nextVisit: 'Próxima visita',
  program: 'Programa',
  approvedOn: (day) => `aprobado el ${day}`,
  mind: 'Atención',
  wordsRead: (first, now, samples) =>
    `Palabras que un lector pudo leer: ${first} %${samples > 1 ? ` → ${now} % (${samples} muestras)` : ' (1 muestra)'}`,
  kinds: {
    visit: 'Visita',
    flag: 'Señal de alarma',
    medicine: 'Medicina',
    sample: 'Muestra',
    pen: 'Útil de escritura',
    trial: 'Ensayo',
    program: 'Programa',
    goal: 'Meta',
    missed: 'Perdida',
  },
  dose: { on: 'con efecto', off: 'sin efecto', unsure: 'no se sabe si con o sin efecto' },
  approvedTier: (tier) => `aprobado, nivel ${tier}`,
  baseline: 'punto de partida',
  tasks: {
    pangram: 'Una línea con todas las letras',
    sentences: 'Frases cotidianas',
    'date-line': 'Fecha y hora',
    personal: 'Nombre y dirección propios',
    signature: 'Firma, tres veces',
    digits: 'Cifras e importes',
    free: 'Escritura libre',
    'goal-output': 'Lo que pide la meta',
    'transfer-probe': 'Una línea en papel liso, sin ayuda',
    'repeated-letter': 'Una letra, quince veces',
  },
};
