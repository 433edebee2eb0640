/** See install.js. */
export const root: string;
export function lockMark(): string;
export function packagesAreCurrent(): boolean;
export function installPackages(): Promise<void>;
export function canInstallSystemPackages(): boolean;
export function missingSystemPackages(names: readonly string[]): Promise<string[]>;
export function installSystemPackages(names: readonly string[], why: string): Promise<string[]>;
