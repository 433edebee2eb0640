/** `fairhand summary --client CODE --out FILE.pdf`: the family page of a client, printed by the hidden window. */
import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { caseloadExists } from '../../db/index.ts';
import { printSummary } from '../browser/walk.ts';
import type { HiddenWindow } from '../browser/hidden.ts';
import { hiddenProblems, inHiddenWindow, RequestRefused } from '../browser/hidden.ts';
import type { MessageCode } from '../contract/messages.ts';
import { sentenceFor } from '../contract/messages.ts';
import { dataFolder, FolderProblem, thisMachine } from '../data-folder.ts';
import type { CommandAnswer } from './answer.ts';
import { optionProblem, wrongUse } from './answer.ts';
import { readPassphrase } from './passphrase.ts';

const usage = 'Use: fairhand summary --client CODE --out FILE.pdf [--data DIR] [--json]';

interface Wanted {
  client: string;
  out: string;
  folder: string;
}

function read(argv: readonly string[]): Wanted | { error: string } {
  const text = { type: 'string' } as const;
  let values: { client?: string | undefined; out?: string | undefined; data?: string | undefined };
  try {
    const options = { client: text, out: text, data: text, json: { type: 'boolean' } } as const;
    ({ values } = parseArgs({ args: [...argv], options, strict: true }));
  } catch (error) {
    return { error: `${optionProblem(error)} ${usage}` };
  }
  if (!values.client) return { error: `The client's code is missing. ${usage}` };
  if (!values.out) return { error: `The file to write is missing. ${usage}` };
  const out = path.resolve(values.out);
  if (!existsSync(path.dirname(out))) return { error: `There is no folder ${path.dirname(out)} to write into.` };
  try {
    const folder = dataFolder(values.data ?? null, thisMachine());
    return { client: values.client, out, folder };
  } catch (error) {
    if (error instanceof FolderProblem) return { error: error.message };
    throw error;
  }
}

async function print({ page, ask }: HiddenWindow, wanted: Wanted, passphrase: string): Promise<boolean> {
  await ask('app.unlock', { passphrase });
  const clients = (await ask('caseload.list', {})) as { id: string; code: string }[];
  const client = clients.find(({ code }) => code === wanted.client);
  if (!client) throw new RequestRefused('no-such-client', undefined);
  await page.reload();
  await printSummary(page, client.code);
  return true;
}

/** Runs `summary` with the arguments after the command's name. */
export async function summaryCommand(argv: readonly string[]): Promise<CommandAnswer> {
  const wanted = read(argv);
  if ('error' in wanted) return wrongUse(wanted.error);
  if (!caseloadExists(wanted.folder)) return wrongUse(sentenceFor('no-caseload'));
  const passphrase = await readPassphrase(process.env, process.stdin);
  if (passphrase === null) {
    return wrongUse('The passphrase is missing. Set FAIRHAND_PASSPHRASE, or type it on standard input.');
  }
  let written = false;
  const save = async ({ bytes }: { bytes: Uint8Array }) => {
    await writeFile(wanted.out, bytes);
    written = true;
    return { saved: true, name: path.basename(wanted.out) };
  };
  try {
    const outcome = await inHiddenWindow({ dataFolder: wanted.folder, save }, (window) =>
      print(window, wanted, passphrase),
    );
    if ('problem' in outcome) return wrongUse(hiddenProblems[outcome.problem]);
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
    if (error.code === 'no-such-client') {
      return wrongUse(`There is no client with the code ${JSON.stringify(wanted.client)} in this caseload.`);
    }
    return wrongUse(sentenceFor(error.code as MessageCode, error.detail));
  }
  if (!written) return { exit: 2, error: `The page could not be written to ${wanted.out}.` };
  return { exit: 0, json: { out: wanted.out }, text: wanted.out };
}
