/** See display.js. */
export function hasDisplay(platform?: NodeJS.Platform, env?: NodeJS.ProcessEnv): boolean;
export function hiddenDisplay(): Promise<{ env: NodeJS.ProcessEnv; stop: () => void } | null>;
