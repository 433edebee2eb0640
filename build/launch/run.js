/** Runs other programs. No shell is involved, so nothing needs quoting. */
import { spawn } from 'node:child_process';

/**
 * Runs a program to its end and keeps what it said.
 * @returns {Promise<{code: number, output: string}>} code is 124 when the time was up, 127 when it could not start
 */
export function quietly(program, args, { timeout = 0, env = process.env, cwd } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, { env, cwd, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    let late = false;
    const timer = timeout
      ? setTimeout(() => {
          late = true;
          child.kill('SIGKILL');
        }, timeout)
      : null;
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (part) => (output += part));
    child.on('error', (error) => resolve({ code: 127, output: String(error.message) }));
    child.on('close', (code) => {
      if (timer) clearTimeout(timer);
      resolve({ code: late ? 124 : (code ?? 1), output });
    });
  });
}

/** Runs a program in the foreground, with our own input and output. Answers its exit code. */
export function openly(program, args, { env = process.env, cwd } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, { env, cwd, stdio: 'inherit' });
    const pass = (signal) => () => child.kill(signal);
    const handlers = ['SIGINT', 'SIGTERM', 'SIGHUP'].map((signal) => [signal, pass(signal)]);
    for (const [signal, handler] of handlers) process.on(signal, handler);
    child.on('error', () => resolve(127));
    child.on('close', (code, signal) => {
      for (const [name, handler] of handlers) process.off(name, handler);
      resolve(code ?? (signal ? 1 : 0));
    });
  });
}

/** The npm that started us, run by the same Node: works alike on every system and for every version. */
export function npm(args) {
  const cli = process.env.npm_execpath;
  return cli && cli.endsWith('.js') ? [process.execPath, [cli, ...args]] : ['npm', args];
}
