/**
 * What a printed page is made of: plain data, shown and frozen as it is. Text pages are sections of blocks; practice
 * pages are drawings (practice.ts). `pt` is the size of running text.
 */
import type { PageKind } from '../../../../db/types/page.ts';
import type { Language } from '../../texts/languages.ts';
import type { SheetName } from '../practice/sheet-sizes.ts';
import type { PracticeSheet } from '../practice/practice.ts';

export interface PageStep {
  /** The program line that it prints; null = kept before lines were named, so it cannot be checked. */
  lineId: string | null;
  title: string;
  text: string;
  /** Minutes, days, paper: the line in bold. */
  dose: string;
  cautions: string[];
  /** Name of a line drawing, or null; mirrored for a left hand. */
  drawing: { name: string; mirrored: boolean } | null;
}

/** A picture of writing: part of a page at the size it was written, or scaled by `scale` (1 = true size). */
export interface WritingPicture {
  blob: string;
  caption: string;
  /** The part shown, in pixels of the upright picture. */
  crop: { x: number; y: number; width: number; height: number };
  imageWidth: number;
  imageHeight: number;
  /** Turns the picture upright; '' where it is. */
  transform: string;
  widthMm: number;
  heightMm: number;
  scale: number;
  /** Corners of what is shown inside the crop, "x,y x,y …" in pixels before the turn; absent: all of it. */
  outline?: string;
}

export interface SetupFigure {
  seatMm: number;
  tableMm: number;
  footrestMm: number;
  /** By how much the table has to be raised. */
  raiseTableMm: number;
  /** What to do with the chair there is; null or absent = not measured. */
  chair?: { nowMm: number; changeMm: number; cushion: boolean } | null;
  hand: 'right' | 'left' | null;
}

export type Block =
  | { kind: 'text'; text: string; strong?: boolean }
  | { kind: 'list'; items: string[] }
  | { kind: 'checks'; items: string[] }
  | { kind: 'steps'; items: PageStep[] }
  | { kind: 'facts'; rows: { label: string; value: string }[] }
  | { kind: 'stop'; title: string; items: string[]; call: string }
  /** `captionMm`: room for captions left of the pictures; without it they stand above. */
  | { kind: 'pictures'; pictures: WritingPicture[]; captionMm?: number }
  /** `inches`: for readers who think in them; the drawing then shows both. */
  | { kind: 'setup'; figure: SetupFigure; inches?: boolean; lines: string[] }
  | { kind: 'table'; head: string[]; widths: number[]; rows: string[][]; rowMm: number }
  | { kind: 'sign'; labels: string[] }
  | { kind: 'cut' }
  | { kind: 'small'; text: string };

export interface Section {
  /** Names the section for editing and fitting. */
  key: string;
  title: string;
  blocks: Block[];
  /** Stands at the right of the section before it; together they are never broken over sheets. */
  beside?: boolean;
}

/** A text page before it is broken into sheets. */
export interface Doc {
  sheet: SheetName;
  /** Language of the page's own words; English where not given. */
  language?: Language;
  /** Words on it that are English all the same, because the language has none for them. */
  english?: string[];
  pt: number;
  title: string;
  /** Under the title: name, date, next visit. */
  lead: { label: string; value: string }[];
  sections: Section[];
  /** At the foot of every sheet. */
  foot: string;
}

/** One printed side of a text page. */
export interface DocSheet extends Doc {
  type: 'doc';
  page: number;
  pages: number;
}

/** The sheet of two spirals, ready to draw. Lengths in mm. A test of the hand, not practice: it names no line of the program. */
export interface SpiralSheetModel {
  type: 'spiral';
  /** English where absent. */
  language?: Language;
  sheet: SheetName;
  title: string;
  hand: string;
  handNames: { right: string; left: string };
  seconds: string;
  /** The upper one has a spiral to trace. */
  places: { title: string; words: string[]; x: number; y: number; spiral: string | null }[];
  date: string;
  clientCode: string;
}

/** The log of circles to mark, ready to draw by `logLayout`. It names no line of the program. */
export interface LogSheetModel {
  type: 'log';
  /** English where absent. */
  language?: Language;
  sheet: SheetName;
  title: string;
  name: string;
  /** First and last day of its rows. */
  span: string;
  /** How it is marked, in rows. */
  intro: string[];
  /** One a column. */
  head: string[];
  /** One a row. */
  days: { name: string; date: string }[];
  few: boolean;
  done: string;
  felt: string[];
  /** Below the rows. */
  stop: string[];
  foot: string;
  /** What the code at the foot holds (measure/printed/page-code.ts). */
  code?: string;
}

export type SheetModel = DocSheet | PracticeSheet | SpiralSheetModel | LogSheetModel;

/** What is previewed, printed and frozen: all sheets of one page kind and what they rest on. */
export interface Packet {
  format: 'fairhand-page';
  formatVersion: 1;
  kind: PageKind;
  ruleVersion: string;
  sheets: SheetModel[];
  /** Ids of the facts that were read, so that a frozen page can be traced. */
  basis: string[];
  /** What the therapist should look at before printing; never printed. */
  warnings: string[];
  /** Short form of the trail's head when it was issued; on every sheet. Not on pages issued before there was one. */
  fingerprint?: string;
}
