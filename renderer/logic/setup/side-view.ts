/** Geometry of the set-up drawing, side view, millimeters: x from the back of the chair, y above the floor. */
import type { SetupTable } from '../../../db/types/items.ts';
import { slantOf } from './slanted-surface.ts';
import type { SetupInput, SetupResult } from './setup-types.ts';

type Point = readonly [number, number];

export interface SideView {
  width: number;
  height: number;
  /** Filled boxes: seat, table top, footrest, blocks under the table. */
  blocks: { name: string; x: number; y: number; width: number; height: number }[];
  furniture: { name: string; points: Point[] }[];
  thigh: Point[];
  /** As measured, so that the room under the table shows. */
  thighThickness: number;
  leg: Point[];
  foot: Point[];
  trunk: Point[];
  neck: Point[];
  arm: Point[];
  head: Point;
  pen: readonly [Point, Point];
  /** Slanted surface, when it was measured. */
  paper: readonly [Point, Point] | null;
  /** Height of the resting elbow, from the arm to the table: what the table is measured against. */
  elbow: readonly [Point, Point] | null;
  /** A sheet of A4 from above, turned by the middle of what is advised, degrees clockwise. */
  sheet: { middle: Point; turn: number } | null;
  measures: { name: string; x: number; from: number; to: number; labelAt?: number }[];
}

// Proportions of the schematic person; only heights that were measured carry meaning.
const hipX = 330;
const thighLength = 440;
const upperArm = 330;
const forearm = 330;
const seatThickness = 45;
const tableDepth = 620;

/** Where everything lies when the set-up is as advised. */
export function sideView(input: SetupInput, result: SetupResult, constants: SetupTable): SideView {
  const { seat, table } = result.set;
  const elbowHeight = seat + (input.elbow ?? 0);
  const thigh = input.thigh ?? 150;
  // What is too little to be asked for is not drawn either.
  const asked = (mm: number): number => (mm >= constants.leastChange.value ? mm : 0);
  const footOn = asked(result.footrest);
  const sole = input.shoe ?? constants.shoeDefault.value;
  const thickness = input.tableThickness ?? constants.tableThicknessDefault.value;
  const kneeX = hipX + thighLength;
  const thighMiddle = seat + thigh / 2;
  const shoulder: Point = [hipX + 10, elbowHeight + upperArm];
  const elbow: Point = [hipX + 50, elbowHeight + 20];
  const tableX = hipX + 120 + constants.bodyToTable.min;
  const hand: Point = [elbow[0] + forearm, table + 40];
  const head: Point = [hipX + 60, shoulder[1] + 230];
  const tableEnd = tableX + tableDepth;

  const slant = slantOf(input.slantRise, input.slantLength, constants);
  const length = input.slantLength ?? 0;
  const run = slant ? length * Math.cos((slant.angle * Math.PI) / 180) : 0;
  const paperX = tableX + 60;
  const paper: SideView['paper'] = slant
    ? [
        [paperX, table + 5],
        [paperX + run, table + 5 + (input.slantRise ?? 0)],
      ]
    : null;

  const tilt = result.paperTilt;
  const turned = tilt ? (tilt.min + tilt.max) / 2 : 0;
  const height = head[1] + 150;

  return {
    width: 1660,
    height,
    blocks: [
      { name: 'seat', x: hipX - 130, y: seat - seatThickness, width: 420, height: seatThickness },
      { name: 'table', x: tableX, y: table - thickness, width: tableDepth, height: thickness },
      ...(footOn > 0
        ? [{ name: 'footrest', x: kneeX - 80, y: 0, width: constants.footrestSize.depth.value, height: footOn }]
        : []),
      ...(asked(result.raiseTable) > 0
        ? [{ name: 'blocks', x: tableEnd - 80, y: 0, width: 90, height: result.raiseTable }]
        : []),
    ],
    furniture: [
      {
        name: 'back',
        points: [
          [hipX - 130, seat - 20],
          [hipX - 160, seat + 420],
        ],
      },
      {
        name: 'post',
        points: [
          [hipX + 80, seat - seatThickness],
          [hipX + 80, 40],
          [hipX - 100, 8],
          [hipX + 80, 40],
          [hipX + 260, 8],
        ],
      },
      {
        name: 'table-leg',
        points: [
          [tableEnd - 35, table - thickness],
          [tableEnd - 35, result.raiseTable],
        ],
      },
    ],
    thigh: [
      [hipX, thighMiddle],
      [kneeX, thighMiddle],
    ],
    thighThickness: thigh,
    leg: [
      [kneeX + 8, thighMiddle - 10],
      [kneeX + 8, footOn + sole + 60],
    ],
    foot: [
      [kneeX + 8, footOn + sole + 31],
      [kneeX + 150, footOn + sole + 31],
    ],
    trunk: [
      [hipX, thighMiddle + 20],
      [shoulder[0] - 10, shoulder[1] - 60],
    ],
    neck: [
      [shoulder[0], shoulder[1] - 20],
      [head[0] - 10, head[1] - 60],
    ],
    arm: [shoulder, elbow, hand],
    head,
    pen: [
      [hand[0] - 20, hand[1] + 90],
      [hand[0] + 40, table + 4],
    ],
    paper,
    elbow:
      input.elbow === null
        ? null
        : [
            [elbow[0] - 120, elbowHeight],
            [tableX + 200, elbowHeight],
          ],
    sheet: tilt
      ? {
          middle: [tableEnd - 60, height - 205],
          turn: tilt.direction === 'straight' ? 0 : tilt.direction === 'clockwise' ? turned : -turned,
        }
      : null,
    measures: [
      { name: 'Seat', x: 60, from: 0, to: seat, labelAt: seat / 2 },
      { name: 'Table', x: tableEnd + 60, from: 0, to: table },
      ...(footOn > 0 ? [{ name: 'Footrest', x: kneeX - 110, from: 0, to: footOn, labelAt: -58 }] : []),
    ],
  };
}
