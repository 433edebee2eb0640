/** What a shell carries requests to: the caseload behind the contract, the same for both shells. */
import type { HandedFile } from './files/handed-file.ts';
import type { WindowSource } from './window-files.ts';

export interface Backend extends WindowSource {
  /** Offers a file that the system handed over; the window asks whether it is taken in. */
  offer(file: HandedFile): void;
  /** Closes the caseload. Safe to call twice. */
  close(): Promise<void>;
}
