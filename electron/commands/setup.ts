/** `fairhand setup`: the set-up calculator without a window. Lengths in mm. */
import { parseArgs } from 'node:util';
import { shippedSetup } from '../../db/rules/screen/items-schema.ts';
import type { CommandAnswer } from './answer.ts';
import { setUp } from '../../renderer/logic/setup/set-up.ts';
import type { SetupInput, SetupResult } from '../../renderer/logic/setup/setup-types.ts';
import { toldEnglish } from '../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../renderer/logic/texts/screens/telling.ts';

const lengths = {
  popliteal: 'popliteal',
  elbow: 'elbow',
  shoe: 'shoe',
  table: 'table',
  'table-thickness': 'tableThickness',
  thigh: 'thigh',
  chair: 'chair',
} as const;
type LengthOption = keyof typeof lengths;

const purposes = ['writing', 'support', 'shoulder-pain'] as const;
const usage =
  'Use: fairhand setup --popliteal MM --elbow MM [--shoe MM] [--table MM] [--table-thickness MM] [--thigh MM] ' +
  '[--hand left|right] [--purpose writing|support|shoulder-pain] [--chair MM] [--chair-fixed] [--json]';

/** Tenths of a millimeter: finer than a tape, free of floating-point tails. */
const tenth = (value: number): number => Math.round(value * 10) / 10;
const wrongUse = (error: string): CommandAnswer => ({ exit: 2, error });

/** `--name value` and `--name=value`; the parser's own messages name the option. */
function read(argv: readonly string[]): { values: Record<string, string | boolean | undefined> } | { error: string } {
  const text = { type: 'string' } as const;
  const names = [...Object.keys(lengths), 'hand', 'purpose', 'data'];
  const options = {
    ...Object.fromEntries(names.map((name) => [name, text])),
    json: { type: 'boolean' } as const,
    'chair-fixed': { type: 'boolean' } as const,
  };
  // A negative number after an option reads as an option of its own: join them, so that it is refused as a length.
  const joined: string[] = [];
  for (const arg of argv) {
    if (/^-\d/.test(arg) && joined.at(-1)?.startsWith('--')) joined.push(`${joined.pop()}=${arg}`);
    else joined.push(arg);
  }
  for (const name of names) {
    const given = joined.filter((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`)).length;
    if (given > 1) return { error: `--${name} was given ${given} times. Give it once.` };
  }
  try {
    const { values } = parseArgs({ args: joined, options, strict: true, allowPositionals: false });
    return { values: values as Record<string, string | boolean | undefined> };
  } catch (error) {
    const code = (error as { code?: string }).code ?? '';
    const option = /'(-[^' ]*)/.exec((error as Error).message)?.[1];
    const said =
      code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION'
        ? `There is no option ${option ?? ''}.`
        : code === 'ERR_PARSE_ARGS_UNEXPECTED_POSITIONAL'
          ? 'Every value needs its option before it.'
          : `The option ${option ?? ''} needs a value.`;
    return { error: `${said} ${usage}` };
  }
}

/** As the command answers: seat and footrest in mm, `tableMm` the suitable table height nearest to the one there is. */
function answer(result: SetupResult): Record<string, unknown> {
  const { seat, table, footrest, raiseTable, thighGate, paperTilt, notes } = result;
  return {
    seatMm: { min: tenth(seat.min), max: tenth(seat.max) },
    tableMm: tenth(table),
    footrestMm: tenth(footrest),
    raiseTableMm: tenth(raiseTable),
    thighGatePasses: thighGate === null ? null : thighGate.passes,
    paperTiltDeg: paperTilt === null ? null : { min: paperTilt.min, max: paperTilt.max },
    notes,
  };
}

function inWords(result: SetupResult): string {
  const mm = (value: number): string => `${Math.round(value)} mm`;
  const gate = result.thighGate === null ? 'not measured' : result.thighGate.passes ? 'enough' : 'too little';
  return [
    `Seat           ${mm(result.set.seat)} above the floor (${mm(result.seat.min)} to ${mm(result.seat.max)} above what the feet stand on)`,
    `Table          ${mm(result.set.table)}`,
    `Footrest       ${result.footrest > 0 ? mm(result.footrest) : 'none'}`,
    `Raise table    ${result.raiseTable > 0 ? mm(result.raiseTable) : 'no'}`,
    `Thigh room     ${gate}`,
    ...result.notes.map((note) => `- ${note}`),
  ].join('\n');
}

/** Runs `setup` with the arguments after the command's name. A missing or impossible measure is wrong use (exit 2). */
export async function setupCommand(argv: readonly string[]): Promise<CommandAnswer> {
  const given = read(argv);
  if ('error' in given) return wrongUse(given.error);

  const input: SetupInput = {
    popliteal: null,
    elbow: null,
    shoe: null,
    table: null,
    tableAdjustable: false,
    tableThickness: null,
    thigh: null,
    chair: null,
    chairAdjustable: given.values['chair-fixed'] !== true,
    slantRise: null,
    slantLength: null,
    hand: null,
    purpose: 'writing',
  };
  for (const option of Object.keys(lengths) as LengthOption[]) {
    const text = given.values[option];
    if (typeof text !== 'string') continue;
    if (!/^[+-]?\d+([.,]\d+)?$/.test(text.trim()))
      return wrongUse(`--${option} must be a number of millimeters, not "${text.slice(0, 40)}".`);
    input[lengths[option]] = Number(text.trim().replace(',', '.'));
  }
  if (given.values['chair-fixed'] === true && input.chair === null)
    return wrongUse('--chair-fixed needs --chair: the height of the seat while the client sits on it.');
  const { hand, purpose } = given.values;
  if (hand === 'left' || hand === 'right') input.hand = hand;
  else if (hand !== undefined) return wrongUse('--hand must be left or right.');
  const known = purposes.find((each) => each === purpose);
  if (known) input.purpose = known;
  else if (purpose !== undefined) return wrongUse('--purpose must be writing, support or shoulder-pain.');

  const outcome = setUp(input, shippedSetup, toldEnglish.seat, englishTelling.decimals);
  if (!outcome.ok) return wrongUse(outcome.sentence);
  return { exit: 0, json: answer(outcome.result), text: inWords(outcome.result) };
}
