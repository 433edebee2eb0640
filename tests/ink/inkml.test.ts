/** Reading and writing InkML: W3C Ink Markup Language, Recommendation of 20 September 2011. */
import { describe, expect, it } from 'vitest';
import { inkOf, strokesUpAndDown } from '../../build/demo/ink/pen-model.ts';
import { INK_REFUSALS, InkRefusal, measureInk, readInkml, writeInkml } from '../../renderer/ink/index.ts';
import type { InkDocument, InkRefusalCode } from '../../renderer/ink/index.ts';
import { tiltOf } from '../../renderer/ink/inkml/channels.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const ink = (inside: string): string => `<ink xmlns="http://www.w3.org/2003/InkML">${inside}</ink>`;
const format = (...channels: string[]): string =>
  `<definitions><inkSource xml:id="s"><traceFormat>${channels
    .map((each) => `<channel ${each}/>`)
    .join('')}</traceFormat></inkSource><context xml:id="c" inkSourceRef="#s"/></definitions>`;
const XYT = format('name="X" units="mm"', 'name="Y" units="mm"', 'name="T" units="ms"');
const read = (inside: string): InkDocument => readInkml(bytes(ink(inside)));
const column = (document: InkDocument, key: 'x' | 'y' | 't' | 'force', trace = 0): number[] =>
  Array.from(document.traces[trace]![key] ?? []).map((value) => Number(value.toFixed(6)));

describe('reads', () => {
  it('channels in any order, lengths and times in their units', () => {
    for (const [units, mm] of [
      ['mm', 1],
      ['cm', 10],
      ['m', 1000],
      ['in', 25.4],
      ['pt', 25.4 / 72],
      ['pc', 25.4 / 6],
    ] as const) {
      const document = read(
        `${format('name="T" units="s"', `name="Y" units="${units}"`, 'name="F" max="1023"', `name="X" units="${units}"`)}<trace>0.5 2 512 3, 1 4 1023 6</trace>`,
      );
      expect(document.calibrated).toBe(true);
      expect(document.traces[0]!.x[1]).toBeCloseTo(6 * mm, 9);
      expect(document.traces[0]!.y[0]).toBeCloseTo(2 * mm, 9);
      expect(column(document, 't')).toEqual([500, 1000]);
      expect(document.traces[0]!.force![1]).toBe(1);
    }
  });

  it('device steps with a resolution; without one there is no scale', () => {
    const channels = ['name="X" units="dev"', 'name="Y" units="dev"'];
    const properties = (units: string) =>
      `<channelProperties>${['X', 'Y'].map((c) => `<channelProperty channel="${c}" name="resolution" value="100" units="${units}"/>`).join('')}</channelProperties></inkSource>`;
    for (const [units, mm] of [
      ['1/mm', 0.01],
      ['1/cm', 0.1],
      ['1/in', 0.254],
    ] as const) {
      const document = read(`${format(...channels).replace('</inkSource>', properties(units))}<trace>200 300</trace>`);
      expect(document.calibrated).toBe(true);
      expect(document.traces[0]!.x[0]).toBeCloseTo(200 * mm, 9);
    }
    const bare = read('<trace>200 300, 210 310</trace>');
    expect(bare.calibrated).toBe(false);
    expect(measureInk(bare).warnings.map(({ code }) => code)).toEqual(['no-scale', 'no-time', 'no-pressure']);
  });

  /** The recommendation's own example of differences (section on trace data), cited from memory. */
  it('whole values, first and second differences, values without a space between', () => {
    const document = read('<trace>1125 18432,\'23\'43,"7"-8,3-5,7 -3,6 2,6 8,3 6</trace>');
    expect(column(document, 'x')).toEqual([1125, 1148, 1178, 1211, 1251, 1297, 1349, 1404]);
    expect(column(document, 'y')).toEqual([18432, 18475, 18510, 18540, 18567, 18596, 18633, 18676]);
    expect(column(read("<trace>1 1, '2 '3, !10 1, 4 1</trace>"), 'x')).toEqual([1, 3, 10, 4]);
  });

  it('the value before for a star; a sample without a place for ? is left out', () => {
    const document = read('<trace>1 5, * 6, ? 7, 4 *</trace>');
    expect([column(document, 'x'), column(document, 'y')]).toEqual([
      [1, 1, 4],
      [5, 6, 7],
    ]);
  });

  it('time offsets in the unit of T', () => {
    const seconds = format('name="X" units="mm"', 'name="Y" units="mm"', 'name="T" units="s"');
    expect(column(read(`${seconds}<trace timeOffset="2">0 0 0.25</trace>`), 't')).toEqual([2250]);
  });

  it('continued traces as one contact, groups inside groups', () => {
    const document = read(
      `${XYT}<traceGroup><annotation type="kind">line</annotation><traceGroup><annotation type="kind">word</annotation>
      <trace xml:id="a" continuation="begin">0 0 0, 1 1 5</trace><trace continuation="end" priorRef="#a">'1 '1 '5, 1 1 5</trace>
      <trace type="penUp">3 3 20</trace></traceGroup><trace>9 9 40</trace></traceGroup>`,
    );
    expect(document.traces.map(({ kind }) => kind)).toEqual(['down', 'up', 'down']);
    expect(column(document, 't')).toEqual([0, 5, 10, 15]);
    expect([document.lines, document.words]).toEqual([[[0, 1, 2]], [[0, 1]]]);
  });

  it('the text of the whole, not of one word that tells its own before its kind', () => {
    const word = (text: string) =>
      `<traceGroup><annotation type="text">${text}</annotation><annotation type="kind">word</annotation><trace>1 1</trace></traceGroup>`;
    expect(read(word('a') + word('b')).text).toBeNull();
    expect(read(`${word('a')}<annotation type="text">a b</annotation>${word('b')}`).text).toBe('a b');
    expect(read(`<traceGroup><annotation type="text">a b</annotation>${word('a')}</traceGroup>`).text).toBe('a b');
  });

  /** W3C 2011, channel: respectTo of a time channel names the timestamp that its times count from (from memory). */
  it('times of several zeros on the clock of the first', () => {
    const source = (n: number) =>
      `<timestamp xml:id="t${n}" time="${1_700_000_000_000 + n * 2500}"/><inkSource xml:id="s${n}"><traceFormat><channel name="X" units="mm"/><channel name="Y" units="mm"/><channel name="T" units="s" respectTo="#t${n}"/></traceFormat></inkSource><context xml:id="c${n}" inkSourceRef="#s${n}"/>`;
    const two = read(
      `<definitions>${source(0)}${source(1)}</definitions><trace contextRef="#c0">0 0 0.5</trace><trace contextRef="#c1">0 0 0.25</trace>`,
    );
    expect([column(two, 't'), column(two, 't', 1)]).toEqual([[500], [2750]]);
  });

  it('a context of a stream that tells less than the one before it; names after a file name', () => {
    const stream = `<context><inkSource><traceFormat><channel name="Y" units="mm"/><channel name="X" units="mm"/></traceFormat></inkSource></context><trace>1 2</trace><context><brush/></context><trace>3 4</trace><context><inkSource><traceFormat><channel name="X" units="cm"/><channel name="Y" units="cm"/></traceFormat></inkSource></context><trace>3 4</trace>`;
    const document = read(stream);
    expect([0, 1, 2].map((trace) => column(document, 'x', trace)[0])).toEqual([2, 4, 30]);
    const named = format('name="Y" units="mm"', 'name="X" units="mm"');
    expect(column(read(`${named}<trace contextRef="pen.inkml#c">1 2</trace>`), 'x')).toEqual([2]);
  });

  it('pressure in percent as a share, in newtons as none; West European bytes', () => {
    const force = (units: string) =>
      read(`${format('name="X"', 'name="Y"', `name="F" units="${units}"`)}<trace>1 1 0.5, 2 2 0.8</trace>`);
    expect([force('%').forceIsShare, column(force('%'), 'force')]).toEqual([true, [0.005, 0.008]]);
    expect(force('N').forceIsShare).toBe(false);
    const latin = `<?xml version="1.0" encoding="ISO-8859-1"?>${ink('<annotation type="text">\u00e9t\u00e9</annotation>')}`;
    expect(readInkml(Uint8Array.from(latin, (c) => c.charCodeAt(0))).text).toBe('\u00e9t\u00e9');
  });

  /** W3C Pointer Events 3: a pen leaning 45 degrees to the right has tiltX 45, tiltY 0. */
  it('tilt from azimuth and altitude', () => {
    const angles = format(
      'name="X" units="mm"',
      'name="Y" units="mm"',
      'name="OA" units="deg"',
      'name="OE" units="deg"',
    );
    const { tiltX, tiltY } = read(`${angles}<trace>0 0 0 45, 0 0 90 60</trace>`).traces[0]!;
    expect(tiltX![0]).toBeCloseTo(45, 9);
    expect(tiltY![0]).toBeCloseTo(0, 9);
    expect(tiltY![1]).toBeCloseTo(30, 9);
    expect(tiltOf(123, 90)).toEqual({ tiltX: 0, tiltY: 0 });
  });

  it('task and text; no time, backward times and nothing at all are no refusal', () => {
    const document = read(
      `<annotation type="task">loops</annotation><annotation type="text">a &lt; b &#233;</annotation>${XYT}`,
    );
    expect([document.task, document.text]).toEqual(['loops', 'a < b é']);
    expect(measureInk(document).warnings.map(({ code }) => code)).toEqual(['empty']);
    const back = read(`${XYT}<trace>0 0 0, 1 0 5, 2 0 4, 3 0 10</trace>`);
    expect(measureInk(back).warnings.map(({ code }) => code)).toContain('time-backward');
  });
});

describe('refuses with a sentence', () => {
  const trace = (text: string): string => ink(`<trace>${text}</trace>`);
  const cases: [InkRefusalCode, string][] = [
    ['dtd', `<!DOCTYPE ink>${ink('')}`],
    ['dtd', '<!DOCTYPE ink [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><ink>&b;</ink>'],
    ['dtd', ink('<annotation>&own;</annotation>')],
    ['not-well-formed', '<ink><trace>1 2</ink>'],
    ['not-well-formed', '<ink'],
    ['not-well-formed', ''],
    ['not-well-formed', `${ink('')}<ink/>`],
    ['not-well-formed', '<ink a="1" a="2"/>'],
    ['not-well-formed', ink('<annotation>&#0;</annotation>')],
    ['other-root', '<svg xmlns="http://www.w3.org/2000/svg"/>'],
    ['no-position', ink(`${format('name="X"', 'name="T"')}<trace>1 2</trace>`)],
    ['column-count', trace('1 2, 3')],
    ['column-count', trace('1 2 3')],
    ['not-a-number', trace('1 NaN')],
    ['not-a-number', trace('1 Infinity')],
    ['not-a-number', trace('1 1e999')],
    ['value-too-large', trace('1 10000001')],
    ['value-too-large', trace("9999999 1, '9 '1")],
    ['too-deep', ink(`${'<traceGroup>'.repeat(32)}${'</traceGroup>'.repeat(32)}`)],
    ['too-many-traces', ink('<trace>1 2</trace>'.repeat(20_001))],
    ['too-many-samples', trace('1 2,'.repeat(2_000_001))],
  ];
  it.each(cases)('%s', (code, text) => {
    expect(() => readInkml(bytes(text))).toThrow(new InkRefusal(code));
    expect(INK_REFUSALS[code]).toMatch(/Nothing was kept\./);
  });

  it('more than 32 MB, and bytes that are no text', () => {
    expect(() => readInkml(new Uint8Array(32 * 1024 * 1024 + 1))).toThrow(new InkRefusal('file-too-large'));
    expect(() => readInkml(Uint8Array.of(0x3c, 0xff, 0xfe, 0x80))).toThrow(new InkRefusal('not-well-formed'));
  });
});

it('writes what it reads back within 0.0005 mm and 0.05 ms, with the same measures', () => {
  const steps = [...strokesUpAndDown(8, () => 4, 0.2), { kind: 'lift' as const, dx: 3, dy: 1, seconds: 0.2 }];
  const plan = { task: 'writing' as const, text: 'A & B < C', from: { x: 30.12345, y: 40 }, words: [[0], [1]] };
  const pressure = (s: number): number => 0.4 + 0.1 * Math.sin(s);
  const raw = inkOf(
    { ...plan, steps: [...steps, ...strokesUpAndDown(8, () => 4, 0.2)], pressure },
    { rateHz: 133, noiseMm: 0.02, seed: 5 },
  );
  const again = readInkml(bytes(writeInkml(raw, { rateHz: 133 })));
  expect([again.task, again.text, again.words, again.startedAtMs]).toEqual([
    raw.task,
    raw.text,
    [[0], [1]],
    raw.startedAtMs,
  ]);
  const byStart = (document: InkDocument) => document.traces.toSorted((a, b) => a.t![0]! - b.t![0]!);
  const [before, after] = [byStart(raw), byStart(again)];
  expect(after.length).toBe(before.length);
  for (const [i, trace] of before.entries()) {
    expect(after[i]!.kind).toBe(trace.kind);
    for (const [key, most] of [
      ['x', 5e-4],
      ['y', 5e-4],
      ['t', 0.05],
      ['force', 1e-5],
    ] as const)
      trace[key]!.forEach((value, k) => expect(Math.abs(after[i]![key]![k]! - value)).toBeLessThanOrEqual(most + 1e-9));
  }
  const values = (document: InkDocument) => measureInk(document).measures.map(({ code, value }) => ({ code, value }));
  const second = values(again);
  for (const [i, { code, value }] of values(raw).entries()) {
    if (value === null) expect(second[i]).toEqual({ code, value: null });
    else {
      // Four seconds of ink say little about a minute: drifts grow every rounding fifteen times.
      const most = code.endsWith('drift') ? 0.5 : 0.02 * Math.abs(value) + 0.005;
      expect(Math.abs(second[i]!.value! - value), code).toBeLessThanOrEqual(most);
    }
  }
});
