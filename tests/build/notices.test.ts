/** Third-party notices: nothing ships without its licence. SPDX License List (spdx.org/licenses) names the licences. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { BUNDLED, notices, noticesText } from '../../build/package/notices.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const all = notices();

test('every run-time package of package.json is named, fonts and native parts too', () => {
  const { dependencies } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
    dependencies: Record<string, string>;
  };
  const names = all.map(({ name }) => name);
  const shipped = Object.keys(dependencies).filter((name) => name !== 'playwright-core');
  expect(names).toEqual(expect.arrayContaining([...shipped, ...BUNDLED]));
  expect(names.some((name) => name.startsWith('@img/sharp-'))).toBe(true);
});

test('licences are ones that allow shipping, and the fonts bring the text of theirs', () => {
  const allowed = /^(MIT|ISC|0BSD|BSD-[23]-Clause|Apache-2\.0|OFL-1\.1|LGPL-3\.0-or-later)$/;
  for (const { name, license } of all) {
    for (const one of license.split(/ AND | OR /)) expect(one.replace(/[()]/g, ''), name).toMatch(allowed);
  }
  for (const font of all.filter(({ name }) => name.startsWith('@fontsource/'))) {
    expect(font.text, font.name).toContain('SIL OPEN FONT LICENSE');
  }
});

test('what the window bundles is what renderer imports', () => {
  const imported = new Set<string>();
  for (const file of readdirSync(path.join(root, 'renderer'), { recursive: true, encoding: 'utf8' })) {
    if (!/\.(ts|svelte|css)$/.test(file)) continue;
    const text = readFileSync(path.join(root, 'renderer', file), 'utf8');
    for (const [, name] of text.matchAll(/(?:from|import)\s*'(@?[a-z][^'./]*(?:\.js)?(?:\/[a-z][^'/]*)?)/g)) {
      const parts = name!.split('/');
      imported.add(name!.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0]!);
    }
  }
  const named = new Set(all.map(({ name }) => name));
  expect([...imported].filter((name) => !named.has(name))).toEqual([]);
});

test('each licence text stands once', () => {
  const text = noticesText(all);
  expect(text).toContain('SQLite');
  expect(text.match(/SIL OPEN FONT LICENSE Version 1\.1 - /g)?.length ?? 0).toBeLessThanOrEqual(2);
});
