import { expect, test } from 'vitest';
import { rulesInUse } from '../../../db/rules/in-use.ts';
import { dictionary, dictionaryCsv } from '../../../renderer/logic/exchange/dictionary.ts';
import { CSV_COLUMNS, measuresCsv } from '../../../renderer/logic/exchange/measures-csv.ts';
import { CHANGE_VERSION } from '../../../renderer/change/index.ts';
import { exchangeValues } from '../../../renderer/logic/exchange/values.ts';
import { MEASURES } from '../../../renderer/measure/measures/measure-table.ts';
import { progressCsv } from '../../../renderer/logic/progress/table-columns.ts';
import { ClientRecord } from '../../../db/types/record.ts';
import { BREAKING, withBreakingTexts } from '../../spoil-texts.ts';
import { record } from './record.ts';

const rules = rulesInUse(null);

/** A small reader of RFC 4180, so that what is written is read back by other code. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  const cell = /("(?:[^"]|"")*"|[^,\r\n]*)(,|\r\n|$)/gy;
  let row: string[] = [];
  for (let match = cell.exec(text); match && cell.lastIndex <= text.length; match = cell.exec(text)) {
    const raw = match[1]!;
    row.push(raw.startsWith('"') ? raw.slice(1, -1).replaceAll('""', '"') : raw);
    if (match[2] !== ',') {
      rows.push(row);
      row = [];
      if (cell.lastIndex >= text.length) break;
    }
  }
  return rows;
}

test('every value of the record is a row; what is read back is what the record says', () => {
  const made = record();
  const [head, ...rows] = readCsv(measuresCsv([made], rules));
  expect(head).toEqual(CSV_COLUMNS.map((column) => column.name));
  expect(rows).toHaveLength(exchangeValues(made, rules).length);
  const at = (name: string) => head!.indexOf(name);
  for (const row of rows) {
    expect(row).toHaveLength(head!.length);
    expect(row[at('client')]).toBe(made.client.code);
    expect(Number.isFinite(Number(row[at('value')]))).toBe(true);
  }
  const read = rows.filter((row) => row[at('measure')] === 'words-read').map((row) => Number(row[at('value')]));
  expect(read.length).toBeGreaterThan(1);
  expect(rows.map((row) => row[at('date')])).toEqual([...rows.map((row) => row[at('date')])].sort());
});

test('the verdict about change is a row: comparable or not first, what was left out and under what, in words', () => {
  const verdict = (change: (r: ReturnType<typeof record>) => void) => {
    const [head, ...rows] = readCsv(measuresCsv([record(change)], rules));
    const row = rows.find((each) => each[head!.indexOf('measure')] === 'change')!;
    return (name: string) => row[head!.indexOf(name)]!;
  };
  const same = verdict((r) => {
    for (const sample of r.samples) sample.conditions.doseState = 'on';
  });
  expect(same('version')).toBe(CHANGE_VERSION);
  expect(Number(same('low'))).toBeLessThan(Number(same('high')));
  expect(same('method')).toMatch(
    /^compared under: task copy, cue none, dose on, hand \w+, surface paper, view true-size;/,
  );
  const apart = verdict((r) => {
    const last = r.samples
      .map(({ takenAt }) => takenAt)
      .sort()
      .at(-1);
    for (const sample of r.samples) {
      sample.baseline = sample.takenAt !== last;
      sample.conditions.doseState = sample.baseline ? 'off' : 'on';
    }
  });
  expect(apart('about')).toMatch(/^Not comparable\. Not comparable: the first visits were written with medicine off/);
  expect(apart('value')).toBe('');
  expect(apart('method')).toContain('nothing compared; differing: dose');
});

test('no name, no text that was written, and nothing that a spreadsheet would run', () => {
  const made = record((r) => {
    r.client.code = '=cmd|1';
    for (const sample of r.samples) {
      sample.conditions.pen = '  +SUM(A1)';
      sample.conditions.grip = '-2+3';
      sample.conditions.paper = '\uff1dHYPERLINK("x")';
    }
  });
  const text = measuresCsv([made], rules);
  expect(text).not.toContain(made.client.name);
  for (const sample of made.samples) if (sample.task.text) expect(text).not.toContain(sample.task.text);
  for (const row of readCsv(text).slice(1))
    for (const cell of row) if (!/^-?[\d.]+(e-?\d+)?$/.test(cell)) expect(cell).not.toMatch(/^\s*[=+\-@\uff1d]/);
});

test('no text of a client, whichever field it was typed into, makes a formula, a cell or a row of its own', () => {
  const plain = record();
  const { spoiled, count } = withBreakingTexts(plain, ClientRecord);
  expect(count).toBeGreaterThan(50);
  const before = readCsv(measuresCsv([plain], rules));
  const after = readCsv(measuresCsv([spoiled], rules));
  expect(after.map((row) => row.length)).toEqual(before.map((row) => row.length));
  const row = { day: '2026-03-04', right: null, words: null, percent: null, low: null, high: null };
  const rest = { fatigueBefore: null, fatigueAfter: null, pain: null, minutes: null };
  const table = readCsv(
    progressCsv(BREAKING.map((text) => ({ ...row, ...rest, what: text, readers: text, note: text }))),
  );
  expect(table).toHaveLength(BREAKING.length + 1);
  for (const cell of [...after.slice(1), ...table.slice(1)].flat())
    if (!/^-?[\d.]+(e-?\d+)?$/.test(cell))
      expect(cell).not.toMatch(/^[\s\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/);
});

test('signatures and personal lines give no row at all', () => {
  const made = record((r) => {
    r.samples[0]!.task.kind = 'signature';
    r.samples[1]!.task.kind = 'personal';
  });
  const ids = new Set(exchangeValues(made, rules).map((value) => value.sample?.id));
  expect(ids.has(made.samples[0]!.id) || ids.has(made.samples[1]!.id)).toBe(false);
});

test('the dictionary explains every column and every code that a file can hold', () => {
  const [head, ...rows] = readCsv(dictionaryCsv());
  expect(head).toEqual(['kind', 'code', 'name', 'unit', 'better', 'how', 'source']);
  const codes = rows.filter((row) => row[0] === 'measure').map((row) => row[1]);
  expect(new Set(codes).size).toBe(codes.length);
  for (const measure of MEASURES) expect(codes).toContain(measure.code);
  for (const { code } of exchangeValues(record(), rules)) expect(codes, code).toContain(code);
  for (const column of CSV_COLUMNS)
    expect(rows.some((row) => row[0] === 'column' && row[1] === column.name)).toBe(true);
  for (const row of dictionary) expect(row.source && row.name && row.unit && row.how, row.code).toBeTruthy();
});
