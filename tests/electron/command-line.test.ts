/** The commands as a stranger calls them: exit codes, one value on stdout, one sentence on stderr. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { optionProblem } from '../../electron/commands/answer.ts';
import { readPassphrase } from '../../electron/commands/passphrase.ts';
import { commands, printed, run } from '../../electron/command-line.ts';
import { takeLock } from '../../electron/files/lock.ts';
import { createCaseload } from '../../db/index.ts';

const program = fileURLToPath(new URL('../../electron/command-line.ts', import.meta.url));

interface Outcome {
  code: number | null;
  out: string;
  err: string;
}

function fairhand(args: string[], input = '', env: NodeJS.ProcessEnv = {}): Promise<Outcome> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--no-warnings', program, ...args], { env: { ...process.env, ...env } });
    let out = '';
    let err = '';
    child.stdout.on('data', (part) => (out += part));
    child.stderr.on('data', (part) => (err += part));
    child.on('close', (code) => resolve({ code, out, err }));
    child.stdin.end(input);
  });
}

/** One line that ends like a sentence and shows nothing of the inside. */
function expectSentence(text: string): void {
  expect(text.trim().split('\n')).toHaveLength(1);
  expect(text).toMatch(/[.)\]]\s*$/);
  expect(text).not.toMatch(/\bat .+:\d+|node:internal|Error:|undefined/);
}

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'fairhand-commands-'));
  writeFileSync(path.join(folder, 'note.txt'), 'not a picture');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('wrong use is exit 2 with one sentence and nothing on stdout', () => {
  test.each([
    [[]],
    [['dance']],
    [['constructor']],
    [['readback', '--text', 'a']],
    [['readback', '--text', 'a', '--read', 'a', '--nonsense']],
    [['setup', '--popliteal', 'tall']],
    [['program']],
    [['program', '/nowhere/findings.json']],
    [['measure', '/nowhere/page.png', '--dpi', '300']],
    [['measure', 'PAGE', '--dpi', '0']],
    [['measure', 'PAGE', '--dpi', '2401']],
    [['measure', 'PAGE', '--dpi', '300', '--nonsense']],
    [['measure', 'TEXT', '--dpi', '300']],
    [['summary', '--client', 'C-1']],
    [['summary', '--out', 'x.pdf']],
    [['summary', '--client', 'C-1', '--out', '/nowhere/deep/x.pdf']],
    [['demo']],
    [['demo', '--out']],
  ])('%j', async (words) => {
    const args = words.map((word) => (word === 'TEXT' || word === 'PAGE' ? path.join(folder, 'note.txt') : word));
    const answer = await run([...args, '--json']);
    expect(answer.exit).toBe(2);
    expect(printed(answer, true)).toBe('');
    expectSentence(answer.error ?? '');
  });

  test('as a program', async () => {
    const { code, out, err } = await fairhand(['setup', '--popliteal', 'tall', '--json']);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expectSentence(err);
  });
});

test('with --json stdout is exactly one JSON value, and stderr is silent', async () => {
  const { code, out, err } = await fairhand(['readback', '--text', 'the cat sat', '--read', 'the cot sat', '--json']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(JSON.parse(out)).toMatchObject({
    wordsRight: 2,
    wordsIntended: 3,
    confusions: [{ intended: 'a', read: 'o' }],
  });
  expect(out.endsWith('}\n')).toBe(true);
});

test('without --json the answer is readable text', async () => {
  const { code, out } = await fairhand(['readback', '--text', 'the cat', '--read', 'the cat']);
  expect(code).toBe(0);
  expect(out).toMatch(/^Words right +2 of 2/);
});

test('a text may begin with a dash', async () => {
  const { out } = await fairhand(['readback', '--text', '-x', '--read', '--text', '--json']);
  expect(JSON.parse(out)).toMatchObject({ wordsIntended: 1 });
});

test('help names every command', async () => {
  const { code, out } = await fairhand(['--help']);
  expect(code).toBe(0);
  for (const name of Object.keys(commands)) expect(out).toContain(`  ${name} `);
});

test('a fault of ours is exit 1 and says nothing of the inside', async () => {
  const broken = { about: 'broken', load: () => Promise.reject(new Error('/home/secret/path')) };
  Object.assign(commands, { broken });
  const answer = await run(['broken']);
  delete (commands as Record<string, unknown>)['broken'];
  expect(answer.exit).toBe(1);
  expectSentence(answer.error ?? '');
  expect(answer.error).not.toContain('secret');
  expect(printed(answer, true)).toBe('');
});

test('the parser’s problems become sentences', () => {
  expect(
    optionProblem(Object.assign(new Error("Unknown option '--x'."), { code: 'ERR_PARSE_ARGS_UNKNOWN_OPTION' })),
  ).toBe('There is no option --x.');
});

describe('the passphrase', () => {
  const stdin = (text: string) => Readable.from([Buffer.from(text)]);

  test('comes from the environment, else from the first line of standard input', async () => {
    expect(await readPassphrase({ FAIRHAND_PASSPHRASE: 'from env' }, stdin('from input\n'))).toBe('from env');
    expect(await readPassphrase({}, stdin('from input\r\nmore'))).toBe('from input');
    expect(await readPassphrase({}, stdin(''))).toBeNull();
    expect(await readPassphrase({}, stdin('x'.repeat(401)))).toBeNull();
  });
});

describe('summary', () => {
  const passphrase = 'calm river blue lantern';
  let data: string;
  beforeAll(async () => {
    data = path.join(folder, 'caseload');
    const made = await createCaseload({ folder: data, passphrase, now: '2026-03-04T09:00:00.000Z' });
    if (!made.ok) throw new Error(made.code);
    made.caseload.close();
  });
  const summary = (given: { data?: string; env?: NodeJS.ProcessEnv } = {}) =>
    fairhand(
      ['summary', '--client', 'C-1', '--out', path.join(folder, 'summary.pdf'), '--data', given.data ?? data],
      '',
      given.env,
    );

  test('needs a caseload and a passphrase', async () => {
    const none = await summary({ data: path.join(folder, 'empty'), env: { FAIRHAND_PASSPHRASE: passphrase } });
    expect(none.code).toBe(2);
    expect(none.err).toMatch(/no caseload in this folder/);
    const silent = await summary({ env: { FAIRHAND_PASSPHRASE: '' } });
    expect(silent.code).toBe(2);
    expect(silent.err).toMatch(/passphrase is missing/i);
  });

  test('refuses a caseload that is open in a window', async () => {
    const lock = takeLock(data);
    const { code, err } = await summary({ env: { FAIRHAND_PASSPHRASE: passphrase } });
    lock?.release();
    expect(code).toBe(2);
    expectSentence(err);
    expect(err).toMatch(/open in a window/);
  });

  test('takes no passphrase as an argument', async () => {
    const { code } = await fairhand(['summary', '--client', 'C-1', '--out', 'x.pdf', '--passphrase', passphrase]);
    expect(code).toBe(2);
  });
});
