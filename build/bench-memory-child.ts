/** Measures one gray page and prints how many bytes the process grew at its peak. Started by bench-memory.ts only. */
import { readFileSync } from 'node:fs';
import { measurePage } from '../renderer/sample/measure/page.ts';

const [file = '', width = '', height = ''] = process.argv.slice(2);
const options = { scale: { pxPerMm: 300 / 25.4, source: 'dpi' as const } };
const size = { width: Number(width), height: Number(height) };
const data = new Uint8Array(readFileSync(file));
// A strip of the page warms the code without taking the memory of the page.
const strip = Math.min(600, size.height);
measurePage({ width: size.width, height: strip, data: data.slice(0, size.width * strip) }, options);
(globalThis as { gc?: () => void }).gc?.();
const before = Math.max(process.memoryUsage.rss(), 0);
measurePage({ ...size, data }, options);
const peak = process.resourceUsage().maxRSS * 1024;
process.stdout.write(String(Math.max(0, peak - before)));
