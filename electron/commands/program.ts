/** `fairhand program`: drafts a home program from FINDINGS.json without a window, or prints the codes it knows. */
import { readFile, stat } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { rulesCurrent } from '../../db/rules/index.ts';
import type { RuleTable } from '../../db/types/rules.ts';
import { compose } from '../../renderer/logic/program/draft/compose.ts';
import { type Composition } from '../../renderer/logic/program/draft/stopped-draft.ts';
import { dayMinutes } from '../../renderer/logic/program/draft/program-line.ts';
import { readFindings } from '../../renderer/logic/program/facts/read-findings.ts';
import { doseWords } from '../../renderer/logic/texts/dose-words.ts';
import { texts } from '../../renderer/logic/texts/en.ts';
import type { CommandAnswer } from './answer.ts';

const usage = 'Use: fairhand program FINDINGS.json [--json], or fairhand program --list-codes [--json]';
const wrongUse = (error: string): CommandAnswer => ({ exit: 2, error });
/** A findings file is a few kilobytes. */
const largest = 5_000_000;

/** Every code that FINDINGS.json may carry. */
function codes(rules: RuleTable): Record<string, unknown> {
  const { vocabulary } = rules;
  return {
    ruleVersion: rules.version,
    findings: vocabulary.findings,
    redFlags: rules.redFlags.map(({ code, title, grade }) => ({ code, name: title, grade })),
    cautions: vocabulary.cautions.filter((each) => each.group !== 'derived'),
    diagnoses: vocabulary.diagnoses,
    measures: vocabulary.measures,
    occasions: vocabulary.occasions,
    items: rules.items.map(({ code, title, kind, tier, dependsOn, hazards }) => ({
      code,
      name: title,
      kind,
      tier,
      dependsOn,
      hazards,
    })),
    rules: rules.rules.map(({ id, because, source }) => ({ id, because, source })),
    vetoes: rules.vetoes.map(({ id, because, source, hazards, kinds, items }) => ({
      id,
      because,
      source,
      hazards,
      kinds,
      items,
    })),
  };
}

function codesInWords(rules: RuleTable): string {
  const list = (title: string, rows: { code: string; name: string }[]): string[] => [
    title,
    ...rows.map((row) => `  ${row.code.padEnd(28)} ${row.name}`),
  ];
  const { vocabulary } = rules;
  return [
    `Rule table ${rules.version}`,
    ...list('Findings (grade 0 to 3, or null = not tested)', vocabulary.findings),
    ...list(
      'Details of findings (as their own code, or in "detail")',
      vocabulary.findings.flatMap((each) =>
        each.details.map((one) => ({ code: `${each.code}-${one.code}`, name: one.name })),
      ),
    ),
    ...list(
      'Red flags',
      rules.redFlags.map(({ code, title }) => ({ code, name: title })),
    ),
    ...list(
      'Cautions and circumstances',
      vocabulary.cautions.filter((each) => each.group !== 'derived'),
    ),
    ...list('Diagnoses', vocabulary.diagnoses),
    ...list('Occasions: what the client wants to write', vocabulary.occasions),
    ...list(
      'Measures',
      vocabulary.measures.map(({ code, name, units }) => ({ code, name: `${name} (${units[0] ?? ''})` })),
    ),
  ].join('\n');
}

/** The answer of COMMANDS: exactly these fields. */
function answer(draft: Composition): Record<string, unknown> {
  return {
    ruleVersion: draft.ruleVersion,
    stopped: draft.stopped,
    tier: draft.tier,
    lines: draft.lines.map(({ item, kind, tier, text, dose, rule, findings, source, cautions, because }) => ({
      item,
      kind,
      tier,
      text,
      dose: { ...dose, text: doseWords(dose, texts.dose) },
      minutes: dayMinutes(dose),
      rule,
      findings,
      source,
      cautions,
      because,
    })),
    vetoed: draft.vetoed,
    page: draft.page,
  };
}

function inWords(draft: Composition): string {
  const stop = draft.stop?.flags.map((flag) => `STOP: ${flag.title}. ${flag.doNow.join(' ')}`) ?? [];
  const lines = draft.lines.map((line) => {
    const head = `- ${line.title} (${line.kind}, tier ${line.tier}, ${line.rule ?? 'own'}): ${doseWords(line.dose, texts.dose)}`;
    return [head, `  ${line.because}`, ...line.cautions.map((text) => `  ! ${text}`)].join('\n');
  });
  const vetoed = draft.vetoed
    .filter((each) => each.item !== 'program')
    .map((each) => `- ${each.item} (${each.rule}): ${each.because}`);
  return [
    `Rule table ${draft.ruleVersion}, tier ${draft.tier}`,
    ...stop,
    ...(lines.length > 0 ? ['', 'Program', ...lines] : ['', 'No lines.']),
    ...(draft.page.length > 0 ? ['', 'For the whole page', ...draft.page.map((text) => `- ${text}`)] : []),
    ...(vetoed.length > 0 ? ['', 'Not given, for safety', ...vetoed] : []),
  ].join('\n');
}

/** A JSON file's content, or a sentence. */
async function readJson(path: string): Promise<{ data: unknown } | { error: string }> {
  let text: string;
  try {
    const { size } = await stat(path);
    if (size > largest) return { error: `"${path}" is larger than 5 MB: that is no findings file.` };
    text = await readFile(path, 'utf8');
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return { error: missing ? `There is no file "${path}".` : `"${path}" cannot be read.` };
  }
  try {
    return { data: JSON.parse(text.replace(/^\uFEFF/, '')) as unknown };
  } catch {
    return { error: `"${path}" is not JSON.` };
  }
}

/** Runs `program` with the arguments after the command's name. Input that cannot be read is wrong use (exit 2). */
export async function programCommand(argv: readonly string[]): Promise<CommandAnswer> {
  let given: { values: { 'list-codes'?: boolean | undefined }; positionals: string[] };
  try {
    given = parseArgs({
      args: [...argv],
      options: { 'list-codes': { type: 'boolean' }, json: { type: 'boolean' }, data: { type: 'string' } },
      strict: true,
      allowPositionals: true,
    });
  } catch (error) {
    const option = /'(-[^' ]*)/.exec((error as Error).message)?.[1] ?? '';
    return wrongUse(`The option ${option} is not known, or lacks its value. ${usage}`);
  }
  const rules = rulesCurrent();
  if (given.values['list-codes']) {
    if (given.positionals.length > 0) return wrongUse(`--list-codes takes no file. ${usage}`);
    return { exit: 0, json: codes(rules), text: codesInWords(rules) };
  }
  const [path, more] = given.positionals;
  if (path === undefined || more !== undefined) return wrongUse(`One findings file is needed. ${usage}`);
  const file = await readJson(path);
  if ('error' in file) return wrongUse(file.error);
  const read = readFindings(file.data, rules);
  if (!read.ok) return wrongUse(read.reason);
  const draft = compose(read.input, rules);
  return { exit: 0, json: answer(draft), text: inWords(draft) };
}
