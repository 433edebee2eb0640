/**
 * `npm run verdicts -- [CLIENTS] [SEED] [PART/PARTS]`: error rates of the model of change on simulated clients whose
 * truth is known; 1,500 clients a setting, on all cores. Exit 1 when a rate misses its bound by more than 2.6 standard
 * errors. 2/3 runs the second third of the settings, the same clients as in a whole run.
 */
import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { CHANGE_VERSION } from '../../renderer/change/index.ts';
import { keepsBound, settings, STANDARD_ERRORS, type Rate } from './verdicts/index.ts';

const clients = Number(process.argv[2] ?? 1500);
const seed = Number(process.argv[3] ?? 2025);
const [part, parts] = (process.argv[4] ?? '1/1').split('/').map(Number) as [number, number];
if (!Number.isInteger(clients) || clients < 20 || !Number.isInteger(seed)) {
  console.error('CLIENTS and SEED must be whole numbers, CLIENTS at least 20.');
  process.exit(2);
}
if (!Number.isInteger(parts) || !Number.isInteger(part) || part < 1 || part > parts) {
  console.error('PART/PARTS must be two whole numbers, as 2/3.');
  process.exit(2);
}
const chosen = settings.map((_, at) => at).filter((at) => at % parts === part - 1);

/** Hands the settings to one process after another, so that all end at about the same time. */
async function simulate(): Promise<Rate[]> {
  const results: Rate[][] = [];
  let next = 0;
  const worker = fileURLToPath(new URL('verdicts/worker.ts', import.meta.url));
  await Promise.all(
    Array.from({ length: availableParallelism() }, () => {
      const child = fork(worker, { execArgv: ['--no-warnings'] });
      return new Promise<void>((resolve, reject) => {
        child.on('message', (message: { at?: number; rates?: Rate[] }) => {
          if (message.at !== undefined) results[message.at] = message.rates!;
          if (next < chosen.length) child.send({ at: chosen[next++], clients, seed });
          else child.disconnect();
        });
        child.on('error', reject);
        child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`a process ended with ${code}`))));
      });
    }),
  );
  return results.flat();
}

const percent = (rate: number): string => (100 * rate).toFixed(1).padStart(5);

function line(rate: Rate): string {
  const { setting, what, side, bound } = rate;
  const held = side === 'told' ? '' : ` (at ${side} ${percent(bound).trim()})`;
  const sign = side === 'told' ? '      ' : keepsBound(rate) ? 'ok    ' : 'MISSED';
  return `${sign} ${percent(rate.rate)} % ${what}${held}: ${setting}`;
}

/** The worst of the many settings that share a bound. */
function worst(rates: readonly Rate[]): Rate[] {
  const groups = Map.groupBy(rates, ({ setting, what }) => {
    const [first, ...rest] = setting.split(', ');
    const spread = rest.find((part) => part.startsWith('SD ')) ?? '';
    return /^(unchanged|goal level|onset|decrement|stable|hand)/.test(first!)
      ? [first, rest[0]?.includes('pairs') ? rest[0] : '', spread, rest.at(-1) === 'no fall', what].join('|')
      : `${setting}|${what}`;
  });
  return [...groups.values()].map((group) =>
    group.reduce((a, b) => ((b.side === 'least' ? b.rate < a.rate : b.rate > a.rate) ? b : a)),
  );
}

const started = performance.now();
const rates = await simulate();
const missed = rates.filter((rate) => !keepsBound(rate));
console.log(`${CHANGE_VERSION}: ${chosen.length} settings, ${clients} clients each, seed ${seed}.`);
console.log('The worst setting of each kind:');
console.log(worst(rates).map(line).join('\n'));
const shown = new Set(worst(rates));
const others = missed.filter((rate) => !shown.has(rate));
if (others.length > 0) console.log(`Missed as well:\n${others.map(line).join('\n')}`);
const seconds = ((performance.now() - started) / 1000).toFixed(0);
console.log(
  `${rates.filter(({ side }) => side !== 'told').length} bounds, ${missed.length} missed by more than ` +
    `${STANDARD_ERRORS} standard errors (${seconds} s).`,
);
process.exitCode = missed.length > 0 ? 1 : 0;
