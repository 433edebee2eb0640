import { createCanvas } from '@napi-rs/canvas';
import type { Canvas, SKRSContext2D } from '@napi-rs/canvas';
import type { Chain } from '../../../build/letters/glyph.ts';
import { CORNER_MARK } from '../../../renderer/measure/sheet/corner-marks.ts';
import { seededRandom } from '../../../build/letters/random.ts';
import { cornersOf } from './camera.ts';
import type { View } from './camera.ts';
import { PAPERS } from './layout.ts';
import type { PageInk } from './layout.ts';
import type { PageSpec } from './types.ts';

const INKS = { blue: '#24408c', black: '#1d1d22', pencil: '#5c5c60' } as const;
const RULING = '#9fb6d6';
const MARGIN = '#d98a8a';

/** Adds a chain, seen through the camera, to the current path. */
function trace(context: SKRSContext2D, view: View, chain: Chain): void {
  for (let i = 0; i + 1 < chain.length; i += 2) {
    const [x, y] = view.toPicture(chain[i] as number, chain[i + 1] as number);
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.closePath();
}

/** A straight printed line as a filled strip, so that perspective thins it as it should. */
function strip(x0: number, y0: number, x1: number, y1: number, widthMm: number): Chain {
  const length = Math.hypot(x1 - x0, y1 - y0);
  const nx = ((y1 - y0) / length) * (widthMm / 2);
  const ny = (-(x1 - x0) / length) * (widthMm / 2);
  return Float64Array.from([x0 + nx, y0 + ny, x1 + nx, y1 + ny, x1 - nx, y1 - ny, x0 - nx, y0 - ny]);
}

/** A piece of pen stroke: a strip with round ends, always wound the same way so that pieces unite. */
function capsule(x0: number, y0: number, x1: number, y1: number, widthMm: number): Chain {
  const along = Math.atan2(y1 - y0, x1 - x0);
  const points: number[] = [];
  for (const [cx, cy, from] of [
    [x1, y1, along - Math.PI / 2],
    [x0, y0, along + Math.PI / 2],
  ] as const)
    for (let i = 0; i <= 8; i += 1) {
      const angle = from + (Math.PI * i) / 8;
      points.push(cx + (widthMm / 2) * Math.cos(angle), cy + (widthMm / 2) * Math.sin(angle));
    }
  return Float64Array.from(points);
}

function drawRulings(context: SKRSContext2D, spec: PageSpec, view: View): void {
  const { widthMm, heightMm } = PAPERS[spec.paper];
  const { ruling, writing } = spec;
  const lines: { chains: Chain[]; color: string } = { chains: [], color: ruling.color ?? RULING };
  const thick = ruling.widthMm ?? 0.25;
  const margin: Chain[] = [];
  const inset = spec.picture.tilt ? 0 : -20; // on a flatbed the printed lines run off the window
  const across = (y: number, dash: number | null): void => {
    if (dash === null) lines.chains.push(strip(inset, y, widthMm - inset, y, thick));
    else for (let x = inset; x < widthMm - inset; x += 2 * dash) lines.chains.push(strip(x, y, x + dash, y, thick));
  };
  const from = writing.topMm;
  if (ruling.kind === 'ruled') {
    const first = from - Math.floor((from - 22) / ruling.pitchMm) * ruling.pitchMm;
    for (let y = first; y < heightMm - 8; y += ruling.pitchMm) across(y, null);
    if (ruling.marginMm !== null) margin.push(strip(ruling.marginMm, inset, ruling.marginMm, heightMm - inset, 0.3));
  } else if (ruling.kind === 'midline' || ruling.kind === 'own-sheet') {
    for (let y = from; y < heightMm - 15; y += ruling.pitchMm) {
      across(y, null);
      across(y - ruling.bodyMm, ruling.dashMm ?? 2);
      across(y - 2 * ruling.bodyMm, null);
    }
  } else if (ruling.kind === 'squares') {
    const side = ruling.sideMm;
    for (let y = from - Math.floor((from - inset) / side) * side; y < heightMm - inset; y += side) across(y, null);
    for (let x = inset + 3.7; x < widthMm - inset; x += side)
      lines.chains.push(strip(x, inset, x, heightMm - inset, thick));
  }
  for (const [chains, color] of [
    [lines.chains, RULING],
    [margin, MARGIN],
  ] as const) {
    context.fillStyle = color;
    context.beginPath();
    for (const chain of chains) trace(context, view, chain);
    context.fill('nonzero');
  }
}

/** Corner marks of our own sheets: black squares, the top left one with a white square in it. */
function drawCornerMarks(context: SKRSContext2D, spec: PageSpec, view: View): void {
  const { widthMm, heightMm } = PAPERS[spec.paper];
  const { sideMm, holeMm, insetMm } = CORNER_MARK;
  const square = (x: number, y: number, side: number, color: string): void => {
    context.fillStyle = color;
    context.beginPath();
    trace(context, view, strip(x - side / 2, y, x + side / 2, y, side));
    context.fill();
  };
  for (const x of [insetMm, widthMm - insetMm])
    for (const y of [insetMm, heightMm - insetMm]) square(x, y, sideMm, '#1a1a1a');
  square(insetMm, insetMm, holeMm, '#f4f2ea');
}

/** Pencil skips on the tooth of the paper: single pixels lose part of their darkness. */
function addGrain(context: SKRSContext2D, width: number, height: number, seed: number): void {
  const image = context.getImageData(0, 0, width, height);
  const random = seededRandom(seed);
  for (let i = 3; i < image.data.length; i += 4) {
    const alpha = image.data[i] as number;
    if (alpha > 0) image.data[i] = alpha * (1 - 0.4 * random.next() ** 2);
  }
  context.putImageData(image, 0, 0);
}

/** Gray of an ink that is so much darker than the paper. */
function grayOf(contrast: number): string {
  const level = Math.round(242 * (1 - contrast));
  return `rgb(${level} ${level} ${level})`;
}

/** Writing of the other side shining through, turned left to right, and the holes of a binder. */
function drawSheetOfPerson(context: SKRSContext2D, layer: Canvas, spec: PageSpec, view: View): void {
  const { showThrough, holes } = spec.people!;
  if (showThrough > 0) {
    context.save();
    context.globalAlpha = showThrough;
    context.translate(view.width, 0.37 * spec.writing.pitchMm * pxPerMm(spec, view));
    context.scale(-1, 1);
    context.drawImage(layer, 0, 0);
    context.restore();
  }
  if (!holes) return;
  const { heightMm } = PAPERS[spec.paper];
  context.fillStyle = '#3b3a38';
  for (const y of [-108, 0, 108]) {
    const [x0, y0] = view.toPicture(10, heightMm / 2 + y);
    context.beginPath();
    context.arc(x0, y0, 3 * pxPerMm(spec, view), 0, 2 * Math.PI);
    context.fill();
  }
}

/** Draws the sheet as the camera sees it, without any loss yet; RGBA, row by row. */
export function drawPage(spec: PageSpec, ink: PageInk, view: View): Uint8ClampedArray {
  const canvas = createCanvas(view.width, view.height);
  const context = canvas.getContext('2d');
  context.fillStyle = spec.picture.tilt ? (spec.picture.table ?? '#4a3a2e') : '#f4f2ea';
  context.fillRect(0, 0, view.width, view.height);
  if (spec.picture.tilt) {
    context.fillStyle = '#f4f2ea';
    context.beginPath();
    trace(
      context,
      view,
      Float64Array.from([
        0,
        0,
        PAPERS[spec.paper].widthMm,
        0,
        PAPERS[spec.paper].widthMm,
        PAPERS[spec.paper].heightMm,
        0,
        PAPERS[spec.paper].heightMm,
      ]),
    );
    context.fill();
  }
  drawRulings(context, spec, view);
  if (spec.ruling.kind === 'own-sheet') drawCornerMarks(context, spec, view);
  const layer = createCanvas(view.width, view.height);
  const pen = layer.getContext('2d');
  pen.fillStyle = spec.people?.contrast ? grayOf(spec.people.contrast) : INKS[spec.ink];
  pen.beginPath();
  for (const ring of ink.rings) trace(pen, view, ring);
  pen.fill('nonzero');
  pen.beginPath();
  for (const chain of ink.strokes)
    for (let i = 0; i + 3 < chain.length; i += 2)
      trace(
        pen,
        view,
        capsule(chain[i] as number, chain[i + 1] as number, chain[i + 2] as number, chain[i + 3] as number, ink.penMm),
      );
  pen.fill('nonzero');
  pen.beginPath();
  for (const chain of ink.scribbles)
    for (let i = 0; i + 3 < chain.length; i += 2)
      trace(pen, view, capsule(chain[i]!, chain[i + 1]!, chain[i + 2]!, chain[i + 3]!, ink.scribbleMm));
  pen.fill('nonzero');
  pen.globalCompositeOperation = 'destination-out';
  pen.beginPath();
  for (const eraser of ink.erasers) trace(pen, view, eraser);
  pen.fill('nonzero');
  if (spec.ink === 'pencil') addGrain(pen, view.width, view.height, spec.seed + 1);
  if (spec.people) drawSheetOfPerson(context, layer, spec, view);
  context.drawImage(layer, 0, 0);
  return context.getImageData(0, 0, view.width, view.height).data;
}

/** Pixels for one mm, averaged over the sheet: the square root of the area ratio. */
export function pxPerMm(spec: PageSpec, view: View): number {
  const { widthMm, heightMm } = PAPERS[spec.paper];
  const corners = cornersOf(spec, view);
  let twice = 0;
  for (let i = 0; i < 4; i += 1) {
    const [x0, y0] = corners[i] as [number, number];
    const [x1, y1] = corners[(i + 1) % 4] as [number, number];
    twice += x0 * y1 - x1 * y0;
  }
  return Math.sqrt(Math.abs(twice) / 2 / (widthMm * heightMm));
}
