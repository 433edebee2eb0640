import { checkForm, type CheckLabels } from './check-forms.ts';
import type { Language } from '../../texts/languages.ts';
import { breakLines, fontSizeFor } from './letter-styles.ts';
import { type SheetName, writingArea } from './sheet-sizes.ts';
import {
  type DrawnDot,
  type DrawnLine,
  type DrawnPicture,
  type DrawnText,
  dotRow,
  leaningLines,
  line,
  rowDots,
  rowLines,
  rowShape,
  signatureRow,
  stopMark,
} from './practice-rows.ts';
import { breakIntoCells, gridLines, lettersInCells } from './letter-cells.ts';
import { texts as english } from '../../texts/en.ts';
import { type Ruling, type RulingCode, rulings, withoutModels } from './ruling-drawings.ts';
import { rowsPerSheet, plan } from './practice-steps.ts';
import type { PracticeRequest } from './practice-steps.ts';

const englishCheck: CheckLabels = english.practice.check;

/** One sheet, ready to draw: the same numbers on the screen, on paper and in the record. */
export interface PracticeSheet {
  type: 'practice';
  /** English where absent. */
  language?: Language;
  sheet: SheetName;
  ruling: RulingCode;
  bold: boolean;
  title: string;
  instruction: string;
  formId: string;
  date: string;
  clientCode: string;
  /** Absent where nothing waits: the program it is for is not co-signed. */
  state?: string;
  page: number;
  pages: number;
  lines: DrawnLine[];
  texts: DrawnText[];
  /** Not on pages that were issued before there were any. */
  dots?: DrawnDot[];
  pictures?: DrawnPicture[];
  /** Lines of the program that it is for; absent on pages that were kept before lines were named. */
  lineIds?: readonly string[];
  /** Model lines of a page that was made for one day, and their frames; on its first sheet only. */
  written?: string[];
  frames?: string[];
  /** What the code at the foot holds; not on pages that were issued before there was one. */
  code?: string;
}

/**
 * Lays a practice request out, one model for each printed sheet (at most 12). Deterministic.
 * The model letters' x-height is `xHeightMm` exactly, by the font's own ratio (letter-styles.ts).
 */
export function practiceSheets(request: PracticeRequest): PracticeSheet[] {
  if (request.pictures) return pictureSheets(request, request.pictures);
  if (rulings[request.ruling].kind === 'check') return checkSheets(request);
  const ruling = rulings[request.ruling];
  const area = writingArea(request.sheet);
  const shape = rowShape(ruling);
  const inCells = isInCells(ruling);
  const size = modelSize(request);
  const indent = indentOf(request);
  const noModels = withoutModels.has(ruling.kind);
  const models = noModels ? [] : request.models.filter((text) => text.trim() !== '').map(rowsOfText(request));
  const steps = plan(request, models);
  const perSheet = rowsPerSheet(request.sheet, request.ruling);
  const pages = Math.min(12, Math.max(1, Math.ceil(steps.length / perSheet)));

  return Array.from({ length: pages }, (_, page) => {
    const lines: DrawnLine[] = ruling.kind === 'squares' ? gridLines(ruling, area) : [];
    if (ruling.kind === 'lean') lines.push(...leaningLines(area, ruling));
    const texts: DrawnText[] = [];
    const dots: DrawnDot[] = [];
    steps.slice(page * perSheet, (page + 1) * perSheet).forEach((step, row) => {
      const top = area.y + row * shape.height;
      const y = top + shape.baseline;
      if (step.kind === 'gap') return;
      if (step.kind === 'rest' || step.kind === 'next-time') {
        const text = step.kind === 'rest' ? request.restText : request.nextTimeText;
        texts.push({ text, x: area.x, y, size: 4.2, style: 'page-bold', grey: 0.1, anchor: 'start' });
        return;
      }
      lines.push(...rowLines(ruling, area, top));
      if (ruling.kind === 'dots') dots.push(...dotRow(area, top, ruling));
      if (step.kind === 'write' && !inCells && !noModels) {
        if (request.marks === 'stop') lines.push(stopMark(area, top, shape));
        if (request.marks === 'dots') dots.push(...rowDots(area, y));
      }
      if (ruling.kind === 'signature') {
        const boxes = signatureRow(area, top, ruling.sizeMm, (request.checkLabels ?? englishCheck).mark);
        lines.push(...boxes.lines);
        texts.push(...boxes.texts);
      }
      if (step.kind === 'model') {
        if (inCells) texts.push(...lettersInCells(step.text, ruling, area, y, size, request.letters));
        else
          texts.push({
            text: step.text,
            x: area.x + indent,
            y,
            size,
            style: request.letters,
            grey: 0.15,
            anchor: 'start',
          });
      }
    });
    if (request.startLine !== 'none') {
      const x = request.startLine === 'left' ? area.x : area.x + area.width;
      lines.push(line('start', x, area.y, x, area.y + area.height));
    }
    const made = request.frames && page === 0 ? { written: request.models, frames: request.frames } : {};
    return { ...headOf(request), page: page + 1, pages, lines, texts, dots, ...made };
  });
}

const isInCells = ({ kind }: Ruling): boolean => kind === 'squares' || kind === 'boxes';
const indentOf = ({ startLine }: PracticeRequest): number => (startLine === 'left' ? 4 : 1);
const modelSize = ({ letters, xHeightMm, ruling }: PracticeRequest): number =>
  fontSizeFor(letters, xHeightMm ?? rulings[ruling].xHeightMm);

/** Rows that a model text of this request takes. */
export function rowsOfText(request: PracticeRequest): (text: string) => string[] {
  const ruling = rulings[request.ruling];
  const { width } = writingArea(request.sheet);
  if (isInCells(ruling)) return (text) => breakIntoCells(text, Math.floor(width / ruling.sizeMm + 1e-9));
  return (text) => breakLines(text, request.letters, modelSize(request), width - indentOf(request) - 4);
}

const headOf = ({ sheet, ruling, bold, title, instruction, date, clientCode, lineIds }: PracticeRequest) => ({
  type: 'practice' as const,
  sheet,
  ruling,
  bold,
  title,
  instruction,
  formId: ruling.toUpperCase(),
  date,
  clientCode,
  lineIds,
});

/** Checks to fill in, one for each model; without models as many empty ones as fit a sheet. */
function checkSheets(request: PracticeRequest): PracticeSheet[] {
  const area = writingArea(request.sheet);
  const { sizeMm } = rulings[request.ruling];
  const perSheet = rowsPerSheet(request.sheet, request.ruling);
  const models = request.models.length > 0 ? request.models : Array.from({ length: perSheet }, () => '');
  const pages = Math.min(12, Math.ceil(models.length / perSheet));
  const row = rowShape(rulings[request.ruling]).height;
  return Array.from({ length: pages }, (_, page) => {
    const forms = models
      .slice(page * perSheet, (page + 1) * perSheet)
      .map((model, i) => checkForm(area, area.y + i * row, sizeMm, model, request.checkLabels ?? englishCheck));
    const made = request.frames && page === 0 ? { written: request.models, frames: request.frames } : {};
    return {
      ...headOf(request),
      page: page + 1,
      pages,
      lines: forms.flatMap((form) => form.lines),
      texts: forms.flatMap((form) => form.texts),
      ...made,
    };
  });
}

/** Each word beside its picture, with one row for it and one to write on. */
function pictureSheets(request: PracticeRequest, drawings: Readonly<Record<string, string>>): PracticeSheet[] {
  const ruling = rulings[request.ruling];
  const area = writingArea(request.sheet);
  const shape = rowShape(ruling);
  const picture = { width: 40, height: 30, gap: 8 };
  const right = { ...area, x: area.x + picture.width + picture.gap, width: area.width - picture.width - picture.gap };
  const block = Math.max(2 * shape.height, picture.height + 6);
  const perSheet = Math.floor(area.height / block + 1e-9);
  const size = fontSizeFor(request.letters, request.xHeightMm ?? ruling.xHeightMm);
  const words = request.models.filter((word) => Object.hasOwn(drawings, word));
  const pages = Math.max(1, Math.ceil(words.length / perSheet));
  return Array.from({ length: pages }, (_, page) => {
    const lines: DrawnLine[] = [];
    const texts: DrawnText[] = [];
    const pictures: DrawnPicture[] = [];
    words.slice(page * perSheet, (page + 1) * perSheet).forEach((text, i) => {
      const top = area.y + i * block;
      pictures.push({ name: drawings[text] ?? '', x: area.x, y: top, width: picture.width });
      lines.push(...rowLines(ruling, right, top), ...rowLines(ruling, right, top + shape.height));
      texts.push({
        text,
        x: right.x + 1,
        y: top + shape.baseline,
        size,
        style: request.letters,
        grey: 0.15,
        anchor: 'start',
      });
    });
    return { ...headOf(request), page: page + 1, pages, lines, texts, pictures };
  });
}
