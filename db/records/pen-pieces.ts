/** Pen samples of a bout that is being written, piece by piece: what came before a crash is kept. */
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { getFact } from './store.ts';

/** About twenty seconds at 240 Hz. */
const LARGEST_PIECE = 1_000_000;

/** Keeps a piece; the same number again changes nothing. @throws not-found, malformed-request, already-issued */
export function keepPiece(db: Db, recordingId: string, seq: number, bytes: Uint8Array): void {
  const recording = getFact(db, 'inkRecording', recordingId);
  if (recording === null) throw new CaseloadError('not-found', 'inkRecording');
  if (recording.blob !== null || bytes.byteLength > LARGEST_PIECE) throw new CaseloadError('malformed-request', 'ink');
  db.prepare('INSERT OR IGNORE INTO ink_piece (recording_id, seq, bytes) VALUES (?, ?, ?)').run(
    recordingId,
    seq,
    bytes,
  );
}

/** All pieces in order, as one. */
export function piecesOf(db: Db, recordingId: string): Buffer {
  const pieces = db.prepare('SELECT bytes FROM ink_piece WHERE recording_id = ? ORDER BY seq').pluck();
  return Buffer.concat(pieces.all(recordingId) as Buffer[]);
}

export function dropPieces(db: Db, recordingId: string): void {
  db.prepare('DELETE FROM ink_piece WHERE recording_id = ?').run(recordingId);
}
