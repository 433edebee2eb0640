import { englishTelling } from '../../../renderer/logic/texts/screens/telling.ts';
import { describe, expect, it } from 'vitest';
import { driftOf, driftSentence, hasDrifted, judgeScale } from '../../../renderer/logic/sample/ink-scale.ts';
import { fading, hitsByLine, hitsInBand, hitsWords, lessHelp } from '../../../renderer/logic/sample/ink-hits.ts';
import { nextTremorTask, rhythmWords } from '../../../renderer/logic/sample/ink-tremor.ts';
import { line, recordingOf } from './ink-facts.ts';

const of = { clientId: 'c', visitId: 'v', sampleId: 's', startedAt: '2026-03-04T09:12:00.000Z' };

describe('practice with help', () => {
  it('counts strokes within 15 % of the height, with the interval of Wilson 1927', () => {
    const heights = [...Array.from({ length: 8 }, () => 6), 5.1, 6.9, 5, 7];
    const { inBand, strokes, low, high } = hitsInBand(heights, 6);
    expect([inBand, strokes]).toEqual([10, 12]);
    // Wilson by hand for 10 of 12: 0.552 to 0.953.
    expect([low, high].map((each) => Number(each.toFixed(3)))).toEqual([0.552, 0.953]);
    expect(hitsWords(hitsInBand([], 6), 6, englishTelling)).toBe('No strokes to count.');
  });

  it('proposes to fade at three lines of the last four, never before four', () => {
    const [hit, missed] = [
      { inBand: 9, strokes: 10 },
      { inBand: 5, strokes: 10 },
    ];
    expect(fading([hit, hit, hit])).toMatchObject({ lines: 3, propose: false });
    expect(fading([hit, missed, hit, hit])).toMatchObject({ hit: 3, propose: true });
    expect(fading([hit, hit, missed, missed, hit])).toMatchObject({ hit: 2, propose: false });
    expect(fading([missed, missed, hit, hit, missed, hit])).toMatchObject({ hit: 3, propose: true });
  });

  it('takes away one help at a time and the height to fill last', () => {
    const all = { bandMm: 6, stopMarks: true, paceHz: 1, sound: true, sizes: true };
    const seen: string[] = [];
    for (let cues: typeof all | null = all; cues; cues = lessHelp(cues).cues as typeof all | null)
      seen.push(englishTelling.told.pen.lessHelp[lessHelp(cues).without]);
    expect(seen).toHaveLength(4);
    expect(seen.at(-1)).toContain('without any help');
  });

  it('reckons each line by itself', () => {
    const strokes = [1, 2, 3, 11, 12].map((atS, i) => ({ atS, heightMm: i < 3 ? 6 : 3 }));
    const notes = [{ atMs: 10_000, kind: 'line' as const }];
    expect(hitsByLine(strokes, notes, 6)).toEqual([
      { inBand: 3, strokes: 3 },
      { inBand: 0, strokes: 2 },
    ]);
    expect(hitsByLine(strokes, [], 6)).toEqual([{ inBand: 3, strokes: 5 }]);
  });
});

describe('two crosses, 100 mm apart', () => {
  const scale = { x: 5, y: 5 };
  const taps = (dx: number, apart = 500) => ({ left: { x: 100 + dx, y: 200 }, right: { x: 100 + dx + apart, y: 200 } });
  it('lie still within 1 mm and 1 %', () => {
    const still = driftOf(taps(0), taps(4), scale);
    expect(still).toEqual({ beforeMm: 100, afterMm: 100, movedMm: 0.8 });
    expect(hasDrifted(still)).toBe(false);
    expect(driftSentence(still, englishTelling)).toContain('lay still');
  });
  it('tell a paper that slipped and a scale that is off', () => {
    expect(hasDrifted(driftOf(taps(0), taps(6), scale))).toBe(true);
    expect(hasDrifted(driftOf(taps(0, 510), taps(0, 510), scale))).toBe(true);
    expect(hasDrifted(driftOf(taps(0, 504), taps(0, 504), scale))).toBe(false);
    expect(driftSentence(driftOf(taps(0), taps(20), scale), englishTelling)).toContain('slipped');
  });
  it('a stretched scale is refused on a screen and warned of on a tablet', () => {
    const scale = { x: 5, y: 5.2 };
    expect(judgeScale(scale, 'screen')).toBe('refused');
    expect(judgeScale(scale, 'tablet-paper')).toBe('stretched');
    expect(judgeScale({ x: 5, y: 5.04 }, 'screen')).toBe('right');
  });
});

describe('tremor tasks', () => {
  it('go through line, spiral and held pen, right and left', () => {
    const done: ReturnType<typeof recordingOf>[] = [];
    const seen: string[] = [];
    for (let i = 0; i < 6; i += 1) {
      const { task, hand } = nextTremorTask(done);
      seen.push(`${task} ${hand}`);
      done.push(recordingOf(line(), { ...of, task, hand }));
    }
    expect(seen).toEqual(['line right', 'line left', 'spiral right', 'spiral left', 'hold right', 'hold left']);
    expect(nextTremorTask(done)).toMatchObject({ isAgain: true });
  });
  it('say a rhythm with frequency and size, or that none stands out', () => {
    // A sine of 0.5 mm has an rms of 0.354 mm; the pen's noise may lift it a little.
    expect(rhythmWords(recordingOf(line({ hz: 4.8, amplitudeMm: 0.5 }), of), englishTelling)).toMatch(
      /^A steady rhythm at 4\.8 Hz, 0\.3[56] mm \(rms\)\.$/,
    );
    expect(rhythmWords(recordingOf(line(), of), englishTelling)).toMatch(/^No (steady )?rhythm/);
  });
});
