import { getContext, setContext, untrack } from 'svelte';
import type { App } from './app.svelte.ts';
import type { CommandOf } from './command-of.ts';

const key = Symbol('app');
export const provideApp = (app: App): App => setContext(key, app);
export const useApp = (): App => getContext<App>(key);

const layerKey = Symbol('layer');
/** The views of the open client wait behind a place: their commands do too. */
export const provideLayer = (layer: 'client' | 'place'): 'client' | 'place' => setContext(layerKey, layer);

/** Registers a view's own commands (keys, palette, key sheet) while it is on the screen. */
export function useCommands(commands: () => readonly CommandOf<App>[]): void {
  const app = useApp();
  const layer = getContext<'client' | 'place' | undefined>(layerKey) ?? 'place';
  $effect(() => {
    const mine = { layer, commands: commands() };
    untrack(() => (app.registered = [...app.registered, mine]));
    return () => untrack(() => (app.registered = app.registered.filter((one) => one !== mine)));
  });
}
