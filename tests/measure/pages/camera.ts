import { PAPERS } from './layout.ts';
import type { PageSpec } from './types.ts';

/** Where a point of the sheet (mm) falls in the picture (px), and how large the picture is. */
export interface View {
  width: number;
  height: number;
  toPicture(xMm: number, yMm: number): [number, number];
}

/** Flatbed: the turned sheet under a window of its own size. Photo: the sheet seen from a tilted camera, table around it. */
export function viewOf(spec: PageSpec): View {
  const { widthMm, heightMm } = PAPERS[spec.paper];
  const { picture } = spec;
  const unit = picture.dpi / 25.4;
  const turn = (picture.rotationDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const { tilt } = picture;
  const around = tilt ? tilt.marginMm : 0;
  const width = Math.round((widthMm + 2 * around) * unit);
  const height = Math.round((heightMm + 2 * around) * unit);
  const radians = Math.PI / 180;
  const [cp, sp] = tilt ? [Math.cos(tilt.pitchDeg * radians), Math.sin(tilt.pitchDeg * radians)] : [1, 0];
  const [cy, sy] = tilt ? [Math.cos(tilt.yawDeg * radians), Math.sin(tilt.yawDeg * radians)] : [1, 0];
  return {
    width,
    height,
    toPicture(xMm, yMm) {
      const dx = xMm - widthMm / 2;
      const dy = yMm - heightMm / 2;
      const x = dx * cos + dy * sin;
      const y = -dx * sin + dy * cos;
      if (!tilt) return [width / 2 + x * unit, height / 2 + y * unit];
      const y1 = y * cp;
      const z1 = y * sp;
      const x2 = x * cy + z1 * sy;
      const z2 = -x * sy + z1 * cy;
      const near = tilt.distanceMm / (tilt.distanceMm + z2);
      return [width / 2 + x2 * near * unit, height / 2 + y1 * near * unit];
    },
  };
}

/** The sheet's corners in the picture: top left, top right, bottom right, bottom left. */
export function cornersOf(spec: PageSpec, view: View): [number, number][] {
  const { widthMm, heightMm } = PAPERS[spec.paper];
  return [
    view.toPicture(0, 0),
    view.toPicture(widthMm, 0),
    view.toPicture(widthMm, heightMm),
    view.toPicture(0, heightMm),
  ];
}
