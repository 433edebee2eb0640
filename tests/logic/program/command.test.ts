import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { programCommand } from '../../../electron/commands/program.ts';
import { client, rules } from './support.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'findings-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function run(data: unknown) {
  const path = join(folder, 'findings.json');
  await writeFile(path, typeof data === 'string' ? data : JSON.stringify(data));
  return programCommand([path, '--json']);
}

test('answers exactly the fields of the command', async () => {
  const answer = await run(client({ tone: 1 }, { diagnoses: ['stroke'] }));
  expect(answer.exit).toBe(0);
  const json = answer.json as Record<string, unknown> & { lines: Record<string, unknown>[]; vetoed: object[] };
  expect(Object.keys(json)).toEqual(['ruleVersion', 'stopped', 'tier', 'lines', 'vetoed', 'page']);
  expect(Object.keys(json.lines[0]!)).toEqual([
    'item',
    'kind',
    'tier',
    'text',
    'dose',
    'minutes',
    'rule',
    'findings',
    'source',
    'cautions',
    'because',
  ]);
  expect(Object.keys(json.vetoed[0]!)).toEqual(['item', 'rule', 'because']);
});

test('the smallest file that the command page allows is enough', async () => {
  const answer = await run({
    version: 1,
    hand: 'right',
    findings: [],
    redFlags: [],
    cautions: [],
    diagnoses: [],
    measures: [],
    confusions: [],
  });
  expect(answer).toMatchObject({ exit: 0, json: { stopped: false, tier: 0 } });
});

test('prints every code it knows', async () => {
  const answer = await programCommand(['--list-codes', '--json']);
  const json = answer.json as {
    findings: { code: string }[];
    cautions: object[];
    redFlags: object[];
    measures: object[];
  };
  expect(json.findings.map((each) => each.code)).toEqual(rules.vocabulary.findings.map((each) => each.code));
  expect(json.redFlags).toHaveLength(rules.redFlags.length);
  expect(answer.text).toContain('tremor-end-point');
});

test('a detail may stand in the code', async () => {
  const input = client();
  const findings = [
    ...input.findings.filter((each) => each.code !== 'tremor'),
    { code: 'tremor-end-point', grade: 1, side: 'right' },
  ];
  const answer = await run({ ...input, findings });
  const items = (answer.json as { lines: { item: string }[] }).lines.map((line) => line.item);
  expect(items).toContain('dot-to-dot');
});

test.each([
  ['an unknown finding', { version: 1, findings: [{ code: 'ghost', grade: 1 }] }, /finding "ghost"/],
  ['an unknown red flag', { version: 1, findings: [], redFlags: ['ghost'] }, /red flag "ghost"/],
  ['an unknown caution', { version: 1, findings: [], cautions: ['ghost'] }, /caution "ghost"/],
  ['an unknown diagnosis', { version: 1, findings: [], diagnoses: ['ghost'] }, /diagnosis "ghost"/],
  [
    'an unknown measure',
    { version: 1, findings: [], measures: [{ code: 'ghost', value: 1, unit: 'mm' }] },
    /measure "ghost"/,
  ],
  [
    'a measure in another unit',
    { version: 1, findings: [], measures: [{ code: 'x-height', value: 1, unit: 'inch' }] },
    /understood in mm/,
  ],
  ['a grade that is none', { version: 1, findings: [{ code: 'pain', grade: 4 }] }, /entry 1/],
  ['another version', { version: 2, findings: [] }, /version 2/],
  ['no version', { findings: [] }, /version/],
  ['an unknown field', { version: 1, findings: [], notes: 'x' }, /notes/],
  ['a list', [], /one JSON object/],
  ['no JSON', '{', /not JSON/],
])('%s is refused in one sentence', async (_what, data, says) => {
  const answer = await run(data);
  expect(answer.exit).toBe(2);
  expect(answer.error).toMatch(says);
  expect(answer.error).not.toContain('\n');
  expect(answer.json).toBeUndefined();
});

test('wrong use is refused', async () => {
  for (const argv of [[], ['a', 'b'], ['--ghost'], ['--list-codes', 'a'], [join(folder, 'none.json')]]) {
    expect((await programCommand(argv)).exit, argv.join(' ')).toBe(2);
  }
});
