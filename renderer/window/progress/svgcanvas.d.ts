/** The part of svgcanvas that the progress chart uses; the package brings no types. */
declare module 'svgcanvas' {
  /** Stands for a canvas; what is drawn on its context becomes elements of `svg`. Sizes in px. */
  export class Element {
    constructor(options: { width: number; height: number });
    readonly svg: SVGSVGElement;
    getContext(type: '2d'): CanvasRenderingContext2D;
  }
}
