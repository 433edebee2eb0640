/** Vitest's results as a tally. */
import type { Reporter, SerializedError, TestCase, TestModule } from 'vitest/node';
import { emptyTally, firstLine, writeTally } from './tally.ts';

export default class UnitTally implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly SerializedError[]): void {
    const tally = emptyTally();
    for (const module of modules) {
      for (const test of module.children.allTests()) this.#add(tally, module, test);
      for (const error of module.errors()) tally.failed.push(`${module.relativeModuleId}: ${firstLine(error.message)}`);
    }
    for (const error of errors) tally.failed.push(`outside any test: ${firstLine(error.message)}`);
    writeTally('unit', tally);
  }

  #add(tally: ReturnType<typeof emptyTally>, module: TestModule, test: TestCase): void {
    const name = `${module.relativeModuleId} › ${test.fullName}`;
    const result = test.result();
    if (result.state === 'passed') tally.passed++;
    else if (result.state === 'failed') tally.failed.push(`${name}: ${firstLine(result.errors[0]?.message)}`);
    else {
      const note = result.state === 'skipped' ? result.note : undefined;
      tally.skipped.push({ name, reason: note ?? 'no reason given' });
    }
  }
}
