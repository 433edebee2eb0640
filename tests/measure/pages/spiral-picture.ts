/** Spirals drawn with a known wobble over a sheet: the formula of the drawing is the truth. */
import sharp from 'sharp';
import { CORNER_MARK, SPIRAL_SHEET, spiralPlaces } from '../../../renderer/measure/index.ts';

interface Wobble {
  /** Amplitude along the radius, mm. */
  amplitude: number;
  /** Swings a turn, or a cm along the line. */
  swings: number;
  per: 'turn' | 'cm';
}

export interface DrawnSpiral extends Wobble {
  turns: number;
  pitch: number;
  /** Middle away from that of its place, mm. */
  dx?: number;
  dy?: number;
  sense?: 1 | -1;
  /** Gray of the pen, 0 black. */
  pen?: number;
}

/** Points of r = 1 + pitch turns + the wobble, mm. */
function spiralPoints({ turns, pitch, amplitude, swings, per, sense = 1 }: DrawnSpiral): [number, number][] {
  const points: [number, number][] = [];
  let cm = 0;
  const step = 1 / 2000;
  for (let turn = 0; turn < turns; turn += step) {
    const phase = 2 * Math.PI * swings * (per === 'turn' ? turn : cm);
    const r = 1 + pitch * turn + amplitude * Math.sin(phase);
    points.push([r * Math.cos(2 * Math.PI * turn), sense * r * Math.sin(2 * Math.PI * turn)]);
    cm += (step * Math.hypot(2 * Math.PI * (1 + pitch * turn), pitch)) / 10;
  }
  return points;
}

/** The ink as a part of an SVG in mm. */
export function inkSvg(spiral: DrawnSpiral, centerX: number, centerY: number): string {
  const { dx = 0, dy = 0, pen = 50 } = spiral;
  const points = spiralPoints(spiral).map(
    ([x, y]) => `${(centerX + dx + x).toFixed(3)},${(centerY + dy + y).toFixed(3)}`,
  );
  return `<polyline points="${points.join(' ')}" fill="none" stroke="rgb(${pen},${pen},${pen})" stroke-width="0.5" stroke-linejoin="round"/>`;
}

/** Our printed sheet with both spirals drawn on it, as the shapes of an SVG in mm; null leaves a place empty. */
function sheetShapes(widthMm: number, heightMm: number, traced: DrawnSpiral | null, free: DrawnSpiral | null): string {
  const { insetMm, sideMm, holeMm } = CORNER_MARK;
  const square = (x: number, y: number, side: number, fill: string): string =>
    `<rect x="${x - side / 2}" y="${y - side / 2}" width="${side}" height="${side}" fill="${fill}"/>`;
  const corners = [insetMm, widthMm - insetMm].flatMap((x) =>
    [insetMm, heightMm - insetMm].map((y) => [x, y] as const),
  );
  const places = spiralPlaces(widthMm, heightMm);
  const gray = Math.round(255 * SPIRAL_SHEET.gray);
  const printed = spiralPoints({
    turns: SPIRAL_SHEET.turns,
    pitch: SPIRAL_SHEET.pitchMm,
    amplitude: 0,
    swings: 1,
    per: 'turn',
  });
  const shift = ([x, y]: [number, number]): string => {
    // The printed spiral begins in its middle; `spiralPoints` begins 1 mm out.
    const r = Math.hypot(x, y);
    const { centerX, centerY } = places.traced;
    return `${(centerX + (x * (r - 1)) / r).toFixed(3)},${(centerY + (y * (r - 1)) / r).toFixed(3)}`;
  };
  return [
    ...corners.map(([x, y]) => square(x, y, sideMm, 'black')),
    square(insetMm, insetMm, holeMm, 'white'),
    `<polyline points="${printed.map(shift).join(' ')}" fill="none" stroke="rgb(${gray},${gray},${gray})" stroke-width="${SPIRAL_SHEET.lineMm}"/>`,
    traced ? inkSvg(traced, places.traced.centerX, places.traced.centerY) : '',
    free ? inkSvg(free, places.free.centerX, places.free.centerY) : '',
  ].join('');
}

export interface SheetPicture {
  paper?: 'A4' | 'Letter';
  dpi?: number;
  /** Turn of the sheet on the glass, degrees. */
  turnDeg?: number;
  /** Share of light that a shadow over the right half takes. */
  shadow?: number;
  traced: DrawnSpiral | null;
  free: DrawnSpiral | null;
}

/** A scan of the sheet as a PNG. */
export async function spiralSheetPng({
  paper = 'A4',
  dpi = 300,
  turnDeg = 0,
  shadow = 0,
  traced,
  free,
}: SheetPicture): Promise<Buffer> {
  const [w, h] = paper === 'A4' ? [210, 297] : [215.9, 279.4];
  const shade =
    shadow > 0
      ? `<defs><linearGradient id="s"><stop offset="0.3" stop-color="black" stop-opacity="0"/><stop offset="0.7" stop-color="black" stop-opacity="${shadow}"/></linearGradient></defs><rect width="${w}" height="${h}" fill="url(#s)"/>`
      : '';
  const shapes = sheetShapes(w, h, traced, free);
  const px = dpi / 25.4;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.round(w * px)}" height="${Math.round(h * px)}" viewBox="0 0 ${w} ${h}"><rect width="${w}" height="${h}" fill="rgb(247,247,247)"/><g transform="rotate(${turnDeg} ${w / 2} ${h / 2})">${shapes}</g>${shade}</svg>`;
  const { data, info } = await sharp(Buffer.from(svg))
    .grayscale()
    .blur(0.7)
    .raw()
    .toBuffer({ resolveWithObject: true });
  // Even noise of +- 6 gray values, the same each time.
  let seed = 7;
  for (let i = 0; i < data.length; i += 1) {
    seed = (seed * 1_103_515_245 + 12_345) & 0x7fffffff;
    data[i] = Math.max(0, Math.min(255, data[i]! + ((seed >> 16) % 13) - 6));
  }
  return sharp(data, { raw: { width: info.width, height: info.height, channels: 1 } })
    .png({ compressionLevel: 1 })
    .toBuffer();
}
