import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { docHeight } from '../../renderer/pages/layout.ts';
import { familyPage, type FamilyOptions } from '../../renderer/pages/family.ts';
import SheetView from '../../renderer/pages/SheetView.svelte';
import { texts } from '../../renderer/pages/texts.ts';
import { chromiumPath, htmlOf, noChromium, printHtml } from './html.ts';
import { input } from './record.ts';

const options: FamilyOptions = { pt: 14, pictures: [], when: '', bring: '', ownWords: '' };

test.skipIf(!chromiumPath)(`x${noChromium}`, async () => {
  const packets = ([14, 16, 20] as const).flatMap(pt => (['A4','Letter'] as const).map(sheet => familyPage(input({sheet}), { ...options, pt }, texts)));
  console.log(packets.map(p=>[p.sheets.length, p.warnings]));
  const r = await printHtml(htmlOf(SheetView, { sheets: packets.flatMap(p=>p.sheets) }));
  writeFileSync('/tmp/f.pdf', r.pdf);
  console.log(r.overflow, r.heights, packets.flatMap(p=>p.sheets).map(s=>docHeight(s as never)*(s as {pt:number}).pt*25.4/72));
});
