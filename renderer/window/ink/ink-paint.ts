import type { DrawnPoint } from './pen-capture.svelte.ts';

/** Colors of the sheet: paper stays light in every theme. */
const INK_COLOR = '#243a78';
const PEN_PX = 2;

/** A canvas as large as its element, sharp on every screen. */
export function fitCanvas(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const { width, height } = canvas.getBoundingClientRect();
  const ratio = window.devicePixelRatio;
  canvas.width = Math.round(width * ratio);
  canvas.height = Math.round(height * ratio);
  const context = canvas.getContext('2d')!;
  context.scale(ratio, ratio);
  context.lineCap = context.lineJoin = 'round';
  return context;
}

/** Draws new points on; only the drawing follows the pressure, what is kept stays as it came. */
export class InkPainter {
  private last: DrawnPoint | null = null;
  private readonly context: CanvasRenderingContext2D;
  private readonly left: number;
  private readonly top: number;

  constructor(canvas: HTMLCanvasElement) {
    this.context = fitCanvas(canvas);
    const { left, top } = canvas.getBoundingClientRect();
    this.left = left;
    this.top = top;
  }

  add(points: readonly DrawnPoint[]): void {
    const { context } = this;
    context.strokeStyle = INK_COLOR;
    for (const point of points) {
      const from = point.begins || !this.last ? point : this.last;
      context.lineWidth = PEN_PX * (0.6 + 0.8 * (point.pressure || 0.5));
      context.beginPath();
      context.moveTo(from.x - this.left, from.y - this.top);
      context.lineTo(point.x - this.left + 0.01, point.y - this.top);
      context.stroke();
      this.last = point;
    }
  }
}
