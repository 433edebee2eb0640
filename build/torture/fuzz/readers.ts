/**
 * What reads each kind of file, as the window or the command line has it read. A reader answers a word for the count
 * ('read', or the code of a refusal) and throws when anything but a sentence came back.
 */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { openCaseload, type Caseload } from '../../../db/index.ts';
import { rulesCurrent } from '../../../db/rules/index.ts';
import { run as runCommand } from '../../../electron/command-line.ts';
import { messages } from '../../../electron/contract/messages.ts';
import { tarOf, type TarMember } from '../../../electron/files/backup/tar.ts';
import { readClientFile, writeClientFile } from '../../../electron/files/backup/client-file.ts';
import { decodePage, pngOf, DECODE_LIMITS } from '../../../electron/files/decode/decode.ts';
import { dispatch } from '../../../electron/handlers/dispatch.ts';
import { Services } from '../../../electron/handlers/services.ts';
import { drawInk, InkRefusal, measureInk, readInkml, writeInkml } from '../../../renderer/ink/index.ts';
import { noClinicRules, writeClinicRules } from '../../../renderer/logic/program/clinic/own-rules.ts';
import { measurePage } from '../../../renderer/measure/measure-page.ts';
import { answer, client, page, sample, visit } from '../../../tests/db/plain-facts.ts';
import { freshCaseloadIn, NOW, PASSPHRASE } from '../children.ts';
import { pick } from '../random.ts';
import { goodInk, goodPdfs, goodPictures } from './inputs.ts';
import { mutatedJson, mutatedOften, mutatedText } from './mutate.ts';

export const KINDS = ['picture', 'pdf', 'client', 'rules', 'findings', 'ink'] as const;
export type Kind = (typeof KINDS)[number];

/** Reads one spoiled input made with `random`. */
export type Reader = (random: () => number) => Promise<string>;

const doing = { at: NOW, by: 'TY' };

/** A refusal counts only by a code that has a sentence. */
function codeOf(error: unknown): string {
  const code = (error as { code?: unknown } | null)?.code;
  if (typeof code === 'string' && code !== 'internal' && Object.hasOwn(messages, code)) return code;
  throw error;
}

/** A sentence for a person: no trace of code, no path of ours. */
function isSentence(text: string): boolean {
  return text.length > 0 && !/\n\s+at |node_modules|\/tmp\/|\b(Type|Range|Reference|Syntax)Error\b/.test(text);
}

/** Larger pages take their time honestly; here it is hangs that are looked for. */
const MEASURED_UP_TO = 2_000_000;

async function decode(bytes: Buffer): Promise<string> {
  try {
    const { gray, format, fileDpi } = await decodePage(bytes);
    const { width, height, data } = gray;
    if (width * height !== data.length || data.length > DECODE_LIMITS.maxPixels) throw new Error('wrong size');
    if (format === 'tiff' || format === 'pdf') await pngOf({ width, height, data });
    if (data.length <= MEASURED_UP_TO) {
      const scale = { pxPerMm: (fileDpi ?? 300) / 25.4, source: 'file-dpi' as const };
      JSON.stringify(measurePage(gray, { scale, text: 'Milk and bread' }));
    }
    return 'read';
  } catch (error) {
    return codeOf(error);
  }
}

async function pictures(): Promise<Reader> {
  const good = await goodPictures();
  return (random) => decode(mutatedOften(pick(random, good), random, 200));
}

async function pdfs(): Promise<Reader> {
  const good = await goodPdfs();
  return (random) => {
    const one = pick(random, good);
    const spoiled =
      random() < 0.6
        ? Buffer.from(mutatedText(one.toString('latin1'), random), 'latin1')
        : mutatedOften(one, random, one.length);
    return decode(spoiled);
  };
}

function filled(caseload: Caseload): string {
  const { id } = caseload.put('client', client({ code: 'F1', name: 'Fuzzed Person' }), doing);
  const { id: visitId } = caseload.put('visit', visit(id), doing);
  caseload.put('visit', visit(id, { date: '2026-01-02', told: 'line\n"two"' }), doing);
  caseload.put('intakeAnswer', answer(id, visitId), doing);
  const taken = caseload.put('sample', sample(id, visitId), doing);
  const blob = caseload.putBlob(id, 'image/png', Buffer.from('original bytes'), doing);
  caseload.put('samplePage', page({ clientId: id, visitId, sampleId: taken.id }, blob), doing);
  return id;
}

/** Client files: bytes of the tar, or its JSON, spoiled. What comes in whole is erased again. */
async function clients(folder: string): Promise<Reader> {
  const source = await freshCaseloadIn(path.join(folder, 'from'));
  const id = filled(source);
  const file = path.join(folder, 'client.tar');
  await writeClientFile(source, id, file, NOW);
  const good = source.exportClient(id, NOW);
  const picture: TarMember = { name: `pictures/${good.pictures[0]!.id}`, data: Buffer.from('original bytes') };
  const bytes = await tarOf([{ name: 'client.json', data: Buffer.from(JSON.stringify(good)) }, picture], 0);
  source.close();
  const caseload = await freshCaseloadIn(path.join(folder, 'into'));
  const kept = JSON.stringify(caseload.counts());
  return async (random) => {
    const chance = random();
    const json = (): Buffer =>
      Buffer.from(
        chance < 0.75 ? JSON.stringify(mutatedJson(good, random)) : mutatedText(JSON.stringify(good), random),
      );
    const name = random() < 0.05 ? '../../outside.json' : 'client.json';
    writeFileSync(
      file,
      chance < 0.4 ? mutatedOften(bytes, random, 1024) : await tarOf([{ name, data: json() }, picture], 0),
    );
    const before = caseload.lastSeq();
    try {
      const brought = await readClientFile(caseload, file, doing);
      if (caseload.record(brought).client.id !== brought) throw new Error('another client came in');
      caseload.erase(brought, doing);
      return 'read';
    } catch (error) {
      const code = codeOf(error);
      if (caseload.lastSeq() !== before)
        throw new Error(`refused with ${code}, but something was written`, { cause: error });
      const now = JSON.stringify({ ...caseload.counts(), trail: 0, blob: 0 });
      if (now !== JSON.stringify({ ...(JSON.parse(kept) as object), trail: 0, blob: 0 }))
        throw new Error('rows changed', { cause: error });
      return code;
    }
  };
}

async function ask(
  services: Services,
  name: string,
  input: unknown,
): Promise<{ ok: boolean; code: string; value: unknown }> {
  return JSON.parse(await dispatch(services, JSON.stringify({ name, input }))) as never;
}

/** Rule files: read as a colleague's file; what is accepted is taken into use, drafted with, and taken out again. */
async function ruleFiles(folder: string): Promise<Reader> {
  const caseload = await freshCaseloadIn(folder);
  filled(caseload);
  const opened = { folder, port: null as never, shell: 'browser' as const, version: '0', demoSource: null };
  const services = new Services({ ...opened, now: () => new Date(NOW), emit: () => {} });
  services.caseload = caseload;
  const shipped = rulesCurrent();
  const own = { ...shipped.items.find((item) => item.kind === 'exercise')!, code: 'own-dough', title: 'Dough' };
  const rule = { ...shipped.rules[0]!, id: 'C01' };
  const good = {
    ...noClinicRules(shipped),
    revision: 3,
    items: [own],
    rules: [rule],
    thresholds: { [shipped.thresholds[0]!.code]: shipped.thresholds[0]!.value },
    off: [],
  };
  const text = writeClinicRules(good);
  return async (random) => {
    const spoiled = random() < 0.7 ? JSON.stringify(mutatedJson(good, random), null, 2) : mutatedText(text, random);
    const read = await ask(services, 'rules.readFile', { text: spoiled });
    if (!read.ok) return codeOf(read);
    const { changes, problems } = read.value as { changes: unknown; problems: { line: number; reason: string }[] };
    if (changes === null) {
      const lines = spoiled.split('\n').length;
      if (problems.length === 0) throw new Error('refused without a reason');
      for (const { line, reason } of problems) {
        if (line < 1 || line > lines || !isSentence(reason)) throw new Error(`no sentence: line ${line} ${reason}`);
      }
      return 'refused with line and reason';
    }
    for (const [name, input] of [
      ['rules.try', { changes }],
      ['rules.saveChanges', { changes }],
      ['rules.current', {}],
      ['rules.saveChanges', { changes: null }],
    ] as const) {
      const answered = await ask(services, name, input);
      if (!answered.ok) throw new Error(`accepted, then ${name} refused with ${answered.code}`);
    }
    return 'read';
  };
}

/** Findings files of the command line. */
async function findings(folder: string): Promise<Reader> {
  const file = path.join(folder, 'findings.json');
  const rules = rulesCurrent();
  const good = {
    version: 1,
    findings: rules.vocabulary.findings.slice(0, 6).map(({ code }, n) => ({ code, grade: n % 4 })),
    redFlags: [],
    cautions: [rules.vocabulary.cautions[0]!.code],
    diagnoses: [rules.vocabulary.diagnoses[0]!.code],
    measures: [],
  };
  return async (random) => {
    const spoiled =
      random() < 0.7 ? JSON.stringify(mutatedJson(good, random)) : mutatedText(JSON.stringify(good), random);
    writeFileSync(file, spoiled);
    const answered = await runCommand(['program', file, '--json']);
    if (answered.exit === 0) return 'read';
    if (answered.exit !== 2 || !isSentence((answered.error ?? '').replaceAll(file, 'FILE'))) {
      throw new Error(`exit ${answered.exit}: ${(answered.error ?? '').slice(0, 200)}`);
    }
    return 'refused with a sentence';
  };
}

/** Ink files: read, measured, drawn and written again, or refused with a sentence. */
function inks(): Promise<Reader> {
  const good = goodInk();
  const readOne = (random: () => number): string => {
    const one = pick(random, good);
    const chance = random();
    const bytes = chance < 0.5 ? Buffer.from(mutatedText(one, random)) : mutatedOften(Buffer.from(one), random, 1500);
    try {
      const document = readInkml(bytes);
      const result = measureInk(document);
      if (result.measures.some(({ value, why }) => (value === null) !== (why !== null) && value === null))
        throw new Error('a null without a reason');
      if (result.measures.some(({ value }) => value !== null && !Number.isFinite(value))) throw new Error('no number');
      if (drawInk(document) && document.traces.length > 0)
        readInkml(Buffer.from(writeInkml(document, { rateHz: null })));
      return 'read';
    } catch (error) {
      if (!(error instanceof InkRefusal)) throw error;
      if (!isSentence(error.message)) throw new Error('no sentence', { cause: error });
      return error.code;
    }
  };
  return Promise.resolve((random) => Promise.resolve().then(() => readOne(random)));
}

/** @param folder a folder of the reader's own, the only one that it may write to */
export function readerOf(kind: Kind, folder: string): Promise<Reader> {
  const make = {
    picture: pictures,
    pdf: pdfs,
    client: clients,
    rules: ruleFiles,
    findings,
    ink: inks,
  } satisfies Record<Kind, (folder: string) => Promise<Reader>>;
  return make[kind](folder);
}

/** The caseload that took everything in still holds: opened anew, its pages, references and trail are whole. */
export async function stillWhole(folder: string): Promise<boolean> {
  const opened = await openCaseload({ folder, passphrase: PASSPHRASE, now: NOW });
  if (!opened.ok) return false;
  const whole = opened.caseload.quickCheck() === 'ok' && opened.caseload.verifyTrail().whole;
  opened.caseload.close();
  return whole;
}
