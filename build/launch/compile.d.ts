/** See compile.js. Each builds only when its sources have changed. */
export function buildWindow(): Promise<void>;
export function buildDesktop(): Promise<void>;
export function buildDemo(): Promise<void>;
