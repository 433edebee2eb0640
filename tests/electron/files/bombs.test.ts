/** Files made to keep a core busy: ended by declared limits on steps and processor time, with a sentence. */
import { deflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { lookInWorker, showInWorker } from '../../../electron/files/measure/page-file.ts';
import { DecodeError } from '../../../electron/files/decode/decode-error.ts';

/** A one-page PDF of these objects; number 1 is the catalog, 2 the pages, 3 the page, 4 its content (ISO 32000-1, 7.5). */
function pdfOf(content: string, resources: string, further: string[] = []): Uint8Array {
  const stream = (dict: string, text: string) => {
    const packed = deflateSync(text);
    return [
      Buffer.from(`<<${dict} /Filter /FlateDecode /Length ${packed.length}>> stream\n`),
      packed,
      Buffer.from('\nendstream'),
    ];
  };
  const objects: Buffer[][] = [
    [Buffer.from('<</Type /Catalog /Pages 2 0 R>>')],
    [Buffer.from('<</Type /Pages /Kids [3 0 R] /Count 1>>')],
    [Buffer.from(`<</Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R /Resources <<${resources}>>>>`)],
    stream('', content),
    ...further.map((text) => {
      const [dict = '', body = ''] = text.split('\u0000');
      return stream(dict, body);
    }),
  ];
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n')];
  const offsets: number[] = [];
  const length = () => parts.reduce((sum, part) => sum + part.length, 0);
  objects.forEach((object, index) => {
    offsets.push(length());
    parts.push(Buffer.from(`${index + 1} 0 obj\n`), ...object, Buffer.from('\nendobj\n'));
  });
  const start = length();
  const table = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  parts.push(
    Buffer.from(
      `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}trailer <</Size ${objects.length + 1} /Root 1 0 R>>\nstartxref\n${start}\n%%EOF\n`,
    ),
  );
  return Buffer.concat(parts);
}

/** Code and seconds of processor time of all threads. */
async function cost(work: () => Promise<unknown>): Promise<{ code: string; seconds: number }> {
  const before = process.cpuUsage();
  const code = await work().then(
    () => 'read',
    (error: unknown) => (error instanceof DecodeError ? error.code : String(error)),
  );
  const { user, system } = process.cpuUsage(before);
  return { code, seconds: (user + system) / 1e6 };
}

test('a plain page of this kind is read', async () => {
  const plain = pdfOf('10 w 100 100 m 300 500 l S', '');
  expect((await cost(() => lookInWorker(plain))).code).toBe('read');
});

test('a million steps in some kilobytes are too many before anything is drawn', async () => {
  const bomb = pdfOf('0 0 m 595 842 l S\n'.repeat(500_000), '');
  expect(bomb.length).toBeLessThan(50_000);
  const { code, seconds } = await cost(() => lookInWorker(bomb));
  expect(code).toBe('too-large');
  expect(seconds).toBeLessThan(10);
}, 60_000);

test('forms inside forms inside forms end by processor time or memory, not by the clock on the wall', async () => {
  const levels = 9;
  const forms = Array.from({ length: levels }, (_, level) => {
    const inner = level === levels - 1 ? '' : `/Resources <</XObject <</F ${6 + level} 0 R>>>>`;
    const body = level === levels - 1 ? '0 0 m 595 842 l S' : '/F Do '.repeat(10);
    return `/Type /XObject /Subtype /Form /BBox [0 0 595 842] ${inner}\u0000${body}`;
  });
  const bomb = pdfOf('/F Do '.repeat(10), '/XObject <</F 5 0 R>>', forms);
  const { code, seconds } = await cost(() => showInWorker(bomb, { cpuMs: 4000 }));
  expect(['decode-timeout', 'too-large', 'unreadable-file']).toContain(code);
  expect(seconds).toBeLessThan(12);
}, 90_000);

test('the limit is processor time: a small one ends a plain page', async () => {
  const page = pdfOf('0 0 m 595 842 l S\n'.repeat(90_000), '');
  expect((await cost(() => lookInWorker(page, { cpuMs: 50 }))).code).toBe('decode-timeout');
}, 60_000);
