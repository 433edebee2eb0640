/** See electron-binary.js. */
export function electronDist(): string | null;
export function electronProgram(): string | null;
export function tryElectronDownload(): Promise<void>;
