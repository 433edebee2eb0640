/** Names above the chart: never one over the other, whatever lies where (DESK: 6, 60 and 156 visits). */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eventLane } from '../../../renderer/logic/progress/event-lane.ts';
import { toldEnglish } from '../../../renderer/logic/texts/screens/told-english.ts';

const asIs = (at: number) => at;
const { changes } = toldEnglish.course;

test('what lies nearer than 8 px is one name; three are counted', () => {
  expect(eventLane([{ at: 100, label: 'pen' }], asIs, 600, changes)).toEqual([{ at: 100, label: 'pen', row: 0 }]);
  expect(
    eventLane(
      [
        { at: 105, label: 'paper' },
        { at: 100, label: 'pen' },
      ],
      asIs,
      600,
      changes,
    ),
  ).toEqual([{ at: 100, label: 'pen; paper', row: 0 }]);
  const three = [100, 102, 104].map((at) => ({ at, label: 'pen' }));
  expect(eventLane(three, asIs, 600, changes)[0]!.label).toBe('3 changes');
});

test.each([6, 60, 156])('no two names of %i marks overlap', (count) => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 700 }), { minLength: count, maxLength: count }), (places) => {
      const lane = eventLane(
        places.map((at) => ({ at, label: 'Program changed' })),
        asIs,
        700,
        changes,
      );
      for (const row of [0, 1]) {
        const shown = lane.filter((one) => one.row === row);
        shown.slice(1).forEach((one, i) => {
          const before = shown[i]!;
          const half = (label: string) => (label.length * 6.8) / 2;
          const middle = ({ at, label }: { at: number; label: string }) =>
            Math.min(Math.max(at, half(label)), 700 - half(label));
          expect(middle(one) - half(one.label)).toBeGreaterThanOrEqual(middle(before) + half(before.label));
        });
      }
    }),
    { numRuns: 30 },
  );
});
