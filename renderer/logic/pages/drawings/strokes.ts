/**
 * Parts of our own line drawings: paths on a field of 160 by 120. `ink` is the body or thing, `fine` a detail, `move` an
 * arrow that shows what to do.
 */
export interface Stroke {
  d: string;
  kind: 'ink' | 'fine' | 'move' | 'solid';
}

export const ink = (d: string): Stroke => ({ d, kind: 'ink' });
export const fine = (d: string): Stroke => ({ d, kind: 'fine' });
export const solid = (d: string): Stroke => ({ d, kind: 'solid' });

/** An arrow: a curve and its head at (x, y) pointing along `angle` degrees (0 = right, 90 = down). */
export function move(d: string, x: number, y: number, angle: number): Stroke {
  const at = (turn: number): string => {
    const a = ((angle + 180 + turn) * Math.PI) / 180;
    return `${(x + 9 * Math.cos(a)).toFixed(1)} ${(y + 9 * Math.sin(a)).toFixed(1)}`;
  };
  return { d: `${d} M${at(28)} L${x} ${y} L${at(-28)}`, kind: 'move' };
}

/** A pen lying along a line from (x1, y1) to its tip (x2, y2). */
export function pen(x1: number, y1: number, x2: number, y2: number): Stroke {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const ux = (x2 - x1) / length;
  const uy = (y2 - y1) / length;
  const p = (along: number, side: number): string =>
    `${(x1 + ux * along - uy * side).toFixed(1)} ${(y1 + uy * along + ux * side).toFixed(1)}`;
  return ink(
    `M${p(0, 3)} L${p(length - 11, 3)} L${p(length, 0)} L${p(length - 11, -3)} L${p(0, -3)} Z M${p(length - 11, 3)} L${p(length - 11, -3)}`,
  );
}

export const table = fine('M4 108 H156');

/** Right hand, palm up, fingers spread. */
export const openHand = ink(
  'M62 118 C62 106 58 98 52 90 L34 69 C29 62 37 56 43 61 L62 76 C63 72 63 68 62 62 L57 30 C56 22 67 20 69 28 L76 58 L77 19 C77 11 89 11 89 19 L90 58 L95 24 C96 16 107 18 106 26 L102 62 L110 40 C113 33 123 37 121 44 L112 78 C109 92 102 104 101 118',
);

/** Right hand with a pen, from the writer's left. */
export const penHand: Stroke[] = [
  ink('M148 66 C134 56 122 50 112 50 C104 44 96 46 90 52 L66 78 C62 82 66 87 71 84 L92 68'),
  fine('M112 50 C108 50 104 52 101 56'),
  ink('M118 78 C108 70 100 70 92 75 L72 86 C67 89 69 95 75 93 L96 86'),
  ink(
    'M96 86 C88 92 80 96 78 100 C77 104 82 106 87 104 C84 108 90 111 95 108 C100 110 106 108 110 104 C122 106 136 104 148 98',
  ),
  fine('M87 104 C93 100 98 98 103 97 M95 108 C101 105 106 103 110 104'),
];

/** Forearm and flat hand from the side, resting at height y. */
export const flatHand = (y: number): Stroke[] => [
  ink(
    `M4 ${y - 26} H66 C78 ${y - 26} 88 ${y - 24} 98 ${y - 19} L140 ${y - 7} C147 ${y - 5} 146 ${y} 139 ${y} H86 C76 ${y} 70 ${y - 2} 62 ${y - 3} H4`,
  ),
  ink(`M84 ${y - 20} C92 ${y - 12} 98 ${y - 6} 108 ${y - 5} C113 ${y - 4} 113 ${y} 108 ${y}`),
];

/** Right fist, palm side. */
export const fist: readonly Stroke[] = [
  ink(
    'M44 118 C44 106 40 100 36 92 C27 82 28 62 38 57 C40 47 53 46 57 53 C61 45 74 45 77 53 C83 47 95 50 95 60 C103 65 103 84 97 94 C91 102 89 110 89 118',
  ),
  fine('M57 53 V78 M77 53 V76 M95 60 C95 68 95 72 93 76'),
  ink('M101 84 C88 77 70 79 55 84 C48 87 49 97 58 97 C70 96 78 96 86 99'),
];

/** The same stroke, smaller or larger, elsewhere: for paths of absolute points only. */
export const placed = ({ d, kind }: Stroke, scale: number, x: number, y: number): Stroke => {
  let across = true;
  const turned = d.replace(/[A-Za-z]|-?[\d.]+/g, (part) => {
    if (/[A-Za-z]/.test(part)) {
      across = part !== 'V';
      return part;
    }
    const value = (Number(part) * scale + (across ? x : y)).toFixed(1);
    across = !across;
    return value;
  });
  return { d: turned, kind };
};

/** Somebody at a table, from the side: seat at y = 82, feet on the floor. */
export const sitter: Stroke[] = [
  fine('M6 114 H154'),
  ink('M68 14 a10 10 0 1 0 0.1 0'),
  ink('M62 82 L63 44 L66 34 M63 46 L74 64 L106 64'),
  ink('M62 82 L98 82 L98 110 L108 110'),
];
/** The chair under them. */
export const chair = fine('M44 90 H84 M46 88 L42 46 M50 90 V114 M80 90 V114');
/** A table whose top lies at height y. */
export const tableAt = (y: number): Stroke => ink(`M90 ${y} H152 M144 ${y} V114`);

/** A sheet of paper, upright. */
export const sheet = ink('M26 8 H134 V114 H26 Z');

/** Writing that is only hinted at: a wave along a line from x1 to x2 at y, letters `high` tall. */
export const wave = (x1: number, x2: number, y: number, high = 8): Stroke => {
  const steps = Math.max(1, Math.round((x2 - x1) / (high * 1.3)));
  const wide = (x2 - x1) / steps;
  const one = `c${(wide * 0.25).toFixed(1)} ${-high * 1.25} ${(wide * 0.75).toFixed(1)} ${-high * 1.25} ${wide.toFixed(1)} 0`;
  return ink(`M${x1} ${y} ${Array.from({ length: steps }, () => one).join(' ')}`);
};

/** Single letters, left edge at x, standing on y, middle height h. Each is about 0.8 h wide. */
const shapes: Readonly<Record<string, (x: number, y: number, h: number) => string>> = {
  o: (x, y, h) => `M${x + 0.8 * h} ${y - h / 2} A${0.4 * h} ${h / 2} 0 1 0 ${x + 0.8 * h} ${y - h / 2 + 0.1}`,
  a: (x, y, h) =>
    `M${x + 0.8 * h} ${y - h / 2} A${0.4 * h} ${h / 2} 0 1 0 ${x + 0.8 * h} ${y - h / 2 + 0.1} M${x + 0.8 * h} ${y - h} V${y}`,
  n: (x, y, h) =>
    `M${x} ${y - h} V${y} M${x} ${y - 0.6 * h} C${x + 0.1 * h} ${y - 1.15 * h} ${x + 0.75 * h} ${y - 1.15 * h} ${x + 0.75 * h} ${y - 0.5 * h} V${y}`,
  e: (x, y, h) =>
    `M${x} ${y - h / 2} H${x + 0.8 * h} C${x + 0.8 * h} ${y - 1.15 * h} ${x} ${y - 1.15 * h} ${x} ${y - h / 2} C${x} ${y + 0.15 * h} ${x + 0.5 * h} ${y + 0.1 * h} ${x + 0.78 * h} ${y - 0.15 * h}`,
  l: (x, y, h) => `M${x + 0.2 * h} ${y - 2 * h} V${y}`,
  h: (x, y, h) =>
    `M${x} ${y - 2 * h} V${y} M${x} ${y - 0.6 * h} C${x + 0.1 * h} ${y - 1.15 * h} ${x + 0.75 * h} ${y - 1.15 * h} ${x + 0.75 * h} ${y - 0.5 * h} V${y}`,
  A: (x, y, h) =>
    `M${x} ${y} L${x + 0.5 * h} ${y - 1.4 * h} L${x + h} ${y} M${x + 0.2 * h} ${y - 0.5 * h} H${x + 0.8 * h}`,
  '1': (x, y, h) => `M${x + 0.1 * h} ${y - 1.1 * h} L${x + 0.5 * h} ${y - 1.4 * h} V${y}`,
  '4': (x, y, h) => `M${x + 0.6 * h} ${y} V${y - 1.4 * h} L${x} ${y - 0.45 * h} H${x + 0.9 * h}`,
  '7': (x, y, h) => `M${x} ${y - 1.4 * h} H${x + 0.8 * h} L${x + 0.3 * h} ${y}`,
  '9': (x, y, h) =>
    `M${x + 0.8 * h} ${y - h} A${0.4 * h} ${0.4 * h} 0 1 0 ${x + 0.8 * h} ${y - h + 0.1} V${y - 0.5 * h} C${x + 0.8 * h} ${y} ${x + 0.3 * h} ${y} ${x + 0.1 * h} ${y}`,
};

/** Print letters of `word`, each `step` x-heights from the one before. */
export const letters = (word: string, x: number, y: number, h: number, step = 1.15): Stroke =>
  ink([...word].map((letter, i) => shapes[letter]?.(x + i * step * h, y, h) ?? '').join(' '));

/** A row of `count` square boxes of `size`. */
export const boxes = (x: number, y: number, size: number, count: number): Stroke =>
  fine(
    `M${x} ${y} H${x + size * count} V${y + size} H${x} Z ${Array.from({ length: count - 1 }, (_, i) => `M${x + size * (i + 1)} ${y} V${y + size}`).join(' ')}`,
  );

/** A clock face. */
export const clock = (x: number, y: number, r: number): Stroke[] => [
  ink(`M${x + r} ${y} A${r} ${r} 0 1 0 ${x + r} ${y + 0.1}`),
  ink(`M${x} ${y - r * 0.65} V${y} L${x + r * 0.45} ${y + r * 0.25}`),
];

/** An eye that looks. */
export const eye = (x: number, y: number): Stroke[] => [
  ink(
    `M${x - 18} ${y} C${x - 8} ${y - 13} ${x + 8} ${y - 13} ${x + 18} ${y} C${x + 8} ${y + 13} ${x - 8} ${y + 13} ${x - 18} ${y} Z`,
  ),
  solid(`M${x} ${y - 5} a5 5 0 1 0 0.1 0`),
];
