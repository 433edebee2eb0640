/** Answers the window's requests for files, blobs and uploads; both shells call this and add nothing. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { FIRST_STATUS } from './contract/ask.ts';
import { MAX_UPLOAD_BYTES, mimeOf, responseHeaders, wanted } from './window-policy.ts';

/** The part of the backend that the window's addresses reach. */
export interface WindowSource extends BlobSource {
  /** Answers one request of the window: JSON in, the contract's envelope as JSON out. Never rejects. */
  call(json: string): Promise<string>;
}

/** The part of it that keeps bytes. */
export interface BlobSource {
  /** Bytes kept under an id (a scan, an issued page), or null when there is none or the caseload is locked. */
  readBlob(id: string): { bytes: Uint8Array; mime: string } | null;
  /** Takes bytes in for a following request and answers the token that names them. */
  stageBlob(bytes: Uint8Array): string;
}

export interface WindowRequest {
  method: string;
  url: string;
  /** Reads the request's body; called for uploads only. */
  body(): Promise<Uint8Array | null>;
}

export interface WindowAnswer {
  status: number;
  headers: Record<string, string>;
  body: Uint8Array;
}

const NOTHING = new Uint8Array(0);

function plain(status: number): WindowAnswer {
  return { status, headers: responseHeaders('text/plain; charset=utf-8'), body: NOTHING };
}

/**
 * Answers one request of the window. Never throws: what cannot be answered is a status.
 * A foreign address gets 204, which leaves the page standing (an abort would replace it by an error page).
 * @param root absolute folder of the built window
 */
export async function answer(
  request: WindowRequest,
  source: WindowSource,
  origin: string,
  root: string,
): Promise<WindowAnswer> {
  const want = wanted(request.method, request.url, origin, root);
  switch (want.kind) {
    case 'foreign':
      return plain(204);
    case 'refused':
      return plain(want.status);
    case 'file':
      return want.file === path.resolve(root, 'index.html') ? pageAnswer(want.file, source) : fileAnswer(want.file);
    case 'blob':
      return blobAnswer(want.id, source);
    case 'upload':
      return uploadAnswer(request, source);
  }
}

async function fileAnswer(file: string): Promise<WindowAnswer> {
  try {
    return { status: 200, headers: responseHeaders(mimeOf(file)), body: await readFile(file) };
  } catch {
    return plain(404);
  }
}

/** The page with what its first screen asks for, which saves it a way to the shell and back. */
async function pageAnswer(file: string, source: WindowSource): Promise<WindowAnswer> {
  const reply = await fileAnswer(file);
  const envelope = await source.call(JSON.stringify({ name: 'app.status', input: {} }));
  // Data, never run; no '<' in it can end its element.
  const status = `<script type="application/json" id="${FIRST_STATUS}">${envelope.replaceAll('<', '\\u003c')}</script>`;
  const page = new TextDecoder().decode(reply.body).replace('</body>', () => `${status}</body>`);
  return { ...reply, body: new TextEncoder().encode(page) };
}

/** Only pictures, PDFs and plain bytes leave as what they are; nothing that a client's file claims becomes a page. */
function safeMime(mime: string): string {
  return /^(image\/(png|jpeg|webp|tiff|gif)|application\/(pdf|json)|text\/csv)$/.test(mime)
    ? mime
    : 'application/octet-stream';
}

function blobAnswer(id: string, blobs: BlobSource): WindowAnswer {
  try {
    const blob = blobs.readBlob(id);
    return blob ? { status: 200, headers: responseHeaders(safeMime(blob.mime)), body: blob.bytes } : plain(404);
  } catch {
    return plain(404);
  }
}

async function uploadAnswer(request: WindowRequest, blobs: BlobSource): Promise<WindowAnswer> {
  let bytes: Uint8Array | null;
  try {
    bytes = await request.body();
  } catch {
    return plain(400);
  }
  if (!bytes) return plain(400);
  if (bytes.byteLength > MAX_UPLOAD_BYTES) return plain(413);
  try {
    const token = blobs.stageBlob(bytes);
    const body = new TextEncoder().encode(JSON.stringify({ token }));
    return { status: 200, headers: responseHeaders('application/json; charset=utf-8'), body };
  } catch {
    return plain(503);
  }
}
