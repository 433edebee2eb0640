import type {
  MeasureOptions,
  PageResult,
  PrintedOn,
  PrintedPage,
  SeenField,
  SpiralSeconds,
  SpiralSheetResult,
} from '../../../renderer/measure/index.ts';
import type { DecodeLimits } from '../decode/decode.ts';
import type { PictureFormat } from '../decode/picture-header.ts';

/** The scale that a file tells of itself: the last resort; null where it tells none. */
export const scaleOfFile = (fileDpi: number | null) =>
  fileDpi === null ? null : { pxPerMm: fileDpi / 25.4, source: 'file-dpi' as const };

/** What the page worker is asked for. */
export interface PageJob {
  /** `look`: format and size only; `measure`: everything; `show`: a picture that the window can display; `spiral`: our sheet of spirals; `printed`: a log or practice page of ours. */
  kind: 'look' | 'measure' | 'show' | 'spiral' | 'printed';
  bytes: Uint8Array;
  options: MeasureOptions;
  limits?: Partial<DecodeLimits>;
  /** Page of a PDF, from 1. */
  pdfPage?: number;
  /** How long each spiral of the sheet took. */
  seconds?: SpiralSeconds;
  /** What is printed on practice pages, by their codes. */
  printedOn?: Readonly<Record<string, PrintedOn>>;
  /** The bytes are bare gray values of this size, not a file. */
  rawSize?: { width: number; height: number };
  /** Measure it without the corrections too, from the same decoding. */
  uncorrectedToo?: boolean;
  /** Hand the gray page back, to draw on it. */
  wantGray?: boolean;
  /** Do not fall back on the resolution written in the file. */
  ignoreFileDpi?: boolean;
}

export interface PageLook {
  format: PictureFormat;
  /** Resolution of the file where it states a believable one. */
  fileDpi: number | null;
  /** Upright size, px. */
  width: number;
  height: number;
}

export interface MeasuredPage extends PageLook {
  result: PageResult;
  /** Without the corrections, where it was asked for. */
  uncorrected: PageResult | null;
  gray: Uint8Array | null;
}

export interface ShownPage {
  mime: string;
  bytes: Uint8Array;
}

export interface SpiralPage extends PageLook {
  result: SpiralSheetResult;
  /** A picture for the window, where the file itself is none that it can show. */
  view: ShownPage | null;
}

/** A field of a log with its picture where it is doubtful: a PNG. */
export type LogField = Omit<SeenField, 'part'> & { picture: Uint8Array | null };

export interface ReturnedPage extends PageLook {
  result:
    | Exclude<PrintedPage, { kind: 'log' }>
    | (Omit<Extract<PrintedPage, { kind: 'log' }>, 'fields'> & { fields: LogField[] });
  view: ShownPage | null;
}

export type PageAnswer =
  | ({ kind: 'look' } & PageLook)
  | ({ kind: 'measure' } & MeasuredPage)
  | ({ kind: 'show' } & ShownPage)
  | ({ kind: 'spiral' } & SpiralPage)
  | ({ kind: 'printed' } & ReturnedPage);
