import { getContext, setContext } from 'svelte';
import type { App } from './app.svelte.ts';
import type { CommandOf } from './command-of.ts';

const key = Symbol('app');
export const provideApp = (app: App): App => setContext(key, app);
export const useApp = (): App => getContext<App>(key);

/** Registers a view's own commands (keys, palette, key sheet) while it is on the screen. */
export function useCommands(commands: () => readonly CommandOf<App>[]): void {
  const app = useApp();
  $effect(() => {
    const mine = commands();
    app.viewCommands = mine;
    return () => {
      if (app.viewCommands === mine) app.viewCommands = [];
    };
  });
}
