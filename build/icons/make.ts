/** Draws renderer/icon.svg at the sizes that Windows, macOS and Linux want. Run by hand when the drawing changes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const at = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const drawing = readFileSync(at('../../renderer/icon.svg'));
const png = (size: number) =>
  sharp(drawing, { density: (72 * size) / 64 })
    .resize(size, size)
    .png()
    .toBuffer();

/** Windows icon file: a directory of PNG pictures (ICONDIR and ICONDIRENTRY of the Windows documentation). */
async function ico(sizes: readonly number[]): Promise<Buffer> {
  const pictures = await Promise.all(sizes.map(png));
  const head = Buffer.alloc(6 + 16 * sizes.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(sizes.length, 4);
  let offset = head.length;
  for (const [index, picture] of pictures.entries()) {
    const entry = 6 + 16 * index;
    const size = sizes[index] ?? 0;
    // 0 stands for 256.
    head.writeUInt8(size % 256, entry);
    head.writeUInt8(size % 256, entry + 1);
    head.writeUInt16LE(1, entry + 4);
    head.writeUInt16LE(32, entry + 6);
    head.writeUInt32LE(picture.length, entry + 8);
    head.writeUInt32LE(offset, entry + 12);
    offset += picture.length;
  }
  return Buffer.concat([head, ...pictures]);
}

/** macOS icon file: named blocks of PNG pictures. */
async function icns(blocks: readonly (readonly [name: string, size: number])[]): Promise<Buffer> {
  const parts = await Promise.all(
    blocks.map(async ([name, size]) => {
      const picture = await png(size);
      const head = Buffer.alloc(8);
      head.write(name, 'latin1');
      head.writeUInt32BE(picture.length + 8, 4);
      return Buffer.concat([head, picture]);
    }),
  );
  const body = Buffer.concat(parts);
  const head = Buffer.alloc(8);
  head.write('icns', 'latin1');
  head.writeUInt32BE(body.length + 8, 4);
  return Buffer.concat([head, body]);
}

writeFileSync(at('icon.png'), await png(512));
writeFileSync(at('icon.ico'), await ico([16, 24, 32, 48, 64, 256]));
writeFileSync(
  at('icon.icns'),
  await icns([
    ['ic07', 128],
    ['ic08', 256],
    ['ic09', 512],
    ['ic10', 1024],
  ]),
);
