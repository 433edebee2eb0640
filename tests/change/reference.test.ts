/**
 * Worked cases of the model, computed by an independent prototype in Python (numpy, scipy), with the tolerances that
 * came with them; through the command, as a stranger would ask.
 */
import { Readable, Writable } from 'node:stream';
import { expect, test } from 'vitest';
import { changeCommand } from '../../electron/commands/change.ts';
import reference from './data/reference.json' with { type: 'json' };

const { tolerances } = reference;

/** How far a number may be off; everything else is exact. */
function toleranceOf(path: string, input: object): number {
  if ('slopes' in input) return tolerances.slopes;
  if ('smallest' in input) return tolerances.smallest;
  if (path === 'probability' || path.startsWith('chances.')) return tolerances.probability;
  if (path === 'before' || path === 'now' || path.startsWith('change.')) return tolerances.points;
  if (path === 'visitSd' || path === 'atLeastWords' || path === 'statistic') return tolerances[path];
  return 0;
}

/** Every leaf of both that is further apart than allowed. */
function differences(want: unknown, got: unknown, input: object, path = ''): string[] {
  if (want !== null && typeof want === 'object' && !Array.isArray(want)) {
    const other = (got ?? {}) as Record<string, unknown>;
    const keys = [...new Set([...Object.keys(want), ...Object.keys(other)])];
    return keys.flatMap((key) =>
      differences((want as Record<string, unknown>)[key], other[key], input, path ? `${path}.${key}` : key),
    );
  }
  const near = typeof want === 'number' && typeof got === 'number';
  const fits = near
    ? Math.abs(want - got) <= toleranceOf(path, input) + 1e-9
    : JSON.stringify(want) === JSON.stringify(got);
  return fits ? [] : [`${path}: ${JSON.stringify(got)} for ${JSON.stringify(want)}`];
}

test('every worked case comes out within its tolerance', async () => {
  const lines = reference.cases.map(({ input }) => JSON.stringify(input)).join('\n');
  let said = '';
  const output = new Writable({
    write(chunk, _encoding, done) {
      said += String(chunk);
      done();
    },
  });
  expect(await changeCommand([], { input: Readable.from([lines]), output })).toEqual({ exit: 0, written: true });
  const answers = said
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as object);
  expect(answers).toHaveLength(reference.cases.length);
  const wrong = reference.cases.flatMap(({ name, input, expect: want }, i) =>
    differences(want, answers[i], input).map((each) => `${name}: ${each}`),
  );
  expect(wrong).toEqual([]);
});
