import type { ConditionName } from '../../../change/index.ts';
import type { ChangeTexts } from './change-texts.ts';

const numbers = ['ninguna', 'una', 'dos', 'tres', 'cuatro', 'cinco', 'seis', 'siete', 'ocho', 'nueve', 'diez'];
const conditions: Partial<Record<ConditionName, Readonly<Record<string, string>>>> = {
  task: { copy: 'copiando', own: 'con palabras propias', digits: 'en cifras' },
  cue: { none: 'sin ayuda', visual: 'con ayuda visual', verbal: 'con ayuda hablada' },
  dose: {
    on: 'con la medicina en efecto',
    off: 'sin efecto de la medicina',
    unsure: 'sin saber si la medicina hacía efecto',
    none: 'sin medicina',
  },
  hand: { right: 'con la mano derecha', left: 'con la mano izquierda', same: 'con la misma mano' },
  surface: {
    paper: 'en papel',
    screen: 'en una pantalla',
    'screen-film': 'en una pantalla con lámina',
    'tablet-paper': 'en papel sobre una tableta',
    'tablet-blind': 'en una tableta',
  },
  view: { 'true-size': 'y leídas a tamaño real', 'unknown-size': 'y leídas a un tamaño desconocido' },
};

const count = (n: number): string => numbers[n] ?? String(n);
const words = (n: number): string => (n === 1 ? '1 palabra' : `${n} palabras`);
const amount = (n: number): string => (n === 0 ? 'ninguna' : `${words(Math.abs(n))} ${n > 0 ? 'más' : 'menos'}`);
const visits = (n: number): string => `${count(n)} ${n === 1 ? 'visita' : 'visitas'}`;

function and(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} y ${items.at(-1)}`;
}

/** Surface and device, as "screen, Slate 12". */
function surfaceWords(value: string): string {
  const [surface = '', ...device] = value.split(', ');
  return [
    conditions.surface?.[surface] ?? `en ${surface}`,
    ...(device.length > 0 ? [`(${device.join(', ')})`] : []),
  ].join(' ');
}

export const changeEs: ChangeTexts = {
  headline: {
    nothing: 'Aún no se ha leído nada',
    'not-comparable': 'No se puede comparar',
    'cannot-tell': 'Aún no se puede decir',
    steady: 'Más o menos igual',
    sure: { up: 'Sí, más', down: 'Sí, menos' },
    probable: { up: 'Probablemente más', down: 'Probablemente menos' },
  },
  visits: (n) => visits(n).charAt(0).toUpperCase() + visits(n).slice(1),
  nothing: 'Aún no se ha leído ninguna muestra. En cuanto la lea alguien que no conoce el texto, se verá aquí.',
  oneVisit: (right, of, low, high) =>
    `Una visita: se pudieron leer ${right} de ${of} palabras (de ${low} a ${high} no sorprenderían el mismo día). ` +
    'Una visita no puede mostrar un cambio: dos muestras más en las mismas condiciones forman el punto de partida.',
  afterBreak:
    'Es la primera visita después de una pausa larga; no se sabe qué pasó entretanto: sirve como nuevo punto de partida.',
  sinceBreak: (day) => `Se cuenta desde la pausa, a partir del ${day}.`,
  onlyBaseline: 'Todas las visitas forman el punto de partida. Dos muestras más después pueden mostrar un cambio.',
  moved: (direction, { from, to, of }, chances, least, leastChances) =>
    `de unas ${from} a unas ${to} palabras de ${of}; al menos ${chances} de que sean ` +
    `${direction === 'up' ? 'más' : 'menos'} que al principio` +
    (least
      ? `, unas ${leastChances} de que sean al menos ${words(least)} ${direction === 'up' ? 'más' : 'menos'}`
      : '') +
    '.',
  steady: ({ to, of }, largest, chances) =>
    `unas ${to} de ${of} palabras. Un cambio de más de ${words(largest)} de ${of} es poco probable (${chances}).`,
  unclear: ({ from, to, of }, low, high) =>
    `${from === to ? `unas ${to} palabras de ${of}` : `de unas ${from} a unas ${to} palabras de ${of}`}; ` +
    `es posible cualquier cosa entre ${amount(low)} y ${amount(high)}. ` +
    'Aún no se puede decir si es más que la variación de un día a otro.',
  probably: (direction, chances) =>
    `Probablemente ${direction === 'up' ? 'más' : 'menos'}: unas ${chances}. Tome una muestra más otro día.`,
  more: (n) =>
    `Si sigue así, ${n === 1 ? 'bastaría' : 'bastarían'} ${n === 1 ? 'una muestra' : `${count(n)} muestras`} más en las mismas condiciones.`,
  moreHardly: 'Más muestras como estas apenas lo dirían: use un texto más largo, o dos muestras en una visita.',
  notes: {
    'readers-differ': 'Los dos lectores apuntan en sentidos opuestos: pida un tercero.',
    'readers-change': 'Leyeron otras personas al principio y después; se ha tenido en cuenta.',
  },
  allRight: (n) =>
    `Se pudieron leer todas las palabras en las ${visits(n)}. Esta medida no puede mostrar más mejora: elija una tarea más difícil, menos ayuda o más velocidad.`,
  noneRight: (n) =>
    `No se pudo leer ninguna palabra en las ${visits(n)}. Las letras sueltas mostrarán un cambio antes que las palabras: cuente letras, o acorte la tarea.`,
  notComparable: (first, later) =>
    `No se puede comparar: las primeras visitas se escribieron ${first}, las posteriores ${later}. ` +
    'Tome una muestra como al principio, o dos más como ahora.',
  condition: (name, value) =>
    conditions[name]?.[value] ??
    (name === 'view' ? `y leídas al ${value} % de su tamaño` : name === 'surface' ? surfaceWords(value) : value),
  visitsOf: (n, how) => `${count(n)} ${how}`,
  partly: (compared, leftOut) => `Se compara: ${compared}. Queda fuera: ${leftOut}.`,
  readByTherapist: 'Solo ha leído el terapeuta, que conoce el texto y la letra: otra persona leería menos palabras.',
  askRepeat: 'Menos palabras que antes: tome una muestra otro día, dentro de dos semanas.',
  chances: (part, of) => `${part} de ${of} probabilidades`,
  and,
};
