/**
 * What a shell must offer to the rest of Fairhand. Electron answers with its dialogs, the browser shell with the
 * browser's own pickers. Nothing here puts a client's data into a temporary folder.
 */

import type { KeyStore } from './key-store.ts';

/** Paper sizes of the printed pages (A4: ISO 216, 210 x 297 mm; Letter: 8.5 x 11 in). */
export type PageSize = 'A4' | 'Letter';

/** A file that the therapist picked. The path stays in the shell; the window only ever holds the token. */
export interface OpenedFile {
  /** Random name for this choice, good until it is read. */
  token: string;
  /** The file's own name without its folder, to show on the screen. */
  name: string;
  /** Reads the whole file. Rejects when it is gone or larger than the cap. */
  read(): Promise<Uint8Array>;
}

export interface OpenOptions {
  /** Title of the dialog, in plain words. */
  title: string;
  /** File endings without the dot, e.g. ['png', 'jpg']. Empty: any file. */
  endings: readonly string[];
  /** Largest file that is read, in bytes. */
  maxBytes: number;
}

export interface SaveOptions {
  /** Suggested file name; it must name no client. */
  suggestedName: string;
  bytes: Uint8Array;
  mime: string;
}

/** Result of a save: where it went is the shell's business, the file's own name may be shown. */
export interface Saved {
  saved: boolean;
  name: string | null;
}

interface PrintOptions {
  pageSize: PageSize;
}

export interface ShellPort {
  /** Lets the therapist pick one file to read. Null when the dialog was cancelled. */
  chooseOpen(options: OpenOptions): Promise<OpenedFile | null>;
  /**
   * Lets the therapist pick a place and writes the bytes there. `saved: false` when the dialog was cancelled.
   * Rejects when the place cannot be written.
   */
  chooseSave(options: SaveOptions): Promise<Saved>;
  /** The page as it stands in the window, through its print style sheet, as PDF bytes. */
  printPdf(options: PrintOptions): Promise<Uint8Array>;
  /** Opens the system's print dialog for the page as it stands in the window. */
  printPaper(): Promise<void>;
  /** Grants the camera for the next picture only. */
  allowCameraOnce(): Promise<void>;
  /** The operating system's key store; null where the shell cannot reach one (the browser). */
  keyStore: KeyStore | null;
  /** Closes the window; the caseload is closed afterwards by whoever opened it. */
  close(): void;
}
