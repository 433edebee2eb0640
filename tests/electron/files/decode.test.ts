import sharp from 'sharp';
import type { Sharp } from 'sharp';
import { expect, test } from 'vitest';
import { decodePage, pngOf } from '../../../electron/files/decode/decode.ts';
import { endPageWorker, lookInWorker, measureInWorker } from '../../../electron/files/measure/page-file.ts';

/** A small page: white with a dark bar on its left side. */
async function picture(width = 200, height = 120): Promise<Sharp> {
  const rgb = Buffer.alloc(width * height * 3, 255);
  for (let y = 0; y < height; y += 1) rgb.fill(20, 3 * y * width, 3 * (y * width + 30));
  const plain = await sharp(rgb, { raw: { width, height, channels: 3 } })
    .png()
    .toBuffer();
  return sharp(plain);
}
const code = async (bytes: Uint8Array, options = {}): Promise<string> =>
  decodePage(bytes, options).then(
    () => 'decoded',
    (error: { code?: string }) => error.code ?? 'no code',
  );
const darkShare = (data: Uint8Array): number => data.filter((value) => value < 128).length / data.length;

test('PNG, JPEG, WebP and TIFF give the same page, whatever the file is called', async () => {
  const source = await picture();
  for (const format of ['png', 'jpeg', 'webp', 'tiff'] as const) {
    const page = await decodePage(await source.clone().toFormat(format).toBuffer());
    expect([page.format, page.width, page.height]).toEqual([format, 200, 120]);
    expect(darkShare(page.gray.data)).toBeCloseTo(0.15, 2);
  }
});

test('16-bit PNG, CMYK JPEG, progressive JPEG, transparent PNG and palette PNG decode to the same gray', async () => {
  const source = await picture();
  const files = [
    await source.clone().toColourspace('rgb16').png().toBuffer(),
    await source.clone().toColourspace('cmyk').jpeg().toBuffer(),
    await source.clone().jpeg({ progressive: true }).toBuffer(),
    await source.clone().ensureAlpha(1).png().toBuffer(),
    await source.clone().png({ palette: true }).toBuffer(),
  ];
  for (const file of files) {
    const page = await decodePage(file);
    expect(darkShare(page.gray.data)).toBeCloseTo(0.15, 2);
    expect(page.gray.data[199]).toBeGreaterThan(245);
    expect(page.gray.data[0]).toBeLessThan(60);
  }
});

test('what is transparent counts as paper', async () => {
  const clear = await sharp({
    create: { width: 9, height: 7, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
  })
    .png()
    .toBuffer();
  expect([...new Set((await decodePage(clear)).gray.data)]).toEqual([255]);
});

test('a photo is turned upright by its EXIF note', async () => {
  const turned = await (await picture()).jpeg().withMetadata({ orientation: 6 }).toBuffer();
  const page = await decodePage(turned);
  expect([page.width, page.height]).toEqual([120, 200]);
  expect(page.gray.data[0]).toBeLessThan(60);
  expect(page.gray.data[119]).toBeLessThan(60);
  expect(page.gray.data.at(-1)).toBeGreaterThan(245);
});

test('the resolution is read from PNG, JPEG and TIFF; the 72 dpi of screens and phones is no scale', async () => {
  const source = await picture();
  for (const format of ['png', 'jpeg', 'tiff'] as const) {
    const file = await source.clone().withMetadata({ density: 300 }).toFormat(format).toBuffer();
    expect((await decodePage(file)).fileDpi).toBe(300);
    const screen = await source.clone().withMetadata({ density: 72 }).toFormat(format).toBuffer();
    expect((await decodePage(screen)).fileDpi).toBeNull();
  }
});

test('what is no picture is refused with a code', async () => {
  expect(await code(new Uint8Array())).toBe('empty-file');
  expect(await code(Buffer.from('a letter, not a picture'))).toBe('not-an-image');
  expect(await code(Buffer.from('GIF89a..............'))).toBe('not-an-image');
  expect(await code(Buffer.from('%PDF-1.7 but nothing more'))).toBe('unreadable-file');
});

test('a file that breaks off is refused, not filled up with gray', async () => {
  const source = await picture(400, 300);
  for (const format of ['png', 'jpeg', 'webp', 'tiff'] as const)
    for (const share of [0.02, 0.3, 0.8]) {
      const whole = await source.clone().toFormat(format).toBuffer();
      const part = whole.subarray(0, Math.max(12, Math.floor(whole.length * share)));
      expect(['truncated', 'unreadable-file'], `${format} ${share}`).toContain(await code(part));
    }
});

test('a huge picture is refused by its header, before any pixel is decoded', async () => {
  const file = await (await picture()).png().toBuffer();
  file.writeUInt32BE(20_000, 16);
  file.writeUInt32BE(20_000, 20);
  expect(await code(file)).toBe('too-large');
  expect(await code(await (await picture()).png().toBuffer(), { maxPixels: 23_999 })).toBe('too-large');
  expect(await code(await (await picture()).png().toBuffer(), { maxPixels: 24_000 })).toBe('decoded');
  expect(await code(Buffer.alloc(300), { maxBytes: 299 })).toBe('too-large');
});

test('damaged bytes in the middle never crash the decoder', async () => {
  const file = await (await picture(300, 200)).jpeg().toBuffer();
  for (let at = 20; at < file.length; at += 37) {
    const hurt = Buffer.from(file);
    hurt[at] = (hurt[at] as number) ^ 0xff;
    expect(await code(hurt)).not.toBe('no code');
  }
});

/** A PDF of one page, 72 x 36 pt, by default with a filled black square of 18 pt in its lower left corner. */
function smallPdf(stream = '0 0 0 rg 0 0 18 18 re f'): Buffer {
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 72 36] /Contents 4 0 R >>',
    `<< /Length ${stream.length} >>\nstream\n${stream}\nendstream`,
  ];
  let text = '%PDF-1.4\n';
  const starts = objects.map((body, index) => {
    const at = text.length;
    text += `${index + 1} 0 obj\n${body}\nendobj\n`;
    return at;
  });
  const table = text.length;
  text += `xref\n0 5\n0000000000 65535 f \n${starts.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('')}`;
  text += `trailer << /Size 5 /Root 1 0 R >>\nstartxref\n${table}\n%%EOF`;
  return Buffer.from(text, 'latin1');
}

test('a PDF page is drawn true to its size, and a page it does not have is refused', async () => {
  const page = await decodePage(smallPdf());
  expect([page.format, page.width, page.height, page.fileDpi]).toEqual(['pdf', 300, 150, 300]);
  expect(darkShare(page.gray.data)).toBeCloseTo((75 * 75) / (300 * 150), 2);
  expect(page.gray.data[149 * 300]).toBeLessThan(10);
  expect(await code(smallPdf(), { page: 2 })).toBe('page-not-found');
  expect((await pngOf(page.gray)).mime).toBe('image/png');
});

test('a PDF page of thousands of nested drawing states is refused before it is drawn; deep but honest ones are drawn', async () => {
  const nested = (depth: number) => smallPdf(`${'q '.repeat(depth)}0 0 18 18 re f ${'Q '.repeat(depth)}`);
  expect(await code(nested(3000))).toBe('unreadable-file');
  expect(await code(nested(100))).toBe('decoded');
});

test('the worker decodes, passes refusals on as codes, and can be stopped', async () => {
  const file = await (await picture()).withMetadata({ density: 200 }).png().toBuffer();
  expect(await lookInWorker(file)).toMatchObject({ format: 'png', fileDpi: 200, width: 200, height: 120 });
  const failing = async (work: Promise<unknown>): Promise<unknown> =>
    work.catch((error: { code: string }) => error.code);
  expect(await failing(lookInWorker(Buffer.from('no picture')))).toBe('not-an-image');
  expect(await failing(measureInWorker(file, { scale: null }, { timeoutMs: 1 }))).toBe('decode-timeout');
  const stop = new AbortController();
  const stopped = failing(measureInWorker(file, { scale: null }, { signal: stop.signal }));
  stop.abort();
  expect(await stopped).toBe('cancelled');
  // A refused file leaves the worker for the next page; so does a page, and ending it leaves the way to a new one.
  expect(await failing(lookInWorker(Buffer.from('no picture')))).toBe('not-an-image');
  expect(await Promise.all([lookInWorker(file), lookInWorker(file)])).toHaveLength(2);
  endPageWorker();
  expect(await lookInWorker(file)).toMatchObject({ format: 'png', fileDpi: 200, width: 200, height: 120 });
});
