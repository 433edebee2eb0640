/**
 * Undo and redo, by step of the therapist and per client. Both are new entries of the trail: what happened stays
 * on record. The steps are read from the trail itself, so there is no second list that could disagree.
 */
import type { Doing } from '../caseload.ts';
import { CaseloadError } from '../codes.ts';
import type { Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { CARRIED_OUT } from '../handover/handed-entry.ts';
import { isKind } from './kinds.ts';
import { bodyOf, newStep, setBody } from './store.ts';

interface Steps {
  undoable: string[];
  redoable: string[];
}

/**
 * Steps of a client after entry `since`, oldest first. Erasing and taking in a hand-over are borders that nothing crosses. A step that
 * moved facts to another client is taken back by entries of that other one: hence `reverses IN own`.
 */
function stepsOf(db: Db, clientId: string, since: number): Steps {
  const rows = db
    .prepare(
      `WITH own AS (SELECT step FROM trail WHERE client_id = ? AND seq > ? AND kind NOT IN ('blob', 'export'))
       SELECT step, min(action) AS action, max(reverses) AS reverses FROM trail
       WHERE step IN own OR reverses IN own GROUP BY step ORDER BY min(seq)`,
    )
    .all(clientId, since) as { step: string; action: string; reverses: string | null }[];
  const steps: Steps = { undoable: [], redoable: [] };
  for (const { step, action, reverses } of rows) {
    if (action === 'erase' || reverses === CARRIED_OUT) {
      steps.undoable = [];
      steps.redoable = [];
    } else if (action === 'undo' && reverses !== null) {
      steps.undoable = steps.undoable.filter((each) => each !== reverses);
      steps.redoable.push(reverses);
    } else if (action === 'redo' && reverses !== null) {
      steps.redoable = steps.redoable.filter((each) => each !== reverses);
      steps.undoable.push(reverses);
    } else {
      steps.undoable.push(step);
      steps.redoable = [];
    }
  }
  return steps;
}

export function canUndo(db: Db, clientId: string, since: number): { undo: boolean; redo: boolean } {
  const { undoable, redoable } = stepsOf(db, clientId, since);
  return { undo: undoable.length > 0, redo: redoable.length > 0 };
}

interface Entry {
  kind: string;
  fact_id: string;
  before: string | null;
  after: string | null;
}

/** @throws nothing-to-undo when a fact was changed otherwise since, so that undo would lose that change */
function replay(db: Db, step: string, action: 'undo' | 'redo', doing: Doing): void {
  const order = action === 'undo' ? 'DESC' : 'ASC';
  const entries = db
    .prepare(
      `SELECT kind, fact_id, before, after FROM trail JOIN trail_value USING (seq) WHERE step = ? ORDER BY seq ${order}`,
    )
    .all(step) as Entry[];
  const act = { ...newStep(doing, action), reverses: step };
  for (const entry of entries) {
    if (!isKind(entry.kind)) continue;
    const [from, to] = action === 'undo' ? [entry.after, entry.before] : [entry.before, entry.after];
    if (bodyOf(db, entry.kind, entry.fact_id) !== from) throw new CaseloadError('nothing-to-undo');
    setBody(db, entry.kind, entry.fact_id, to, act);
  }
}

/** Takes back the client's last step after entry `since`. @throws nothing-to-undo, code-taken */
export function undoLast(db: Db, clientId: string, since: number, doing: Doing): void {
  guarded(() =>
    db
      .transaction(() => {
        const step = stepsOf(db, clientId, since).undoable.at(-1);
        if (step === undefined) throw new CaseloadError('nothing-to-undo');
        replay(db, step, 'undo', doing);
      })
      .immediate(),
  );
}

/** Repeats the step that was undone last. @throws nothing-to-undo, code-taken */
export function redoLast(db: Db, clientId: string, since: number, doing: Doing): void {
  guarded(() =>
    db
      .transaction(() => {
        const step = stepsOf(db, clientId, since).redoable.at(-1);
        if (step === undefined) throw new CaseloadError('nothing-to-undo');
        replay(db, step, 'redo', doing);
      })
      .immediate(),
  );
}
