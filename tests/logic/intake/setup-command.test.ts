import { expect, test } from 'vitest';
import { setupCommand } from '../../../electron/commands/setup.ts';

const run = (line: string) => setupCommand(line.split(' ').filter(Boolean));

test('answers with the fields of the commands page', async () => {
  const answer = await run(
    '--popliteal 388 --elbow 232 --shoe 25 --table 735 --table-thickness 25 --thigh 168 --hand left --purpose writing --json',
  );
  expect(answer.exit).toBe(0);
  expect(answer.json).toMatchObject({
    seatMm: { min: 393, max: 413 },
    tableMm: 695,
    footrestMm: 40,
    raiseTableMm: 0,
    thighGatePasses: true,
    paperTiltDeg: { min: 25, max: 45 },
  });
  expect(Object.keys(answer.json as object)).toEqual([
    'seatMm',
    'tableMm',
    'footrestMm',
    'raiseTableMm',
    'thighGatePasses',
    'paperTiltDeg',
    'notes',
  ]);
  expect(answer.text).toContain('Footrest');
});

test.each([
  ['', 'Measure the knee height first'],
  ['--popliteal 388', 'Measure the elbow rest height first'],
  ['--popliteal 38.8 --elbow 232', 'Was it read in centimeters?'],
  ['--popliteal 388 --elbow -5', 'cannot be right'],
  ['--popliteal tall --elbow 232', 'must be a number of millimeters'],
  ['--popliteal 388 --elbow 232 --hand both', '--hand must be left or right'],
  ['--popliteal 388 --elbow 232 --purpose play', '--purpose must be'],
  ['--popliteal 388 --elbow 232 --chair 3', 'A chair height of 3 mm cannot be right'],
  ['--popliteal 388 --elbow 232 --chair-fixed', '--chair-fixed needs --chair'],
  ['--popliteal 388 --elbow 232 --stool 3', 'There is no option --stool'],
  ['--popliteal', 'needs a value'],
  ['388', 'Every value needs its option'],
  ['--popliteal 388 --popliteal 390 --elbow 232', 'was given 2 times'],
])('"%s" is wrong use, said in a sentence', async (line, sentence) => {
  const answer = await run(line);
  expect(answer.exit).toBe(2);
  expect(answer.error).toContain(sentence);
});

// Worked figure g3 of the specification, then by hand: a fixed chair of 480 is 30 above Smax 450.
test('the chair there is: its change, or a footrest where it cannot be set', async () => {
  const figure = '--popliteal 430 --shoe 20 --elbow 210 --table 740 --purpose support --json';
  expect((await run(figure)).json).toMatchObject({ footrestMm: 0, seatMm: { min: 430, max: 450 } });
  const raised = (await run(`${figure} --chair 420`)).json as { notes: string[] };
  expect(raised.notes[0]).toContain('Seat: 450 mm');
  expect(raised.notes[0]).toContain('The chair is 420 mm: raise it by 30 mm.');
  expect((await run(`${figure} --chair 480 --chair-fixed`)).json).toMatchObject({ footrestMm: 30 });
});
