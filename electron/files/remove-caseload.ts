/** Deletes a caseload with all that Fairhand keeps beside it; what is not Fairhand's own stays. */
import { readdir, rm } from 'node:fs/promises';
import path from 'node:path';

/** What a caseload can consist of. */
const PARTS =
  /^(caseload\.(db(-wal|-shm|\..*)?|key\.json|key-copy\.json|tries\.json|seal|lock|laptop|place)|backups|copies|set-aside|exports|second-place\.json)$/;

/** The caseload must be closed. */
export async function removeCaseload(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    if (PARTS.test(name)) await rm(path.join(folder, name), { recursive: true, force: true });
  }
}
