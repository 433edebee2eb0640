import type { Told } from '../../en/screens-en.ts';

/** In Spanish. Spirals on paper: what the drawn line shows. */
export const spiralEs: Told['spiral'] = {
  names: { traced: 'Sobre la línea', free: 'Libre' },
  leaves: (mm, percent, turns) =>
    `La línea se aparta ${mm} mm (rms) de una espiral regular, el ${percent} % de la distancia entre vueltas, en ${turns} vueltas.`,
  noSwings: 'No destaca ninguna oscilación.',
  swings: (turn, cm) =>
    `Oscila hacia fuera y hacia dentro ${turn} veces por vuelta${cm === '' ? '' : `, con más regularidad ${cm} veces por cm de línea`}.`,
  noTime: 'Sin el tiempo de dibujo no se dicen oscilaciones por segundo.',
  perSecond: (seconds, hz) => `Dibujada en ${seconds} s: ${hz} oscilaciones por segundo de media.`,
  fromPrinted: (mm) => `Queda a ${mm} mm (rms) de la línea impresa, incluidos los desvíos lentos.`,
  before: (day, mm, swings, hz) =>
    `El ${day}: ${mm} mm, ${swings} oscilaciones por vuelta${hz === '' ? '' : `, ${hz} por segundo`}.`,
  caution:
    'Se mide la línea, no de qué viene: también oscilan el papel áspero, un lápiz duro, las esquinas y una mano lenta. Los desvíos lentos (menos de 2,5 oscilaciones por vuelta) se toman como forma de la espiral. Sin otras hojas del mismo día no se sabe cuánto varía esta mano; por eso dos hojas distintas aún no muestran un cambio.',
};
