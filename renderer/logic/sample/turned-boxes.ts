/** Pictures that the therapist turned upright: where their parts lie after the turn. */

export type Turns = 0 | 1 | 2 | 3;

interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Where a pixel of the picture lies after quarter turns clockwise. */
export function turnPoint(x: number, y: number, turns: Turns, width: number, height: number): { x: number; y: number } {
  if (turns === 1) return { x: height - y, y: x };
  if (turns === 2) return { x: width - x, y: height - y };
  if (turns === 3) return { x: y, y: width - x };
  return { x, y };
}

/** A part of a picture as the window shows it upright: the box to look at and the SVG transform of the picture. */
export function turnedView(part: Rect, turns: Turns, width: number, height: number): Rect & { transform: string } {
  const a = turnPoint(part.x, part.y, turns, width, height);
  const b = turnPoint(part.x + part.width, part.y + part.height, turns, width, height);
  const moved = [
    '',
    `translate(${height} 0) rotate(90)`,
    `translate(${width} ${height}) rotate(180)`,
    `translate(0 ${width}) rotate(270)`,
  ];
  return {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
    transform: moved[turns]!,
  };
}
