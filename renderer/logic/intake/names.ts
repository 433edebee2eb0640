/** Which drawing shows a hand, and which a body; every other name is a page or a thing. */
export const handDrawings: ReadonlySet<string> = new Set([
  'writing-hand',
  'grasp',
  'ring',
  'pull',
  'skin',
  'fingertips',
  'joint',
  'opposition',
  'coins',
  'stretch',
  'wrist',
  'rotation',
]);
export const bodyDrawings: ReadonlySet<string> = new Set(['seating', 'trunk', 'neck', 'arm-support']);
