/** Deletes a caseload with all that Fairhand keeps beside it; what is not Fairhand's own stays. */
import { readdir, rm } from 'node:fs/promises';
import path from 'node:path';

/** What a caseload can consist of, with what a kill may leave half of: a file being replaced, a backup being read back. */
const PARTS = [
  /^caseload\.(db(-wal|-shm|\..*)?|(key|key-copy|tries|system-key)\.json|seal|lock|laptop|place)(\.(\d+\.)?part)?$/,
  /^checking-\d+\.part(-wal|-shm)?$/,
  /^(backups|copies|set-aside|exports)$/,
  /^second-place\.json(\.\d+\.part)?$/,
];

/** The caseload must be closed. */
export async function removeCaseload(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    if (PARTS.some((part) => part.test(name))) await rm(path.join(folder, name), { recursive: true, force: true });
  }
}
