/** Progress for whoever started Fairhand: on stderr, so that a command's own answer stays alone on stdout. */

/** One line of news. */
export function say(line) {
  process.stderr.write(`${line}\n`);
}

/**
 * Says what is going on, then every five seconds how long it has taken, until the work is done.
 * Long work must not look like a hang.
 */
export async function during(line, work) {
  say(line);
  const began = Date.now();
  const timer = setInterval(() => say(`  … ${Math.round((Date.now() - began) / 1000)} s`), 5000);
  try {
    return await work();
  } finally {
    clearInterval(timer);
  }
}
