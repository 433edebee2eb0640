/**
 * Prints the pages of demo clients, to be looked at: `npx node build/demo/print-pages.ts FOLDER [LANGUAGE …]`, after
 * `npm start -- --demo` has made dist/demo. The same components, style sheet and engine as in the window; one PDF for
 * each client, language, size of print and paper. Exit 1 when a sheet is fuller than its paper.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { createServer } from 'vite';
import { openCaseload } from '../../db/index.ts';
import { rulesInUse } from '../../db/rules/in-use.ts';
import type { PageKind } from '../../db/types/page.ts';
import type { ClientRecord } from '../../db/types/record.ts';
import { demoPassphrase } from '../../electron/handlers/app.ts';
import { practiceRequestOf } from '../../renderer/logic/pages/practice/practice-request.ts';
import type { SheetName } from '../../renderer/logic/pages/practice/sheet-sizes.ts';
import { buildPacket } from '../../renderer/logic/pages/sheet/build-packet.ts';
import type { Packet } from '../../renderer/logic/pages/sheet/packet.ts';
import { emptyWords, pageKinds } from '../../renderer/logic/pages/sheet/page-choices.ts';
import type { PageInput } from '../../renderer/logic/pages/sheet/page-facts.ts';
import { limitsOf } from '../../renderer/logic/rules/limits.ts';
import { languageOf } from '../../renderer/logic/texts/known-languages.ts';
import { type Language, languages } from '../../renderer/logic/texts/languages.ts';
import type * as pagePrinter from '../../tests/logic/pages/html.ts';
import { demoClinic, people } from './people.ts';

type PagePrinter = typeof pagePrinter;

const root = path.join(import.meta.dirname, '../..');
const [folder, ...chosen] = process.argv.slice(2);
if (!folder) {
  console.error('The folder for the pages is missing.');
  process.exit(2);
}
mkdirSync(folder, { recursive: true });
const rules = rulesInUse(null);
const today = new Date().toISOString().slice(0, 10);

function inputOf(record: ClientRecord, sheet: SheetName, locale: string): PageInput {
  return {
    record,
    visitId: [...record.visits].sort((a, b) => a.date.localeCompare(b.date)).at(-1)?.id ?? '',
    today,
    locale,
    sheet,
    clinic: { name: demoClinic.clinic, therapist: demoClinic.initials, credentials: demoClinic.credentials },
    useCode: false,
    setupTable: rules.setup,
    limits: limitsOf(rules),
  };
}

const packetOf = (kind: PageKind, input: PageInput, language: Language, pt: 14 | 20): Packet =>
  buildPacket(
    kind,
    input,
    {
      pt,
      withPictures: true,
      withLog: true,
      withCard: true,
      withPractice: true,
      withDrawings: true,
      language,
      withEnglish: false,
      words: emptyWords(),
      practice: practiceRequestOf(input, rules, languages[language].texts),
      withFurther: true,
      withDaily: kind === 'practice-pages',
    },
    rules,
  );

const vite = await createServer({
  root,
  configFile: false,
  plugins: [svelte({ configFile: false })],
  server: { middlewareMode: true, ws: false },
  appType: 'custom',
  logLevel: 'error',
});
// Components are compiled by vite, so what draws them is loaded through it too.
const { htmlOf, printHtml } = (await vite.ssrLoadModule('/tests/logic/pages/html.ts')) as PagePrinter;
const { default: SheetView } = (await vite.ssrLoadModule('/renderer/window/pages/SheetView.svelte')) as {
  default: Parameters<typeof htmlOf>[0];
};

const opened = await openCaseload({
  folder: path.join(root, 'dist/demo'),
  passphrase: demoPassphrase,
  now: new Date().toISOString(),
});
if (!opened.ok) throw new Error(`The demo caseload could not be opened: ${opened.code}.`);
const { caseload } = opened;
const blobUrl = (id: string): string => {
  const blob = caseload.blob(id);
  return blob ? `data:${blob.mime};base64,${blob.data.toString('base64')}` : '';
};
const known = new Map(caseload.clients().map((row) => [row.name, row.id]));
let overfull = 0;
for (const person of people.slice(0, 3)) {
  const record = caseload.record(known.get(person.client.name) ?? '');
  for (const language of (chosen.length > 0 ? chosen : ['en', 'es']).map(languageOf))
    for (const pt of [14, 20] as const)
      for (const sheet of ['A4', 'Letter'] as const) {
        const input = inputOf(record, sheet, sheet === 'Letter' ? 'en-US' : 'en-GB');
        const packets = pageKinds.map(({ kind }) => packetOf(kind, input, language, pt));
        const sheets = packets.flatMap((packet) => packet.sheets);
        const printed = await printHtml(htmlOf(SheetView, { sheets, blobUrl }));
        const name = [person.client.code, language, pt, sheet].join('_');
        writeFileSync(path.join(folder, `${name}.pdf`), printed.pdf);
        const full = printed.overflow.flatMap((px, i) => (px > 1 ? [i + 1] : []));
        overfull += full.length;
        const of = packets.map((packet) => `${packet.kind} ${packet.sheets.length}`).join(', ');
        console.log(`${name}: ${of}${full.length > 0 ? `. OVERFULL: ${full.join(', ')}` : ''}`);
      }
}
caseload.close();
await vite.close();
process.exit(overfull > 0 ? 1 : 0);
