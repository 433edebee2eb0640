import type { BoxMm, PointMm } from '../types.ts';

/**
 * How the page lies in the picture. `u` runs along the page, `v` down it, both in pixels from the page's top left
 * corner; `angle` (radians) is positive when the page lay turned counter-clockwise.
 */
export interface Frame {
  angle: number;
  cos: number;
  sin: number;
  /** Pixel of the page's top left corner. */
  originX: number;
  originY: number;
  pxPerMm: number;
}

/** A page of the picture's own size, turned about the picture's center. */
export function frameOf(width: number, height: number, pxPerMm: number, angle: number): Frame {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const [cx, cy] = [width / 2, height / 2];
  return { angle, cos, sin, originX: cx - cx * cos - cy * sin, originY: cy + cx * sin - cy * cos, pxPerMm };
}

export function uOf(frame: Frame, x: number, y: number): number {
  return (x - frame.originX) * frame.cos - (y - frame.originY) * frame.sin;
}

export function vOf(frame: Frame, x: number, y: number): number {
  return (x - frame.originX) * frame.sin + (y - frame.originY) * frame.cos;
}

export function xOf(frame: Frame, u: number, v: number): number {
  return frame.originX + u * frame.cos + v * frame.sin;
}

export function yOf(frame: Frame, u: number, v: number): number {
  return frame.originY - u * frame.sin + v * frame.cos;
}

export function pointMm(frame: Frame, u: number, v: number): PointMm {
  return { xMm: u / frame.pxPerMm, yMm: v / frame.pxPerMm };
}

export function boxMm(frame: Frame, u0: number, v0: number, u1: number, v1: number): BoxMm {
  const s = frame.pxPerMm;
  return { xMm: u0 / s, yMm: v0 / s, widthMm: (u1 - u0) / s, heightMm: (v1 - v0) / s };
}
