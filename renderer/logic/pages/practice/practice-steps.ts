import { type CheckLabels } from './check-forms.ts';
import { type LetterStyleCode } from './letter-styles.ts';
import { type SheetName, writingArea } from './sheet-sizes.ts';
import { rowShape } from './practice-rows.ts';
import { type RulingCode, rulings, withoutModels } from './ruling-drawings.ts';

/** What a practice page is to be. Lengths in mm. */
export interface PracticeRequest {
  sheet: SheetName;
  ruling: RulingCode;
  letters: LetterStyleCode;
  /** Model texts, each written once above the lines for it; longer ones are broken. */
  models: string[];
  /** Lines to write in one bout; null fills the sheet. */
  linesPerBout: number | null;
  bouts: number;
  /** Printed where a bout ends. */
  restText: string;
  /** Printed where the dose ends and room is left on the sheet: the lines below it are another day's. '' = none are. */
  nextTimeText: string;
  /** Bold lines for low vision. */
  bold: boolean;
  /** A heavy line where each row starts, for a client who misses one side. */
  startLine: 'none' | 'left' | 'right';
  /** On each row: where a short line stops, or dots where it starts and ends. */
  marks: 'none' | 'stop' | 'dots';
  /** Drawings by word: each model stands beside its picture, as many as fit. */
  pictures: Readonly<Record<string, string>> | null;
  /** Height of model letters without reach; null takes the paper's own. */
  xHeightMm: number | null;
  title: string;
  instruction: string;
  date: string;
  clientCode: string;
  /** Lines of the program that the sheet is for; none = there is no program. */
  lineIds: readonly string[];
  /** Frames of models that were made: kept with the page, so that none comes again too soon. Absent = models not made. */
  frames?: string[];
  /** Words printed on practice checks; English where absent. */
  checkLabels?: CheckLabels;
}

type Step = { kind: 'model'; text: string } | { kind: 'write' | 'rest' | 'next-time' | 'gap' };

/** How many rows of a paper fit one sheet. */
export function rowsPerSheet(sheet: SheetName, ruling: RulingCode): number {
  // A hair is added because 237 / 7.9 must give 30 in floating point too.
  return Math.floor(writingArea(sheet).height / rowShape(rulings[ruling]).height + 1e-9);
}

/** Model rows with their lines to write on, bout after bout. `models` holds each model text as its broken rows. */
export function plan(request: PracticeRequest, models: string[][]): Step[] {
  const room = rowsPerSheet(request.sheet, request.ruling);
  if (withoutModels.has(rulings[request.ruling].kind) && rulings[request.ruling].kind !== 'signature')
    return spread([], room);
  if (request.linesPerBout === null) {
    // Filling a sheet, models take at most half of it.
    const shown: string[][] = [];
    let rows = 0;
    for (const model of models) {
      if (shown.length > 0 && rows + model.length > room / 2) break;
      shown.push(model);
      rows += model.length;
    }
    return spread(shown, Math.max(0, room - rows));
  }
  const lines = request.linesPerBout;
  let next = 0;
  // A bout goes on where the one before ended: no text stands twice while there is another. Its texts take no more
  // rows than are written, so that each can be copied whole.
  const bout = (): Step[] => {
    const shown: string[][] = [];
    let rows = 0;
    while (shown.length < Math.min(models.length, Math.max(1, lines))) {
      const model = models[next % models.length]!;
      if (shown.length > 0 && rows + model.length > lines) break;
      shown.push(model);
      rows += model.length;
      next += 1;
    }
    return spread(shown, Math.max(lines, rows));
  };
  const bouts = Array.from({ length: request.bouts }, (_, i): Step[] =>
    i === 0 ? bout() : [{ kind: 'rest' }, ...bout()],
  );
  const dose = withoutSpare(together(bouts.flat(), room), room);
  // Squares cover their sheet anyway.
  return rulings[request.ruling].kind === 'squares' || request.nextTimeText === '' ? dose : filled(dose, bout, room);
}

/** A model at the foot of a sheet goes over to the next one, where not as many rows as its own are left to write on. */
function together(steps: readonly Step[], room: number): Step[] {
  const out: Step[] = [];
  for (const step of steps) {
    const end = out.length;
    if (end % room === 0 && (step.kind === 'write' || step.kind === 'model')) {
      let below = end;
      while (out[below - 1]?.kind === 'write') below--;
      let start = below;
      while (out[start - 1]?.kind === 'model') start--;
      const torn = step.kind === 'write' ? end - below < below - start : end === below && start < end;
      const carried = torn && end - start < room - 1 ? out.splice(start) : [];
      out.push(...carried.map((): Step => ({ kind: 'gap' })), ...carried);
    }
    out.push(step);
  }
  return out;
}

/** Rows that alone would take a sheet more are left out, as long as the last text has a row for each of its own. */
function withoutSpare(steps: Step[], room: number): Step[] {
  const over = steps.length % room;
  const written = steps.length - 1 - steps.findLastIndex(({ kind }) => kind !== 'write');
  const before = steps.slice(0, steps.length - written);
  const shown = before.length - 1 - before.findLastIndex(({ kind }) => kind !== 'model');
  return steps.length > room && shown > 1 && over <= written - shown ? steps.slice(0, steps.length - over) : steps;
}

/** Fills what the dose leaves of its last sheet with lines for another day, where that is more than a line or two. */
function filled(dose: Step[], bout: () => Step[], room: number): Step[] {
  const left = (room - (dose.length % room)) % room;
  if (left < 4) return dose;
  const again: Step[] = [];
  while (again.length < left) again.push(...bout());
  const more = again.slice(0, left - 1);
  // A model with no line under it is no use.
  while (more.at(-1)?.kind === 'model') more.pop();
  return [...dose, { kind: 'next-time' }, ...more];
}

/** Shares `lines` writing rows among the models by the rows they take, earlier models first. */
function spread(models: string[][], lines: number): Step[] {
  const write = (count: number) => Array.from({ length: count }, (): Step => ({ kind: 'write' }));
  if (models.length === 0) return write(lines);
  const total = models.reduce((sum, rows) => sum + rows.length, 0);
  let before = 0;
  return models.flatMap((rows) => {
    const from = Math.ceil((lines * before) / total);
    before += rows.length;
    const upTo = Math.ceil((lines * before) / total);
    return [...rows.map((text): Step => ({ kind: 'model', text })), ...write(upTo - from)];
  });
}
