/** The Electron window keeps nothing on disk: its session is in memory, its own few files lie in a wiped folder. */
import { app, session } from 'electron';
import type { Session } from 'electron';
import { engineEnvironment, makeEngineFolders, wipeProfile, type EngineFolders } from '../window-profile.ts';
import { PARTITION } from './window.ts';

/** Switches of the engine: no caches on disk, no crash reports. */
export const SWITCHES: readonly (readonly [name: string, value?: string])[] = [
  ['disk-cache-size', '1'],
  ['media-cache-size', '1'],
  ['disable-gpu-shader-disk-cache'],
  ['disable-breakpad'],
  ['disable-crash-reporter'],
];

/** Before the app is ready, with the folder's lock held: wipes what a killed window left. */
export function setupEngineFolders(folder: string): EngineFolders {
  for (const [name, value] of SWITCHES) app.commandLine.appendSwitch(name, value);
  const folders = makeEngineFolders(folder);
  Object.assign(process.env, engineEnvironment(folders));
  return folders;
}

/** At the end. What the engine still holds open is wiped by the next start. */
export function wipeAtEnd({ profile, temporary }: EngineFolders): void {
  for (const place of [profile, temporary]) {
    try {
      if (place !== null) wipeProfile(place);
    } catch {
      // Held open (Windows): the next start wipes it.
    }
  }
}

/** The page's session. @throws when it would keep anything: the window is not opened then */
export function memorySession(): Session {
  const ours = session.fromPartition(PARTITION, { cache: false });
  if (ours.isPersistent()) throw new Error('The window’s session would be kept on disk.');
  ours.setSpellCheckerEnabled(false);
  ours.on('will-download', (event) => event.preventDefault());
  return ours;
}
