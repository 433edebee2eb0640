import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Debian's Python, which sees Debian's OpenCV; a Python on the PATH may be another one. */
const PYTHON = '/usr/bin/python3';

/** Why the independent counters are not at hand, or null when they are. */
export function missingReference(): string | null {
  try {
    execFileSync(PYTHON, ['-c', 'import cv2, numpy, skimage.measure'], { stdio: 'ignore' });
    return null;
  } catch {
    return 'OpenCV and scikit-image are not installed (Debian: apt install python3-opencv python3-skimage)';
  }
}

/** Runs one of our Python references and reads its JSON; `script` is relative to this folder. */
export function runReference(script: string, args: readonly string[]): unknown {
  const file = fileURLToPath(new URL(script, import.meta.url));
  const text = execFileSync(PYTHON, [file, ...args], { encoding: 'utf8', maxBuffer: 1 << 28 });
  return text.trim() === '' ? null : JSON.parse(text);
}
