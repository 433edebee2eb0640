import { type AppStatus } from './contract/app.ts';
import type { ShellEvent } from './contract/index.ts';
import type { ShellPort } from './shell-port.ts';

export interface ServiceOptions {
  /** The therapist's caseload folder; the demo lies in a folder `demo` inside it. */
  folder: string;
  port: ShellPort;
  shell: AppStatus['shell'];
  version: string;
  /** The folder that holds package.json and dist/. */
  appRoot?: string;
  now: () => Date;
  /** log2 of scrypt's N for new passphrases; lower only in tests. */
  workFactor?: number;
  emit: (event: ShellEvent) => void;
  /** Where the second sealed note of the trail lies, outside the caseload's folder; null: nowhere. */
  state?: string | null;
  /** Folder of the built demo caseload, or null where it is not shipped. */
  demoSource: string | null;
}
