export class NotDownloaded extends Error {}
export function archiveName(version: string, platform: string, arch: string): string;
export function archiveAddress(
  version: string,
  platform: string,
  arch: string,
  env?: Record<string, string | undefined>,
): string;
export function download(
  address: string,
  file: string,
  sha256: string,
  options?: { patience?: { connect: number; silence: number }; tell?: (line: string) => void },
): Promise<void>;
