#!/usr/bin/env node
/**
 * Stands where electron-builder calls fpm for the Debian package. The fpm that it would download lies outside the
 * registries; all that a deb takes is dpkg-deb, which each Debian has. Understands the options that electron-builder
 * gives (app-builder-lib, targets/FpmTarget.js) and nothing else: an option that it does not know ends it.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';

const one = { type: 'string' };
const many = { type: 'string', multiple: true };
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    input: { ...one, short: 's' },
    target: { ...one, short: 't' },
    depends: { ...many, short: 'd' },
    force: { type: 'boolean' },
    debug: { type: 'boolean' },
    log: one,
    'deb-recommends': many,
    'deb-compression': one,
    'deb-priority': one,
    architecture: one,
    'after-install': one,
    'after-remove': one,
    description: one,
    version: one,
    package: one,
    name: one,
    maintainer: one,
    vendor: one,
    url: one,
    category: one,
    license: one,
    iteration: one,
  },
});
if (values.target !== 'deb') throw new Error(`Only Debian packages are made here, not ${values.target}.`);

const root = mkdtempSync(path.join(tmpdir(), 'fairhand-deb-'));
process.on('exit', () => rmSync(root, { recursive: true, force: true }));

/** `FROM=/TO`: a folder's contents, or one file under its new name. */
for (const mapping of positionals) {
  const at = mapping.lastIndexOf('=');
  const [from, to] = [mapping.slice(0, at), path.join(root, mapping.slice(at + 1))];
  mkdirSync(path.dirname(to), { recursive: true });
  cpSync(from, to, { recursive: true, verbatimSymlinks: true });
}

const files = readdirSync(root, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => path.relative(root, path.join(entry.parentPath, entry.name)))
  .sort();
const bytes = files.reduce((sum, file) => sum + statSync(path.join(root, file)).size, 0);

// Debian Policy, chapter 5: fields of a binary package. No homepage: there is none.
const [synopsis, ...more] = values.description.trim().split('\n');
const rows = {
  Package: values.name,
  Version: values.iteration ? `${values.version}-${values.iteration}` : values.version,
  Section: values.category ?? 'misc',
  Priority: values['deb-priority'] ?? 'optional',
  Architecture: values.architecture,
  Maintainer: values.maintainer,
  'Installed-Size': String(Math.ceil(bytes / 1024)),
  Depends: (values.depends ?? []).join(', '),
  Recommends: (values['deb-recommends'] ?? []).join(', '),
  Description: [synopsis.trim(), ...more.map((line) => ` ${line.trim() || '.'}`)].join('\n'),
};
const control = path.join(root, 'DEBIAN');
mkdirSync(control, { mode: 0o755 });
const told = Object.entries(rows).filter(([, is]) => is !== '');
writeFileSync(path.join(control, 'control'), told.map(([name, is]) => `${name}: ${is}\n`).join(''));
const sums = files.map((file) => {
  const sum = createHash('md5')
    .update(readFileSync(path.join(root, file)))
    .digest('hex');
  return `${sum}  ${file}\n`;
});
writeFileSync(path.join(control, 'md5sums'), sums.join(''));
for (const [option, name] of [
  ['after-install', 'postinst'],
  ['after-remove', 'postrm'],
]) {
  if (values[option]) writeFileSync(path.join(control, name), readFileSync(values[option], 'utf8'), { mode: 0o755 });
}
// Folders made under another umask: everybody may look into them.
execFileSync('chmod', ['-R', 'u+rwX,go+rX,go-w', root]);
// dpkg-deb has other names for some.
const ways = { gz: 'gzip', xz: 'xz', zstd: 'zstd' };
const how = ['--root-owner-group', `-Z${ways[values['deb-compression'] ?? 'xz']}`];
execFileSync('dpkg-deb', [...how, '--build', root, values.package], { stdio: 'inherit' });
