/**
 * Reads lines, filled boxes and text sizes from a PDF's own coordinates (pdf.js operator list), in mm from the page's
 * top left, y down. 1 PDF unit = 1/72 inch.
 */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

const mmPerUnit = 25.4 / 72;

interface PdfLine {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  widthMm: number;
  dashed: boolean;
}
interface PdfBox {
  x: number;
  y: number;
  width: number;
  height: number;
}
interface PdfText {
  text: string;
  x: number;
  /** Baseline. */
  y: number;
  sizeMm: number;
}
export interface PdfPage {
  widthMm: number;
  heightMm: number;
  lines: PdfLine[];
  boxes: PdfBox[];
  texts: PdfText[];
}

type Matrix = [number, number, number, number, number, number];

function multiply(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[2] * b[1],
    a[1] * b[0] + a[3] * b[1],
    a[0] * b[2] + a[2] * b[3],
    a[1] * b[2] + a[3] * b[3],
    a[0] * b[4] + a[2] * b[5] + a[4],
    a[1] * b[4] + a[3] * b[5] + a[5],
  ];
}

/** Points of a path as pdf.js hands it over: 0 move, 1 line, 2 curve (3 points), 3 quadratic (2 points), 4 close. */
function segmentsOf(data: ArrayLike<number>): { x1: number; y1: number; x2: number; y2: number }[] | null {
  const segments = [];
  let x = 0;
  let y = 0;
  let startX = 0;
  let startY = 0;
  for (let i = 0; i < data.length;) {
    const op = data[i++];
    if (op === 0) {
      x = startX = data[i++]!;
      y = startY = data[i++]!;
    } else if (op === 1) {
      const x2 = data[i++]!;
      const y2 = data[i++]!;
      segments.push({ x1: x, y1: y, x2, y2 });
      x = x2;
      y = y2;
    } else if (op === 4) {
      if (x !== startX || y !== startY) segments.push({ x1: x, y1: y, x2: startX, y2: startY });
      x = startX;
      y = startY;
    } else return null;
  }
  return segments;
}

export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await task.promise;
  const pages: PdfPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const [, , right = 0, top = 0] = page.view;
    const lines: PdfLine[] = [];
    const boxes: PdfBox[] = [];
    let state = { matrix: [1, 0, 0, 1, 0, 0] as Matrix, width: 1, dashed: false };
    const stack: (typeof state)[] = [];
    const list = await page.getOperatorList();
    const toMm = (x: number, y: number) => {
      const [a, b, c, d, e, f] = state.matrix;
      return { x: (a * x + c * y + e) * mmPerUnit, y: (top - (b * x + d * y + f)) * mmPerUnit };
    };
    list.fnArray.forEach((fn, i) => {
      const args = list.argsArray[i] as unknown[];
      if (fn === OPS.save) stack.push({ ...state });
      else if (fn === OPS.restore) state = stack.pop() ?? state;
      else if (fn === OPS.transform) state.matrix = multiply(state.matrix, args as unknown as Matrix);
      else if (fn === OPS.setLineWidth) state.width = args[0] as number;
      else if (fn === OPS.setGState) {
        for (const [key, value] of args[0] as [string, unknown][]) if (key === 'LW') state.width = value as number;
      } else if (fn === OPS.setDash) state.dashed = (args[0] as number[]).length > 0;
      else if (fn === OPS.constructPath) {
        const [paint, [data]] = args as [number, [ArrayLike<number> | null]];
        const segments = data ? segmentsOf(data) : null;
        if (!segments || segments.length === 0) return;
        const placed = segments.map((s) => ({ from: toMm(s.x1, s.y1), to: toMm(s.x2, s.y2) }));
        if (paint === OPS.stroke) {
          const scale = Math.hypot(state.matrix[0], state.matrix[1]) * mmPerUnit;
          for (const { from, to } of placed)
            lines.push({
              x1: from.x,
              y1: from.y,
              x2: to.x,
              y2: to.y,
              widthMm: state.width * scale,
              dashed: state.dashed,
            });
        } else if (paint === OPS.fill || paint === OPS.eoFill) {
          const xs = placed.flatMap((p) => [p.from.x, p.to.x]);
          const ys = placed.flatMap((p) => [p.from.y, p.to.y]);
          const x = Math.min(...xs);
          const y = Math.min(...ys);
          boxes.push({ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y });
        }
      }
    });
    const content = await page.getTextContent();
    const texts = content.items.flatMap((item): PdfText[] =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str,
              x: item.transform[4] * mmPerUnit,
              y: (top - item.transform[5]) * mmPerUnit,
              sizeMm: Math.hypot(item.transform[2], item.transform[3]) * mmPerUnit,
            },
          ]
        : [],
    );
    pages.push({ widthMm: right * mmPerUnit, heightMm: top * mmPerUnit, lines, boxes, texts });
  }
  await task.destroy();
  return pages;
}
