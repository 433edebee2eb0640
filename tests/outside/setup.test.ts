import { probit } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { shippedSetup } from '../../db/rules/screen/items-schema.ts';
import { setUp } from '../../renderer/logic/setup/set-up.ts';
import type { SetupInput, SetupResult } from '../../renderer/logic/setup/setup-types.ts';
import { angleFor, riseFor } from '../../renderer/logic/setup/slanted-surface.ts';
import survey from './setup-survey.json' with { type: 'json' };
import { toldEnglish } from '../../renderer/logic/texts/screens/told-english.ts';
import { englishTelling } from '../../renderer/logic/texts/screens/telling.ts';

const person = (change: Partial<SetupInput>): SetupResult => {
  const outcome = setUp(
    {
      popliteal: 388,
      elbow: 232,
      shoe: 25,
      table: null,
      tableAdjustable: false,
      tableThickness: 25,
      thigh: null,
      slantRise: null,
      slantLength: null,
      hand: 'right',
      purpose: 'writing',
      ...change,
    },
    shippedSetup,
    toldEnglish.seat,
    englishTelling.decimals,
  );
  if (!outcome.ok) throw new Error(outcome.sentence);
  return outcome.result;
};

/** Share in percent of people for whom a fixed table is too high; elbow above the floor taken as normal, from p5, p50, p95. */
function shareTooHigh(row: { p5: number; p50: number; p95: number }, table: number): number {
  const sd = (row.p95 - row.p5) / (2 * probit(0.95));
  const people = 2000;
  let tooHigh = 0;
  for (let i = 0; i < people; i += 1) {
    const elbowAboveFloor = row.p50 + sd * probit((i + 0.5) / people);
    const popliteal = 400;
    const result = person({ popliteal, elbow: elbowAboveFloor - popliteal - 25, table });
    if (table > result.tableBand.max) tooHigh += 1;
  }
  return (100 * tooHigh) / people;
}

describe('ANSUR II 2012, elbow above the floor', () => {
  for (const sex of ['women', 'men'] as const) {
    test(`a fixed 735 mm table is too high for ${survey.tooHigh[sex]} % of ${sex}, within 2 points`, () => {
      const share = shareTooHigh(survey.elbowAboveFloor[sex], survey.tooHigh.table);
      expect(Math.abs(share - survey.tooHigh[sex])).toBeLessThanOrEqual(survey.tooHigh.withinPoints);
    });
  }

  test('the band for writing ends where the design fact puts it, 50 mm above the elbow', () => {
    expect(shippedSetup.tableAboveElbow.writing.max).toBe(survey.tooHigh.aboveElbow);
  });
});

describe('people of the surveys are never refused', () => {
  for (const sex of ['women', 'men'] as const) {
    for (const percentile of ['p1', 'p5', 'p50', 'p95', 'p99'] as const) {
      test(`ANSUR II ${sex}, ${percentile}`, () => {
        const { popliteal, elbow, thigh } = survey.rows;
        const result = person({
          popliteal: popliteal[sex][percentile],
          elbow: elbow[sex][percentile],
          thigh: thigh[sex][percentile],
          table: 735,
        });
        expect(result.seat.max - result.seat.min).toBe(20);
        expect(result.seat.max).toBe(popliteal[sex][percentile] + 25);
      });
    }
  }
  for (const people of ['British men', 'British women', 'Hong Kong men', 'Hong Kong women'] as const) {
    test(`City University of Hong Kong tables: ${people}`, () => {
      const { popliteal, elbow } = survey.otherSurvey;
      for (const i of [0, 1, 2]) {
        expect(person({ popliteal: popliteal[people][i]!, elbow: elbow[people][i]!, table: 735 }).seat.max).toBe(
          popliteal[people][i]! + 25,
        );
      }
    });
  }
});

test('the thigh gate closes exactly where elbow rest height less thigh is under top plus room (25 + 20 mm)', () => {
  for (const [thigh, passes] of [
    [187, true],
    [187.1, false],
  ] as const) {
    const result = person({ elbow: 232, thigh, purpose: 'shoulder-pain', table: 388 + 25 + 232 });
    expect(result.thighGate?.passes).toBe(passes);
  }
});

describe('slanted surface', () => {
  for (const row of survey.slant.rises) {
    test(`rises of a ${row.length} mm surface`, () => {
      for (const angle of [5, 10, 12, 15, 20] as const) {
        expect(Math.round(riseFor(row.length, angle))).toBe(row[`${angle}`]);
      }
    });
  }
  for (const { spine, length, angle } of survey.slant.binders) {
    test(`a ring binder with a ${spine} mm spine and ${length} mm length rises ${angle} degrees`, () => {
      expect(angleFor(spine, length)).toBeCloseTo(angle, 1);
    });
  }
});
