import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shippedSetup } from '../../../db/rules/screen/items-schema.ts';
import { sideView } from '../../../renderer/logic/setup/side-view.ts';
import { setUp } from '../../../renderer/logic/setup/set-up.ts';
import type { SetupInput, SetupResult } from '../../../renderer/logic/setup/setup-types.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';

const least = shippedSetup.leastChange.value;
const resultOf = (input: SetupInput): SetupResult => {
  const outcome = setUp(input, shippedSetup, toldEnglish.seat, englishTelling.decimals);
  if (!outcome.ok) throw new Error(outcome.sentence);
  return outcome.result;
};
const body: SetupInput = {
  popliteal: 430,
  elbow: 210,
  shoe: 20,
  table: 740,
  tableAdjustable: false,
  tableThickness: 25,
  thigh: null,
  slantRise: null,
  slantLength: null,
  hand: 'right',
  purpose: 'support',
};

// Worked figure g3 of the specification: P 430, sole 20, E 210, T 740 fixed, support: footrest 0, seat 450 mm.
test('the worked figure: no footrest, seat 450', () => {
  const found = resultOf(body);
  expect([found.footrest, found.set.seat]).toEqual([0, 450]);
  expect(found.notes[0]).toBe('Seat: 450 mm, measured while the client sits on it.');
  expect(found.notes.join(' ')).not.toMatch(/footrest|away/i);
});

// By hand: Smax 450; wanted 450. Chair 420: raise 30. Chair 480 fixed: 30 too high, so the feet need 30.
test('says what to do with the chair there is', () => {
  expect(resultOf({ ...body, chair: 420 }).notes[0]).toContain('The chair is 420 mm: raise it by 30 mm.');
  expect(resultOf({ ...body, chair: 420, chairAdjustable: false }).notes[0]).toContain('with a firm cushion');
  expect(resultOf({ ...body, chair: 480 }).notes[0]).toContain('lower it by 30 mm');
  expect(resultOf({ ...body, chair: 447 }).notes[0]).toContain('leave it');
  const fixed = resultOf({ ...body, chair: 480, chairAdjustable: false });
  expect([fixed.footrest, fixed.set.seat, fixed.raiseTable]).toEqual([30, 480, 0]);
  expect(fixed.notes[0]).toMatch(/put a footrest of 30 mm .* and push it away before standing up\.$/);
});

// By hand: Smax 450, dmax 75: a table of 900 asks for a footrest of 165 and a seat of 615; a cushion gives 100.
test('a cushion adds 100 at most, then the table is named', () => {
  const found = resultOf({ ...body, table: 900, chair: 420, chairAdjustable: false });
  expect(found.set.seat).toBe(520);
  expect(found.footrest).toBe(70);
  expect(found.lowerTable).toBe(900 - 520 - 210 - 75);
  expect(found.notes.join(' ')).toContain('look for a lower table');
});

// By hand: Smax 450, hip: 450 to 500; table 740 - 210 - 50 = 480 lies inside.
test('hip precautions: the seat never below the knees, a footrest never higher than that', () => {
  expect(resultOf({ ...body, cautions: ['hip'] }).set.seat).toBe(480);
  const high = resultOf({ ...body, table: 860, cautions: ['hip'] });
  expect(high.set.seat - high.footrest).toBe(500);
});

// By hand: seat 450, d = 690 - 450 - 210 = 30 of 25 to 50 for writing; thigh 200 + 20 needs 220, room 690 - 25 - 450 = 215.
test('tight thighs: the table rises within its band, the seat stays; else a thinner top', () => {
  const tight = { ...body, table: 690, purpose: 'writing' as const, thigh: 200 };
  const found = resultOf(tight);
  expect([found.set.seat, found.raiseTable, found.set.table]).toEqual([450, 10, 700]);
  expect(found.notes.join(' ')).toContain('raise the table by 10 mm');
  const thick = resultOf({ ...tight, tableThickness: 90 });
  expect([thick.set.seat, thick.raiseTable]).toEqual([450, 0]);
  expect(thick.notes.join(' ')).toContain('thinner top');
});

const bodies: fc.Arbitrary<SetupInput> = fc.record({
  popliteal: fc.integer({ min: 320, max: 510 }),
  elbow: fc.integer({ min: 150, max: 330 }),
  shoe: fc.option(fc.integer({ min: 0, max: 70 })),
  table: fc.option(fc.integer({ min: 540, max: 920 }), { freq: 9 }),
  tableAdjustable: fc.boolean(),
  tableThickness: fc.option(fc.integer({ min: 10, max: 120 })),
  thigh: fc.option(fc.integer({ min: 110, max: 230 })),
  slantRise: fc.constant(null),
  slantLength: fc.constant(null),
  hand: fc.constantFrom('right' as const, 'left' as const),
  purpose: fc.constantFrom('writing' as const, 'support' as const, 'shoulder-pain' as const),
  chair: fc.option(fc.integer({ min: 300, max: 700 })),
  chairAdjustable: fc.boolean(),
  units: fc.constant('mm' as const),
  cautions: fc.subarray(['hip' as const, 'wheelchair' as const]),
});

/** Seat heights that a text speaks of: "Seat: 450 mm". */
const seatsNamed = (texts: readonly string[]): number[] =>
  texts.flatMap((text) => [...text.matchAll(/[Ss]eat[^.]*?(\d+) mm/g)].map((match) => Number(match[1])));

test('10,000 bodies: text, drawing and numbers never contradict each other', () => {
  fc.assert(
    fc.property(bodies, (input) => {
      const outcome = setUp(input, shippedSetup, toldEnglish.seat, englishTelling.decimals);
      if (!outcome.ok) return;
      const { result } = outcome;
      const { set, footrest, raiseTable, notes, chair } = result;
      const all = notes.join(' ');
      const seat = Math.round(set.seat);
      // One seat number.
      expect(seatsNamed([notes[0]!, ...result.findings.map((each) => each.sentence)])).toEqual(
        seatsNamed([notes[0]!, ...result.findings.map((each) => each.sentence)]).map(() => seat),
      );
      expect(notes[0]).toContain(`Seat: ${seat} mm`);
      // The footrest is named exactly where it is used, with its warning, once.
      expect(all.match(/footrest/gi)?.length ?? 0).toBe(footrest > 0 ? 1 : 0);
      expect(all.match(/push it away/gi)?.length ?? 0).toBe(footrest > 0 ? 1 : 0);
      // Nothing is asked that a tape cannot tell.
      for (const mm of [footrest, raiseTable, result.lowerTable, Math.abs(chair?.change ?? 0)])
        expect(mm === 0 || mm >= least).toBe(true);
      if (input.tableAdjustable || input.table === null) expect([raiseTable, result.lowerTable]).toEqual([0, 0]);
      // The feet stand on something that they reach, the hips stay above the knees where they must.
      const onFeet = set.seat - footrest;
      if (/look for a higher chair/.test(all)) expect(chair?.short).toBeGreaterThanOrEqual(least);
      else expect(onFeet).toBeGreaterThanOrEqual(result.seat.min - least);
      expect(onFeet).toBeLessThanOrEqual(result.seat.max + least);
      // The forearm ends in the band, or the page says what is in the way.
      const above = shippedSetup.tableAboveElbow[input.purpose];
      const reached = set.table - set.seat - (input.elbow ?? 0);
      if (result.lowerTable === 0) expect(reached).toBeLessThanOrEqual(above.max + least);
      expect(reached).toBeGreaterThanOrEqual(above.min - least);
      // A chair that cannot be set is not lowered, and a cushion has its limit.
      if (chair && input.chairAdjustable === false) {
        expect(chair.change).toBeGreaterThanOrEqual(0);
        expect(chair.change).toBeLessThanOrEqual(shippedSetup.cushionHighest.value);
      }
      if (chair && chair.change !== 0) expect(set.seat).toBe(chair.now + chair.change);
      // The drawing is of the same heights.
      const view = sideView(input, result, shippedSetup);
      const blockOf = (name: string) => view.blocks.find((each) => each.name === name);
      const seatBlock = blockOf('seat')!;
      expect(seatBlock.y + seatBlock.height).toBeCloseTo(set.seat, 6);
      const tableBlock = blockOf('table')!;
      expect(tableBlock.y + tableBlock.height).toBeCloseTo(set.table, 6);
      expect(blockOf('footrest')?.height ?? 0).toBeCloseTo(footrest, 6);
      expect(blockOf('blocks')?.height ?? 0).toBeCloseTo(raiseTable, 6);
    }),
    { numRuns: 10_000, seed: 14 },
  );
}, 120_000);
