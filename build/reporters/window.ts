/** Playwright's results as a tally. */
import { stripVTControlCharacters } from 'node:util';
import type { Reporter, Suite, TestCase, TestError } from '@playwright/test/reporter';
import { emptyTally, firstLine, writeTally } from './tally.ts';
import type { Tally } from './tally.ts';

const plain = (text: string | undefined): string => firstLine(stripVTControlCharacters(text ?? ''));

export default class WindowTally implements Reporter {
  readonly #name: string;
  #suite: Suite | null = null;
  #errors: TestError[] = [];

  constructor(options: { runner?: string } = {}) {
    this.#name = options.runner ?? 'window';
  }

  onBegin(_config: unknown, suite: Suite): void {
    this.#suite = suite;
  }

  onError(error: TestError): void {
    this.#errors.push(error);
  }

  onEnd(): void {
    const tally = emptyTally();
    for (const test of this.#suite?.allTests() ?? []) add(tally, test);
    for (const error of this.#errors) tally.failed.push(`outside any test: ${plain(error.message)}`);
    writeTally(this.#name, tally);
  }

  printsToStdio(): boolean {
    return false;
  }
}

function add(tally: Tally, test: TestCase): void {
  const name = test.titlePath().filter(Boolean).join(' › ');
  const outcome = test.outcome();
  if (outcome === 'expected') tally.passed++;
  else if (outcome === 'skipped') {
    const reason = test.annotations.find((note) => note.type === 'skip' || note.type === 'fixme')?.description;
    tally.skipped.push({
      name,
      reason: reason ?? test.results.at(-1)?.annotations[0]?.description ?? 'no reason given',
    });
  } else tally.failed.push(`${name}: ${plain(test.results.at(-1)?.error?.message)}`);
}
