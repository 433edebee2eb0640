/** Measures one gray page and prints how many bytes the process grew at its peak. Started by bench-memory.ts only. */
import { readFileSync, writeFileSync } from 'node:fs';
import { startSecondThread } from '../../electron/files/measure/second-thread.ts';
import { measurePage } from '../../renderer/measure/measure-page.ts';

/** Largest resident size since the last reset, bytes; null where the system does not tell (not Linux). */
function peakSinceReset(): number | null {
  try {
    const line = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'));
    return line ? Number(line[1]) * 1024 : null;
  } catch {
    return null;
  }
}

/** Starting a process takes more memory for a moment than it keeps: that peak must not be counted (proc(5), clear_refs). */
function resetPeak(): boolean {
  try {
    writeFileSync('/proc/self/clear_refs', '5');
    return true;
  } catch {
    return false;
  }
}

const [file = '', width = '', height = ''] = process.argv.slice(2);
const options = { scale: { pxPerMm: 300 / 25.4, source: 'dpi' as const } };
const size = { width: Number(width), height: Number(height) };
const data = new Uint8Array(readFileSync(file));
// A strip of the page warms the code without taking the memory of the page.
const strip = Math.min(600, size.height);
measurePage({ width: size.width, height: strip, data: data.slice(0, size.width * strip) }, options);
(globalThis as { gc?: () => void }).gc?.();
const before = process.memoryUsage.rss();
const reset = resetPeak();
let seen = before;
// The second thread counts too, from its start on.
const second = startSecondThread();
while (second && !second.isReady) await new Promise((resolve) => setTimeout(resolve, 10));
const look = (): void => {
  seen = Math.max(seen, process.memoryUsage.rss());
};
measurePage({ ...size, data }, options, look, second);
const peak = reset ? (peakSinceReset() ?? seen) : seen;
process.stdout.write(String(Math.max(0, Math.max(peak, seen) - before)));
