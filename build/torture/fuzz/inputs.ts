/** Good files of every kind that Fairhand reads, to be spoiled: small, so that many fit into a minute. */
import { deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import { writeInkml } from '../../../renderer/ink/index.ts';
import { inkOf, strokesUpAndDown, type PenStep } from '../../demo/ink/pen-model.ts';

/** A page of 420 x 300 px with three lines of strokes, in red, green and blue. */
async function written(): Promise<Buffer> {
  const strokes = Array.from({ length: 3 }, (_, line) =>
    Array.from({ length: 12 }, (__, n) => {
      const [x, y] = [20 + n * 32, 60 + line * 80];
      return `<path d="M${x} ${y} q 6 -30 12 0 t 12 ${n % 2 ? -8 : 8}" fill="none" stroke="#123" stroke-width="4"/>`;
    }).join(''),
  ).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="420" height="300"><rect width="420" height="300" fill="#fff"/>${strokes}</svg>`;
  return sharp(Buffer.from(svg)).flatten({ background: '#fff' }).removeAlpha().png().toBuffer();
}

/** One picture of each kind of coding: PNG, JPEG, TIFF, WebP. */
export async function goodPictures(): Promise<Buffer[]> {
  const page = sharp(await written());
  const as = (): Sharp => page.clone();
  return Promise.all([
    as().png().toBuffer(),
    as().png({ palette: true, progressive: true }).toBuffer(),
    as().toColourspace('rgb16').withMetadata({ density: 300 }).png().toBuffer(),
    as().ensureAlpha(0.7).png().toBuffer(),
    as().jpeg().withMetadata({ orientation: 6, density: 300 }).toBuffer(),
    as().jpeg({ progressive: true, chromaSubsampling: '4:4:4' }).toBuffer(),
    as().toColourspace('cmyk').jpeg().toBuffer(),
    as().grayscale().jpeg().toBuffer(),
    as().tiff({ compression: 'none' }).toBuffer(),
    as().tiff({ compression: 'lzw', predictor: 'horizontal' }).toBuffer(),
    as().tiff({ compression: 'deflate', tile: true, tileWidth: 64, tileHeight: 64 }).toBuffer(),
    as().tiff({ compression: 'jpeg', pyramid: true }).toBuffer(),
    as().greyscale().threshold().toColourspace('b-w').tiff({ compression: 'ccittfax4', bitdepth: 1 }).toBuffer(),
    as().webp().toBuffer(),
    as().webp({ lossless: true }).toBuffer(),
    as().ensureAlpha(0.7).webp({ alphaQuality: 60 }).withMetadata({ orientation: 3 }).toBuffer(),
  ]);
}

function pdf(objects: Buffer[]): Buffer {
  const parts: Buffer[] = [Buffer.from('%PDF-1.5\n', 'latin1')];
  let length = parts[0]!.length;
  const add = (part: Buffer): void => {
    parts.push(part);
    length += part.length;
  };
  const starts = objects.map((body, n) => {
    const at = length;
    add(Buffer.concat([Buffer.from(`${n + 1} 0 obj\n`), body, Buffer.from('\nendobj\n')]));
    return at;
  });
  const table = length;
  const rows = starts.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
  add(
    Buffer.from(
      `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows}trailer << /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${table}\n%%EOF`,
    ),
  );
  return Buffer.concat(parts);
}

const object = (text: string): Buffer => Buffer.from(text, 'latin1');
const stream = (head: string, data: Buffer): Buffer =>
  Buffer.concat([object(`<< ${head} /Length ${data.length} >>\nstream\n`), data, object('\nendstream')]);

/** Pages with strokes, a deflated stream, text, a form inside a form, a scan as JPEG and as bare pixels. */
export async function goodPdfs(): Promise<Buffer[]> {
  const jpeg = await sharp(await written())
    .jpeg()
    .toBuffer();
  const pixels = deflateSync(Buffer.alloc(200 * 100, 200));
  const box = '/Type /Page /Parent 2 0 R /MediaBox [0 0 210 150]';
  const tree = (kids: string): Buffer[] => [
    object('<< /Type /Catalog /Pages 2 0 R >>'),
    object(`<< /Type /Pages /Kids [${kids}] /Count ${kids.split('R').length - 1} >>`),
  ];
  const lines = Buffer.from('0 0 0 RG 2 w 20 20 m 60 90 100 10 180 100 c S q 1 0 0 1 5 5 cm 0 0 18 18 re f Q');
  return [
    pdf([...tree('3 0 R'), object(`<< ${box} /Contents 4 0 R >>`), stream('', lines)]),
    pdf([...tree('3 0 R'), object(`<< ${box} /Contents 4 0 R >>`), stream('/Filter /FlateDecode', deflateSync(lines))]),
    pdf([
      ...tree('3 0 R'),
      object(`<< ${box} /Contents 4 0 R /Resources << /XObject << /I 5 0 R >> >> >>`),
      stream('', Buffer.from('q 210 0 0 150 0 0 cm /I Do Q')),
      stream(
        '/Type /XObject /Subtype /Image /Width 420 /Height 300 /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /DCTDecode',
        jpeg,
      ),
    ]),
    pdf([
      ...tree('3 0 R 6 0 R'),
      object(`<< ${box} /Contents 4 0 R /Resources << /XObject << /I 5 0 R >> >> /Rotate 90 >>`),
      stream('', Buffer.from('q 210 0 0 150 0 0 cm /I Do Q')),
      stream(
        '/Type /XObject /Subtype /Image /Width 200 /Height 100 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /FlateDecode',
        pixels,
      ),
      object(`<< ${box} /Contents 4 0 R /Resources << /XObject << /I 5 0 R >> >> >>`),
    ]),
    pdf([
      ...tree('3 0 R'),
      object(
        `<< ${box} /Contents 4 0 R /Resources << /Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> /XObject << /A 5 0 R >> >> >>`,
      ),
      stream('', Buffer.from('BT /F 18 Tf 20 80 Td (Milk and bread) Tj ET /A Do')),
      stream(
        '/Type /XObject /Subtype /Form /BBox [0 0 210 150] /Resources << /XObject << /B 6 0 R >> >>',
        Buffer.from('/B Do'),
      ),
      stream('/Type /XObject /Subtype /Form /BBox [0 0 210 150]', lines),
    ]),
  ];
}

/** InkML of two words and of a loop task, grouped and with every channel; one in device steps with differences. */
export function goodInk(): string[] {
  const device = { rateHz: 120, noiseMm: 0.02, seed: 1 };
  const from = { x: 20, y: 30 };
  const part = strokesUpAndDown(4, () => 3, 0.15);
  const lift: PenStep = { kind: 'lift', dx: 2, dy: 0, seconds: 0.2 };
  const words = [[0], [1]];
  const text = inkOf({ task: 'writing', text: 'on & on', from, steps: [...part, lift, ...part], words }, device);
  const loops = inkOf({ task: 'loops', from, steps: strokesUpAndDown(12, () => 3, 0.12, 'sine') }, device);
  const steps = `<ink><definitions><inkSource xml:id="s"><channelProperties><channelProperty channel="X" name="resolution" value="100" units="1/mm"/><channelProperty channel="Y" name="resolution" value="100" units="1/mm"/></channelProperties><traceFormat><channel name="X" units="dev"/><channel name="Y" units="dev"/><channel name="T" units="ms"/></traceFormat></inkSource></definitions><trace continuation="begin" xml:id="a">1000 1000 0,'10'20'8,"1"-3"0${', 1 -2 0'.repeat(30)}</trace><trace continuation="end" priorRef="#a">'5 '5 '8</trace></ink>`;
  return [writeInkml(text, { rateHz: 120 }), writeInkml(loops, { rateHz: 120 }), steps];
}
