/**
 * A screen as a screen reader is told it: the browser's tree of roles, names and states (Playwright's aria snapshot), its
 * faults, and the same written down. Rules: WCAG 2.2, 1.3.1 (headings in order), 2.4.6, 4.1.2 (each control has a name).
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';

/** Roles that say nothing without a name; a group is left out, since the summary of a folded part is no name of it. */
const NAMED =
  /^(button|link|textbox|searchbox|combobox|checkbox|radio|switch|slider|spinbutton|tab|tabpanel|tablist|listbox|menuitem|option|img|region|radiogroup|toolbar|navigation|form|dialog|table|grid|progressbar|heading|columnheader)$/;

interface Told {
  role: string;
  name: string;
  level: number | null;
}

const toldLines = (tree: string): Told[] =>
  tree.split('\n').flatMap((line) => {
    const found = /^\s*- '?([a-z]+)(?: "((?:[^"\\]|\\.)*)"| (\/.*\/))?/.exec(line);
    const role = found?.[1];
    if (!found || !role || role === 'text') return [];
    return [{ role, name: found[2] ?? found[3] ?? '', level: Number(/\[level=(\d)\]/.exec(line)?.[1] ?? 0) || null }];
  });

/** What a screen reader could not make sense of. */
export function faultsOf(screen: string, tree: string): string[] {
  const told = toldLines(tree);
  const faults = told
    .filter(({ role, name }) => NAMED.test(role) && !/[\p{L}\d]/u.test(name))
    .map(({ role, name }) => `${role} without a name${name ? `: ${name}` : ''}`);
  const headings = told.filter((one) => one.role === 'heading');
  // A page that is shown as it prints has a title of its own.
  const tops = screen === 'Pages' ? headings.slice(0, 1) : headings;
  if (tops.filter(({ level }) => level === 1).length !== 1) faults.push('not one heading of level 1');
  headings.forEach(({ level, name }, at) => {
    const before = headings[at - 1]?.level ?? 0;
    if (level! > before + 1) faults.push(`heading of level ${level} below level ${before}: ${name}`);
  });
  const noise = /undefined|NaN|\[object|\bnull\b/.exec(tree);
  if (noise) faults.push(`says ${noise[0]}`);
  return faults;
}

export const treeOf = (page: Page): Promise<string> => page.locator('#app').ariaSnapshot();

const folder = fileURLToPath(new URL('./trees/', import.meta.url));
/** With TREES=write the trees are written beside this file, to be read. */
export function writeTree(screen: string, tree: string): void {
  if (process.env['TREES'] !== 'write') return;
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, `${screen}.yml`), `${tree}\n`);
}
