/** Core dumps of a crash would hold client data and the key in plain text. */
import { writeFileSync } from 'node:fs';

/**
 * Linux: tells the kernel to leave all memory out of a dump of this process and of those it starts (core(5),
 * "Controlling which mappings are written to the core dump"); it holds for dumps to files and to a dump collector.
 * Elsewhere, and where the kernel does not take it, the system's own settings decide.
 */
export function leaveMemoryOutOfDumps(platform: string = process.platform): void {
  if (platform !== 'linux') return;
  try {
    writeFileSync('/proc/self/coredump_filter', '0');
  } catch {
    // A kernel without core dumps.
  }
}
