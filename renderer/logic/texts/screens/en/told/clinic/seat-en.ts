/** Seat and table: what is wrong, what to set, which measure cannot be. */
export const seatToldEn = {
  seatForTable: (seat: string) => `The seat has to be ${seat} for this table.`,
  feetHang: (seat: string, free: string) => `At a seat of ${seat} the feet hang ${free} free.`,
  tableTooHighBy: (by: string) => `The table stands ${by} too high.`,
  raiseTableBy: (by: string) => `Raise the table by ${by}.`,
  setTable: (from: string, to: string) => `Set it from ${from} to ${to}.`,
  thighRoom: (room: string, needed: string) => `There are ${room}, and ${needed} are needed.`,
  rises: (degrees: string) => `It rises by ${degrees} degrees.`,
  soleAssumed: (sole: string) => `The sole was not measured: ${sole} were assumed.`,
  highStep: 'So high a step is hard to get down from: look for a lower table or seat.',
  wheelchair: 'Wheelchair: brakes on, and no higher seat before the transfer has been looked at.',
  stillTooLow: (short: string) =>
    `That is still ${short} too low, and a higher cushion is unsteady: look for a higher chair.`,
  tableStillHigh: (by: string) => `The table is still ${by} too high for this seat: look for a lower table.`,
  tableTooLow: (by: string) => `The table is too low: raise it by ${by} on firm blocks, all legs alike.`,
  hip: 'Hip precautions: keep the hips above the knees.',
  thighNotMeasured: 'The thigh was not measured: check that a hand fits between thigh and table.',
  thighsTightRaise: (by: string) =>
    `The thighs are tight: raise the table by ${by} on firm blocks, all legs alike. The seat stays.`,
  thighsTightKeep: (table: string) => `The thighs are tight at a lower table: keep it at ${table}. The seat stays.`,
  thighsDoNotFit: (room: string, needed: string) =>
    `The thighs do not fit: ${room} of room, ${needed} needed. Use a thinner top, or one without an apron.`,
  topAssumed: (top: string) => `The table top was not measured: ${top} were assumed.`,
  forSupport: 'Higher for support: stop where the shoulders begin to rise.',
  forShoulder: 'Level with the elbow, to keep the shoulder down.',
  seatEdge: (min: string, max: string) =>
    `Seat edge ${min} to ${max} behind the knee, body one fist from the table, two thirds of the forearm carried.`,
  seat: (seat: string) => `Seat: ${seat}, measured while the client sits on it.`,
  /** What to do with the chair there is; `by` '' = leave it; `feet` '' = no footrest. */
  chair: (seat: string, now: string, way: 'raise' | 'lower' | 'leave', by: string, cushion: boolean, feet: string) => {
    const change =
      way === 'raise'
        ? `raise it by ${by}${cushion ? ' with a firm cushion' : ''}`
        : way === 'lower'
          ? `lower it by ${by}`
          : '';
    const todo = [change, feet].filter(Boolean).join(', ');
    return `${seat} The chair is ${now}: ${todo === '' ? 'leave it' : todo}.`;
  },
  atThisHeight: (seat: string, feet: string) => `${seat} At this height ${feet}.`,
  footrest: (height: string, width: string, depth: string) =>
    `put a footrest of ${height} under both feet (at least ${width} wide and ${depth} deep, one that does not slide), and push it away before standing up`,
  paperNoHand: 'The paper turns toward the side of the hand that rests: say which hand writes to get the angle.',
  paperStraight: 'Paper straight, at the midline, with a bright line on the side that is missed.',
  paperTurn: (min: number, max: number, direction: 'clockwise' | 'counter-clockwise', left: boolean) =>
    `Turn the paper ${min} to ${max} degrees ${direction === 'clockwise' ? 'clockwise' : 'counter-clockwise'}${left ? ', left of the midline, hand below the line' : ''}. Do not force a change of a hand that writes readably.`,
  slantTooSteep: (degrees: string, most: number, reading: boolean) =>
    `The surface rises by ${degrees} degrees: too steep to write on (${most} at most)${reading ? ', fit for reading and copying from' : ''}.`,
  slantSuggested: (degrees: string, min: number, max: number) =>
    `The surface rises by ${degrees} degrees: within the range worth a trial for neck strain (${min} to ${max}). Flat again if the arm slides.`,
  slantOther: (degrees: string, min: number, max: number) =>
    `The surface rises by ${degrees} degrees; ${min} to ${max} are worth a trial for neck strain. Non-slip under it and on it, with an edge stop.`,
  names: {
    popliteal: 'knee height',
    elbow: 'elbow rest height',
    chair: 'chair height',
    shoe: 'sole thickness',
    table: 'table height',
    tableThickness: 'table thickness',
    thigh: 'thigh height',
    slantRise: 'rise of the slanted surface',
    slantLength: 'sloping length',
  },
  how: {
    popliteal: 'from the floor to the underside of the knee, barefoot',
    elbow: 'from the seat, sat on, to the underside of the elbow',
    chair: 'from the floor to the seat while the client sits on it',
    shoe: 'under the heel',
    table: 'from the floor to the table top',
    tableThickness: 'top and apron together',
    thigh: 'from the seat to the highest point of the thigh',
    slantRise: 'from the table to the raised edge',
    slantLength: 'along the slope',
  },
  notNumber: (name: string) => `The ${name} is not a number. Give it in millimeters.`,
  cannotBe: (name: string, value: string, how: string, min: number, max: number, slip: 'none' | 'cm' | 'in') =>
    `${/^[aeiou]/.test(name) ? 'An' : 'A'} ${name} of ${value} mm cannot be right. ` +
    `Measure again ${how}: it lies between ${min} and ${max} mm.` +
    (slip === 'cm' ? ' Was it read in centimeters?' : slip === 'in' ? ' Was it read in inches or centimeters?' : ''),
  kneeFirst: 'Measure the knee height first: from the floor to the underside of the knee, barefoot.',
  elbowFirst: 'Measure the elbow rest height first: it cannot be estimated from body height.',
  thickTable: 'Nobody could sit under a table this thick. Measure the top and its apron again.',
  thighOverElbow: 'The thigh cannot lie so far above the elbow. Measure both again from the same seat.',
  edgeTooHigh: 'The raised edge cannot be higher than the surface is long. Measure both again.',
};
