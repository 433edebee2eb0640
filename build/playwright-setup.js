/** Before the window tests: the window as it stands in the sources. */
import { buildDemo, buildWindow } from './compile.js';

export default async function setup() {
  await buildWindow();
  await buildDemo();
}
