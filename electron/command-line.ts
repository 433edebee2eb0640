/**
 * `npm run -s fairhand -- COMMAND …`: the same parts without a window. stdout is the answer alone, one JSON value
 * with `--json`; everything else goes to stderr. Each command is loaded when it is called.
 */
import { fileURLToPath } from 'node:url';
import type { CommandAnswer } from './commands/answer.ts';
import { wrongUse } from './commands/answer.ts';

type Command = (argv: readonly string[]) => Promise<CommandAnswer>;

interface Row {
  /** One line of `--help`. */
  about: string;
  load: () => Promise<Command>;
}

export const commands: Readonly<Record<string, Row>> = {
  measure: {
    about: 'measure PAGE --dpi N [--text FILE] [--overlay OUT.png] [--gray --width W --height H]',
    load: async () => (await import('./files/measure/measure-command.ts')).measureCommand,
  },
  readback: {
    about: 'readback --text T --read R',
    load: async () => (await import('./commands/readback.ts')).readbackCommand,
  },
  setup: {
    about:
      'setup --popliteal MM --elbow MM [--shoe MM] [--table MM] [--table-thickness MM] [--thigh MM] [--hand left|right] [--purpose writing|support|shoulder-pain]',
    load: async () => (await import('./commands/setup.ts')).setupCommand,
  },
  program: {
    about: 'program FINDINGS.json | program --list-codes',
    load: async () => (await import('./commands/program.ts')).programCommand,
  },
  change: {
    about: 'change < QUESTIONS: has it changed? JSON lines in and out',
    load: async () => (await import('./commands/change.ts')).changeCommand,
  },
  ink: {
    about: 'ink FILE.inkml [--task writing|loops|line|spiral|hold] [--text FILE] [--page OUT.png]',
    load: async () => (await import('./commands/ink.ts')).inkCommand,
  },
  spiral: {
    about: 'spiral PAGE --dpi N [--seconds S]',
    load: async () => (await import('./files/measure/spiral-command.ts')).spiralCommand,
  },
  summary: {
    about: 'summary --client CODE --out FILE.pdf [--data DIR]',
    load: async () => (await import('./commands/summary.ts')).summaryCommand,
  },
  demo: {
    about: 'demo --out DIR',
    load: async () => (await import('./commands/demo.ts')).demoCommand,
  },
};

const help = () =>
  [
    'Fairhand without a window. Add --json for one JSON value on standard output.',
    ...Object.values(commands).map(({ about }) => `  ${about}`),
  ].join('\n');

/** Runs one command. Never throws: a fault of ours becomes exit 1 with one sentence. */
export async function run(argv: readonly string[]): Promise<CommandAnswer> {
  const [name, ...rest] = argv;
  if (name === '--help' || name === '-h' || name === 'help') return { exit: 0, text: help(), json: help() };
  if (name === undefined)
    return wrongUse(`No command was named. The commands are ${Object.keys(commands).join(', ')}.`);
  if (!Object.hasOwn(commands, name)) {
    return wrongUse(
      `There is no command ${JSON.stringify(name)}. The commands are ${Object.keys(commands).join(', ')}.`,
    );
  }
  try {
    const command = await commands[name]!.load();
    return await command(rest);
  } catch {
    return { exit: 1, error: `Something went wrong inside Fairhand while it ran ${name}. Nothing was changed.` };
  }
}

/** What goes to standard output: one JSON value, or readable text. */
export function printed(answer: CommandAnswer, json: boolean): string {
  if (answer.exit !== 0 || answer.written) return '';
  if (json) return `${JSON.stringify(answer.json ?? null)}\n`;
  return `${answer.text ?? JSON.stringify(answer.json ?? null, null, 2)}\n`;
}

/** Errors are one line each, whatever they were made from. */
const oneLine = (text: string): string => text.replaceAll(/\s*\n\s*/g, ' ');

async function main(argv: readonly string[]): Promise<void> {
  const answer = await run(argv);
  if (answer.error) process.stderr.write(`${oneLine(answer.error)}\n`);
  const text = printed(answer, argv.includes('--json'));
  // A pipe may take the answer in parts: end only when all of it is out.
  if (text) await new Promise((resolve) => process.stdout.write(text, resolve));
  process.exitCode = answer.exit;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main(process.argv.slice(2));
