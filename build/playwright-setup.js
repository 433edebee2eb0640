/** Before the window tests: the window as it stands in the sources, and a demo caseload. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { buildDemo, buildWindow } from './launch/compile.js';
import { root } from './launch/install.js';

export default async function setup() {
  await buildWindow();
  // Made anew by `npm test` itself; here any demo will do, so that one test runs quickly.
  if (!existsSync(path.join(root, 'dist/demo/caseload.db'))) await buildDemo();
}
