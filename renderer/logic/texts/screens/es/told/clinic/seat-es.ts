import type { Told } from '../../../en/screens-en.ts';

export const seatToldEs: Told['seat'] = {
  seatForTable: (seat) => `El asiento tiene que estar a ${seat} para esta mesa.`,
  feetHang: (seat, free) => `Con un asiento de ${seat} los pies quedan a ${free} del suelo.`,
  tableTooHighBy: (by) => `La mesa está ${by} demasiado alta.`,
  raiseTableBy: (by) => `Suba la mesa ${by}.`,
  setTable: (from, to) => `Ajústela de ${from} a ${to}.`,
  thighRoom: (room, needed) => `Hay ${room}, y hacen falta ${needed}.`,
  rises: (degrees) => `Se eleva ${degrees} grados.`,
  soleAssumed: (sole) => `La suela no se midió: se supusieron ${sole}.`,
  highStep: 'De un escalón tan alto cuesta bajar: busque una mesa o un asiento más bajos.',
  wheelchair: 'Silla de ruedas: frenos puestos, y ningún asiento más alto antes de revisar la transferencia.',
  stillTooLow: (short) => `Aún faltan ${short}, y un cojín más alto es inestable: busque una silla más alta.`,
  tableStillHigh: (by) => `La mesa sigue ${by} demasiado alta para este asiento: busque una mesa más baja.`,
  tableTooLow: (by) => `La mesa es demasiado baja: súbala ${by} sobre bloques firmes, todas las patas igual.`,
  hip: 'Precauciones de cadera: mantenga las caderas por encima de las rodillas.',
  thighNotMeasured: 'El muslo no se midió: compruebe que cabe una mano entre el muslo y la mesa.',
  thighsTightRaise: (by) =>
    `Los muslos van justos: suba la mesa ${by} sobre bloques firmes, todas las patas igual. El asiento se queda.`,
  thighsTightKeep: (table) => `Los muslos irían justos con una mesa más baja: déjela en ${table}. El asiento se queda.`,
  thighsDoNotFit: (room, needed) =>
    `Los muslos no caben: hay ${room}, hacen falta ${needed}. Use un tablero más fino o sin faldón.`,
  topAssumed: (top) => `El tablero no se midió: se supusieron ${top}.`,
  forSupport: 'Más alta como apoyo: pare donde los hombros empiezan a subir.',
  forShoulder: 'A la altura del codo, para mantener bajo el hombro.',
  seatEdge: (min, max) =>
    `Borde del asiento de ${min} a ${max} por detrás de la rodilla, el cuerpo a un puño de la mesa, dos tercios del antebrazo apoyados.`,
  seat: (seat) => `Asiento: ${seat}, medido con el cliente sentado.`,
  chair: (seat, now, way, by, cushion, feet) => {
    const change =
      way === 'raise' ? `súbala ${by}${cushion ? ' con un cojín firme' : ''}` : way === 'lower' ? `bájela ${by}` : '';
    const todo = [change, feet].filter(Boolean).join(', ');
    return `${seat} La silla está a ${now}: ${todo === '' ? 'déjela así' : todo}.`;
  },
  atThisHeight: (seat, feet) => `${seat} A esta altura, ${feet}.`,
  footrest: (height, width, depth) =>
    `ponga un reposapiés de ${height} bajo los dos pies (al menos ${width} de ancho y ${depth} de fondo, que no se deslice) y apártelo antes de levantarse`,
  paperNoHand: 'El papel gira hacia el lado de la mano que descansa: diga qué mano escribe para saber el ángulo.',
  paperStraight: 'Papel recto, en la línea media, con una línea de color en el lado que se omite.',
  paperTurn: (min, max, direction, left) =>
    `Gire el papel de ${min} a ${max} grados ${direction === 'clockwise' ? 'en el sentido de las agujas del reloj' : 'en sentido contrario a las agujas del reloj'}${left ? ', a la izquierda de la línea media, la mano por debajo de la línea' : ''}. No fuerce el cambio de una mano que escribe de forma legible.`,
  slantTooSteep: (degrees, most, reading) =>
    `La superficie se eleva ${degrees} grados: demasiado empinada para escribir (${most} como mucho)${reading ? ', válida para leer y copiar' : ''}.`,
  slantSuggested: (degrees, min, max) =>
    `La superficie se eleva ${degrees} grados: dentro de lo que merece una prueba por la tensión del cuello (de ${min} a ${max}). Plana otra vez si el brazo resbala.`,
  slantOther: (degrees, min, max) =>
    `La superficie se eleva ${degrees} grados; de ${min} a ${max} merecen una prueba por la tensión del cuello. Antideslizante debajo y encima, con tope en el borde.`,
  names: {
    popliteal: 'altura de la rodilla',
    elbow: 'altura del codo',
    chair: 'altura de la silla',
    shoe: 'grosor de la suela',
    table: 'altura de la mesa',
    tableThickness: 'grosor de la mesa',
    thigh: 'altura del muslo',
    slantRise: 'elevación de la superficie inclinada',
    slantLength: 'longitud de la pendiente',
  },
  how: {
    popliteal: 'del suelo a debajo de la rodilla, descalzo',
    elbow: 'del asiento, con el cliente sentado, a debajo del codo',
    chair: 'del suelo al asiento, con el cliente sentado',
    shoe: 'bajo el talón',
    table: 'del suelo al tablero',
    tableThickness: 'tablero y faldón juntos',
    thigh: 'del asiento al punto más alto del muslo',
    slantRise: 'de la mesa al borde alto',
    slantLength: 'a lo largo de la pendiente',
  },
  notNumber: (name) => `El valor «${name}» no es un número. Indíquelo en milímetros.`,
  cannotBe: (name, value, how, min, max, slip) =>
    `No puede ser: ${name} de ${value} mm. Mida otra vez ${how}: está entre ${min} y ${max} mm.` +
    (slip === 'cm' ? ' ¿Se leyó en centímetros?' : slip === 'in' ? ' ¿Se leyó en pulgadas o centímetros?' : ''),
  kneeFirst: 'Mida primero la altura de la rodilla: del suelo a debajo de la rodilla, descalzo.',
  elbowFirst: 'Mida primero la altura del codo: no se puede estimar por la estatura.',
  thickTable: 'Nadie podría sentarse bajo una mesa tan gruesa. Mida otra vez el tablero y el faldón.',
  thighOverElbow: 'El muslo no puede quedar tan por encima del codo. Mida otra vez los dos desde el mismo asiento.',
  edgeTooHigh: 'El borde alto no puede ser mayor que el largo de la superficie. Mida otra vez los dos.',
};
