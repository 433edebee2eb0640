import type { Told } from '../../../en/screens-en.ts';

export const seatToldDe: Told['seat'] = {
  seatForTable: (seat) => `Für diesen Tisch muss der Sitz ${seat} hoch sein.`,
  feetHang: (seat, free) => `Bei einem Sitz von ${seat} hängen die Füße ${free} frei.`,
  tableTooHighBy: (by) => `Der Tisch steht ${by} zu hoch.`,
  raiseTableBy: (by) => `Den Tisch um ${by} erhöhen.`,
  setTable: (from, to) => `Von ${from} auf ${to} stellen.`,
  thighRoom: (room, needed) => `Es sind ${room}, gebraucht werden ${needed}.`,
  rises: (degrees) => `Sie steigt um ${degrees} Grad.`,
  soleAssumed: (sole) => `Die Sohle wurde nicht gemessen: ${sole} wurden angenommen.`,
  highStep: 'Von einer so hohen Stufe ist schwer herunterzukommen: einen niedrigeren Tisch oder Sitz suchen.',
  wheelchair: 'Rollstuhl: Bremsen fest, und kein höherer Sitz, bevor der Transfer geprüft wurde.',
  stillTooLow: (short) =>
    `Das ist noch ${short} zu niedrig, und ein höheres Kissen ist wackelig: einen höheren Stuhl suchen.`,
  tableStillHigh: (by) => `Der Tisch ist für diesen Sitz noch ${by} zu hoch: einen niedrigeren Tisch suchen.`,
  tableTooLow: (by) => `Der Tisch ist zu niedrig: um ${by} auf feste Blöcke stellen, alle Beine gleich.`,
  hip: 'Vorsicht Hüfte: die Hüften über den Knien halten.',
  thighNotMeasured:
    'Der Oberschenkel wurde nicht gemessen: prüfen, ob eine Hand zwischen Oberschenkel und Tisch passt.',
  thighsTightRaise: (by) =>
    `Für die Oberschenkel ist es eng: den Tisch um ${by} auf feste Blöcke stellen, alle Beine gleich. Der Sitz bleibt.`,
  thighsTightKeep: (table) =>
    `Bei niedrigerem Tisch wird es für die Oberschenkel eng: bei ${table} lassen. Der Sitz bleibt.`,
  thighsDoNotFit: (room, needed) =>
    `Die Oberschenkel passen nicht: ${room} Platz, ${needed} nötig. Eine dünnere Platte nehmen oder eine ohne Zarge.`,
  topAssumed: (top) => `Die Tischplatte wurde nicht gemessen: ${top} wurden angenommen.`,
  forSupport: 'Höher als Stütze: aufhören, wo die Schultern hochziehen.',
  forShoulder: 'Auf Ellenbogenhöhe, damit die Schulter unten bleibt.',
  seatEdge: (min, max) =>
    `Sitzkante ${min} bis ${max} hinter dem Knie, Körper eine Faust vom Tisch, zwei Drittel des Unterarms getragen.`,
  seat: (seat) => `Sitz: ${seat}, gemessen, während der Klient sitzt.`,
  chair: (seat, now, way, by, cushion, feet) => {
    const change =
      way === 'raise'
        ? `um ${by} erhöhen${cushion ? ', mit einem festen Kissen' : ''}`
        : way === 'lower'
          ? `um ${by} senken`
          : '';
    const todo = [change, feet].filter(Boolean).join(', ');
    return `${seat} Der Stuhl hat ${now}: ${todo === '' ? 'so lassen' : todo}.`;
  },
  atThisHeight: (seat, feet) => `${seat} Bei dieser Höhe ${feet}.`,
  footrest: (height, width, depth) =>
    `eine Fußstütze von ${height} unter beide Füße stellen (mindestens ${width} breit und ${depth} tief, rutschfest) und vor dem Aufstehen wegschieben`,
  paperNoHand: 'Das Papier dreht sich zur Seite der ruhenden Hand: Für den Winkel angeben, welche Hand schreibt.',
  paperStraight: 'Papier gerade, in der Mitte, mit einer kräftigen Linie auf der übersehenen Seite.',
  paperTurn: (min, max, direction, left) =>
    `Das Papier ${min} bis ${max} Grad ${direction === 'clockwise' ? 'im Uhrzeigersinn' : 'gegen den Uhrzeigersinn'} drehen${left ? ', links der Mitte, Hand unter der Zeile' : ''}. Eine Hand, die lesbar schreibt, nicht umgewöhnen.`,
  slantTooSteep: (degrees, most, reading) =>
    `Die Fläche steigt um ${degrees} Grad: zum Schreiben zu steil (höchstens ${most})${reading ? ', zum Lesen und Abschreiben geeignet' : ''}.`,
  slantSuggested: (degrees, min, max) =>
    `Die Fläche steigt um ${degrees} Grad: im Bereich, der bei Nackenanspannung eine Probe lohnt (${min} bis ${max}). Wieder flach, wenn der Arm rutscht.`,
  slantOther: (degrees, min, max) =>
    `Die Fläche steigt um ${degrees} Grad; ${min} bis ${max} lohnen bei Nackenanspannung eine Probe. Rutschfest darunter und darauf, mit Kante.`,
  names: {
    popliteal: 'Kniehöhe',
    elbow: 'Ellenbogenhöhe',
    chair: 'Stuhlhöhe',
    shoe: 'Sohlendicke',
    table: 'Tischhöhe',
    tableThickness: 'Tischdicke',
    thigh: 'Oberschenkelhöhe',
    slantRise: 'Höhe der Schräge',
    slantLength: 'Länge der Schräge',
  },
  how: {
    popliteal: 'vom Boden bis unter das Knie, barfuß',
    elbow: 'vom besetzten Sitz bis unter den Ellenbogen',
    chair: 'vom Boden bis zum Sitz, während der Klient sitzt',
    shoe: 'unter der Ferse',
    table: 'vom Boden bis zur Tischplatte',
    tableThickness: 'Platte und Zarge zusammen',
    thigh: 'vom Sitz bis zum höchsten Punkt des Oberschenkels',
    slantRise: 'vom Tisch bis zur hohen Kante',
    slantLength: 'entlang der Schräge',
  },
  notNumber: (name) => `„${name}“ ist keine Zahl. Bitte in Millimetern angeben.`,
  cannotBe: (name, value, how, min, max, slip) =>
    `${name} von ${value} mm kann nicht stimmen. Noch einmal messen, ${how}: zwischen ${min} und ${max} mm.` +
    (slip === 'cm'
      ? ' Wurde in Zentimetern abgelesen?'
      : slip === 'in'
        ? ' Wurde in Zoll oder Zentimetern abgelesen?'
        : ''),
  kneeFirst: 'Zuerst die Kniehöhe messen: vom Boden bis unter das Knie, barfuß.',
  elbowFirst: 'Zuerst die Ellenbogenhöhe messen: Sie lässt sich nicht aus der Körpergröße schätzen.',
  thickTable: 'Unter einem so dicken Tisch könnte niemand sitzen. Platte und Zarge noch einmal messen.',
  thighOverElbow:
    'Der Oberschenkel kann nicht so weit über dem Ellenbogen liegen. Beide vom selben Sitz aus noch einmal messen.',
  edgeTooHigh: 'Die hohe Kante kann nicht höher sein, als die Fläche lang ist. Beide noch einmal messen.',
};
