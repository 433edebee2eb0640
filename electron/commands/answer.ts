/** What every command answers: electron/command-line.ts prints it and ends with its code. */
export interface CommandAnswer {
  /** 0 done; 2 wrong use or input that cannot be read; 1 a fault of ours. */
  exit: 0 | 1 | 2;
  /** The whole answer with `--json`. */
  json?: unknown;
  /** The answer for a person at a terminal. */
  text?: string;
  /** The command wrote its answer to standard output itself, line by line. */
  written?: boolean;
  /** One sentence for stderr. */
  error?: string;
}

export const wrongUse = (error: string): CommandAnswer => ({ exit: 2, error });

/** The option that Node's parser complains about, for a sentence of ours. */
export function optionProblem(error: unknown): string {
  const option = /'(-[^' ]*)/.exec(error instanceof Error ? error.message : '')?.[1];
  const code = (error as { code?: string } | null)?.code;
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') return `There is no option ${option ?? ''}.`;
  if (code === 'ERR_PARSE_ARGS_UNEXPECTED_POSITIONAL') return 'Every value needs its option before it.';
  return `The option ${option ?? ''} needs a value.`;
}
