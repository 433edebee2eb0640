/** What a shell carries requests to: the caseload behind the contract, the same for both shells. */
import type { BlobSource } from './window-files.ts';

export interface Backend extends BlobSource {
  /** Answers one request of the window: JSON in, the contract's envelope as JSON out. Never rejects. */
  call(json: string): Promise<string>;
  /** Closes the caseload. Safe to call twice. */
  close(): Promise<void>;
}
