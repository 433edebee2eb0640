/** Pen recordings in the caseload: kept in pieces, finished, drawn as a page, measured, exported, brought in again. */
import { readFileSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { penEvents } from '../../build/demo/ink/pen-events.ts';
import { inkOf, strokesUpAndDown } from '../../build/demo/ink/pen-model.ts';
import { freshCaseloadIn, NOW, PASSPHRASE } from '../../build/torture/children.ts';
import { openCaseload, type Caseload } from '../../db/index.ts';
import { makeBackup, restoreBackup } from '../../electron/files/backup/backup.ts';
import { backupsFolder } from '../../electron/files/backup/backup-list.ts';
import { dispatch } from '../../electron/handlers/dispatch.ts';
import { Services } from '../../electron/handlers/services.ts';
import { drawInk, INK_METHOD, packSamples, readInkml, RAW_BYTES, unpackSamples } from '../../renderer/ink/index.ts';
import type { InkResult, RawSample } from '../../renderer/ink/index.ts';
import { sampleValues } from '../../renderer/logic/record/measure-values.ts';
import { client, inkRecording, sample, visit } from '../db/plain-facts.ts';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const doing = { at: NOW, by: 'TY' };
let folder: string;
let caseload: Caseload;
let services: Services;
let saved: Uint8Array | null = null;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'fairhand-ink-'));
  caseload = await freshCaseloadIn(folder);
  const port = {
    chooseSave: ({ bytes }: { bytes: Uint8Array }) => ((saved = bytes), Promise.resolve({ saved: true })),
  };
  const opened = { folder, port: port as never, shell: 'browser' as const, version: '0', demoSource: null };
  services = new Services({ ...opened, now: () => new Date(NOW), emit: () => {} });
  services.caseload = caseload;
});
afterAll(() => {
  caseload.close();
  rmSync(folder, { recursive: true, force: true });
});

async function ask<T>(name: string, input: unknown): Promise<T> {
  const answer = JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as {
    ok: boolean;
    value: T;
    code: string;
  };
  if (!answer.ok) throw new Error(answer.code);
  return answer.value;
}

/** The events that a pen at 10 px a millimeter would have sent for planned strokes. */
function events(): RawSample[] {
  const lift = { kind: 'lift' as const, dx: 3, dy: 0, seconds: 0.3 };
  const steps = [...strokesUpAndDown(10, () => 5, 0.3), lift, ...strokesUpAndDown(10, () => 5, 0.3)];
  const ink = inkOf(
    { task: 'writing', from: { x: 30, y: 40 }, steps, pressure: (s) => 0.4 + s / 50 },
    { rateHz: 200, noiseMm: 0.01, seed: 2 },
  );
  return penEvents(ink, 10);
}

function written(): { clientId: string; recordingId: string; sampleId: string } {
  const { id: clientId } = caseload.put('client', client(), doing);
  const { id: visitId } = caseload.put('visit', visit(clientId), doing);
  const { id: sampleId } = caseload.put('sample', sample(clientId, visitId), doing);
  return { clientId, sampleId, recordingId: randomUUID() };
}

async function begin({ clientId, recordingId, sampleId }: ReturnType<typeof written>, scale: boolean): Promise<void> {
  const { visitId } = caseload.get('sample', sampleId)!;
  const known = scale ? { pxPerMmX: 10, pxPerMmY: 10, source: 'card' as const, at: NOW } : null;
  await ask('ink.save', inkRecording(clientId, visitId, sampleId, { id: recordingId, scale: known }));
}

const pieces = (samples: readonly RawSample[], size: number): string[] =>
  Array.from({ length: Math.ceil(samples.length / size) }, (_, i) =>
    Buffer.from(packSamples(samples.slice(i * size, (i + 1) * size))).toString('base64'),
  );

test('samples pack without loss', () => {
  const samples = events();
  expect(unpackSamples(packSamples(samples))).toEqual(samples);
  expect(unpackSamples(packSamples(samples).subarray(0, RAW_BYTES * 3 + 7))).toEqual(samples.slice(0, 3));
});

test('a bout is kept in pieces, finished, drawn, measured, exported and brought in with the same numbers', async () => {
  const of = written();
  await begin(of, true);
  const samples = events();
  for (const [seq, bytes] of pieces(samples, 100).entries()) {
    await ask('ink.append', { recordingId: of.recordingId, seq, bytes });
    // A retry of a piece that came through changes nothing.
    if (seq === 3) await ask('ink.append', { recordingId: of.recordingId, seq, bytes });
  }
  interface Kept {
    recording: { blob: string; sha256: string; measured: { method: string; told: InkResult } };
    page: { id: string; widthPx: number } | null;
    sample: { seconds: number };
  }
  const kept = await ask<Kept>('ink.finish', { recordingId: of.recordingId, palmTouches: 4, cancelled: 0 });
  const blob = caseload.blob(kept.recording.blob)!;
  expect(unpackSamples(blob.data)).toEqual(samples);
  expect(kept.recording.sha256).toBe(blob.sha256);
  expect(caseload.inkSoFar(of.recordingId).byteLength).toBe(0);
  expect(kept.sample.seconds).toBeCloseTo(6.3, 1);

  // Measured in a worker when it was finished; the answer is kept with its method.
  expect(kept.recording.measured.method).toBe(INK_METHOD);
  const { told } = kept.recording.measured;
  const value = (result: InkResult, code: string) => result.measures.find((each) => each.code === code)!.value!;
  expect(Math.abs(value(told, 'stroke-height') / 5 - 1)).toBeLessThan(0.02);
  expect(value(told, 'lifts')).toBe(1);
  expect(told.quality.verdict).toBe('good');

  await ask('sample.measure', { id: randomUUID(), pageId: kept.page!.id, corrections: [] });
  const record = caseload.record(of.clientId);
  expect(record.pageMeasurements).toHaveLength(1);
  expect(sampleValues(record), 'never beside paper').toEqual([]);

  await ask('ink.export', { recordingId: of.recordingId });
  const text = new TextDecoder().decode(saved!);
  expect(text).not.toMatch(/Test Person|Test pen/);
  expect(drawInk(readInkml(saved!))).not.toBeNull();
  const token = services.stageBlob(Buffer.from(saved!));
  const id = randomUUID();
  await ask('ink.import', { id, sampleId: of.sampleId, token, surface: 'screen', device: 'Test pen' });
  const again = (await ask<Kept['recording']>('ink.measure', { recordingId: id })).measured.told;
  for (const code of ['stroke-height', 'writing-time', 'speed-mean', 'pressure-mean'])
    expect(Math.abs(value(again, code) / value(told, code) - 1), code).toBeLessThan(0.002);
});

test('what came before a crash is kept: at most the last piece is lost', async () => {
  const of = written();
  await begin(of, true);
  const samples = events();
  const all = pieces(samples, 100);
  for (const [seq, bytes] of all.slice(0, -1).entries())
    await ask('ink.append', { recordingId: of.recordingId, seq, bytes });
  // Half a second a piece at 200 Hz; the last one never came.
  expect(unpackSamples(caseload.inkSoFar(of.recordingId))).toEqual(samples.slice(0, (all.length - 1) * 100));
  const kept = await ask<{ recording: { blob: string } }>('ink.finish', {
    recordingId: of.recordingId,
    palmTouches: 0,
    cancelled: 0,
  });
  expect(caseload.blob(kept.recording.blob)).not.toBeNull();
});

test('a bout that a crash cut off is in the backup, and finished from it', async () => {
  const of = written();
  await begin(of, true);
  const samples = events();
  await ask('ink.append', { recordingId: of.recordingId, seq: 0, bytes: pieces(samples, 300)[0] });
  const { name } = await caseload.withKey((identity) => makeBackup({ folder, identity, now: NOW }));
  caseload.dropInkPieces(of.recordingId);
  caseload.close();
  await restoreBackup({ folder, file: path.join(backupsFolder(folder), name), passphrase: PASSPHRASE, now: NOW });
  const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  if (!opened.ok) throw new Error(opened.code);
  caseload = services.caseload = opened.caseload;
  expect(unpackSamples(caseload.inkSoFar(of.recordingId))).toEqual(samples.slice(0, 300));
  await ask('ink.finish', { recordingId: of.recordingId, palmTouches: 0, cancelled: 0 });
});

test('refusals: nothing written, a known file, a damaged file; samples cannot be changed afterwards', async () => {
  const of = written();
  await begin(of, false);
  await expect(ask('ink.finish', { recordingId: of.recordingId, palmTouches: 0, cancelled: 0 })).rejects.toThrow(
    'ink-empty',
  );
  const file = readFileSync(new URL('../outside/data/ink/r11-text-60hz.inkml', import.meta.url));
  const bring = (bytes: Buffer) => {
    const token = services.stageBlob(bytes);
    return ask('ink.import', { id: randomUUID(), sampleId: of.sampleId, token, surface: 'tablet-paper', device: '' });
  };
  await bring(file);
  await expect(bring(file)).rejects.toThrow('ink-known');
  await expect(bring(Buffer.from('<!DOCTYPE ink><ink/>'))).rejects.toThrow('ink-unreadable');
  const done = caseload.record(of.clientId).inkRecordings.find(({ blob }) => blob !== null)!;
  await expect(ask('ink.append', { recordingId: done.id, seq: 0, bytes: '' })).rejects.toThrow('malformed-request');
});

test('a client with ink goes out and comes in whole, and is erased whole', async () => {
  const of = written();
  await begin(of, true);
  await ask('ink.append', { recordingId: of.recordingId, seq: 0, bytes: pieces(events(), 5000)[0] });
  await ask('ink.finish', { recordingId: of.recordingId, palmTouches: 0, cancelled: 0 });
  const out = caseload.exportClient(of.clientId, NOW);
  const { blob } = out.record.inkRecordings[0]!;
  expect(out.pictures.map(({ id }) => id)).toContain(blob);
  caseload.erase(of.clientId, doing);
  expect(caseload.blob(blob!)).toBeNull();
});
