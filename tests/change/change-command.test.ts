import { PassThrough, Readable, Writable } from 'node:stream';
import { expect, test } from 'vitest';
import { changeCommand } from '../../electron/commands/change.ts';
import { weekly } from './support.ts';

async function run(...lines: string[]) {
  let said = '';
  const output = new Writable({
    write(chunk, _encoding, done) {
      said += String(chunk);
      done();
    },
  });
  const answer = await changeCommand([], { input: Readable.from([lines.join('\n')]), output });
  return { ...answer, lines: said.split('\n').filter(Boolean) };
}
const good = JSON.stringify({ samples: weekly([6, 7, 20, 21], 2) });

test('answers exactly the fields of the command, in order', async () => {
  const { lines } = await run(good);
  expect(Object.keys(JSON.parse(lines[0]!) as object)).toEqual(
    (
      'verdict probability change before now leaning atLeastWords perWords visitSd compared leftOut differs notes ' +
      'moreSamples sinceDay better loss chances'
    ).split(' '),
  );
});

test('answers one line for each, in the same order, blank lines aside', async () => {
  const { lines, exit } = await run(
    '{"bouts":[[{"right":8,"words":8},{"right":3,"words":8}]]}',
    '',
    '{"slopes":[-0.01,-0.02]}',
    '{"smallest":{"p":0.6,"words":24,"n1":3,"n2":2,"sd":0.45}}\r',
    '{"samples":[]}',
  );
  expect(exit).toBe(0);
  expect(lines.map((line) => Object.keys(JSON.parse(line) as object)[0])).toEqual([
    'onsetLine',
    'mid',
    'mdc95',
    'verdict',
  ]);
});

test('an answer is there before the next question comes', async () => {
  const input = new PassThrough();
  const output = new PassThrough();
  const running = changeCommand([], { input, output });
  input.write(`${good}\n`);
  const first = await new Promise((resolve) => output.once('data', resolve));
  expect(String(first)).toContain('"verdict":"up"');
  input.end();
  await running;
});

test('input that cannot be read ends with 2, names its line, and earlier answers stay', async () => {
  const bad: [line: string, says: RegExp][] = [
    ['not json', /Line 2 .*not JSON/],
    ['[]', /not a JSON object/],
    ['null', /not a JSON object/],
    ['{}', /none of/],
    ['{"samples":null}', /samples/],
    ['{"samples":[{"words":24,"right":3,"task":"copy"}]}', /“samples 1 day”/],
    ['{"samples":[{"day":"2025-02-30","words":24,"right":3,"task":"copy"}]}', /not a date/],
    ['{"samples":[{"day":"2025-02-03","words":"24","right":3,"task":"copy"}]}', /“samples 1 words”/],
    ['{"samples":[{"day":"2025-02-03","words":24,"right":1e999,"task":"copy"}]}', /“samples 1 right”/],
    ['{"samples":[],"pairs":[{"first":[1],"second":[2,3]}]}', /pairs 1 first/],
    ['{"bouts":[]}', /bouts” is empty/],
    ['{"bouts":[[]]}', /“bouts 1” is empty/],
    ['{"bouts":[[{"right":0,"words":0}]]}', /“bouts 1 1 words” must be more than 0/],
    ['{"bouts":[[{"right":9,"words":8}]]}', /more words right/],
    ['{"slopes":[]}', /slopes” is empty/],
    ['{"slopes":[1,null]}', /“slopes 2”/],
    ['{"smallest":{"p":0.5,"words":0,"n1":1,"n2":1,"sd":0.4}}', /smallest words/],
  ];
  for (const [line, says] of bad) {
    const answer = await run(good, line, good);
    expect(answer, line).toMatchObject({ exit: 2, error: expect.stringMatching(says) as string });
    expect(answer.error).toMatch(/^Line 2 /);
    expect(answer.lines, line).toHaveLength(1);
  }
});

test('an unknown option is refused', async () => {
  expect(await changeCommand(['--fast'])).toMatchObject({ exit: 2 });
});
