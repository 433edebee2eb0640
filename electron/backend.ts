/** What a shell carries requests to: the caseload behind the contract, the same for both shells. */
import type { HandedFile } from './files/handed-file.ts';
import type { BlobSource } from './window-files.ts';

export interface Backend extends BlobSource {
  /** Answers one request of the window: JSON in, the contract's envelope as JSON out. Never rejects. */
  call(json: string): Promise<string>;
  /** Offers a file that the system handed over; the window asks whether it is taken in. */
  offer(file: HandedFile): void;
  /** Closes the caseload. Safe to call twice. */
  close(): Promise<void>;
}
