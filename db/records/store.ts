/** Saving and removing facts: validated on the way in and out, each change in one transaction with its trail entry. */
import { randomUUID } from 'node:crypto';
import type { z } from 'zod';
import type { Doing } from '../caseload.ts';
import type { TrailAction, Unstamped, Writer } from '../caseload-rows.ts';
import { CaseloadError } from '../codes.ts';
import { plucked, statement, type Db } from '../connection.ts';
import { guarded } from '../errors.ts';
import { factKinds, type Fact, type FactKind } from '../types/record.ts';
import { putBlob } from './blobs.ts';
import { clientOf, homes } from './kinds.ts';
import { append } from './trail.ts';

/** What belongs to one act of the therapist. */
export interface Step {
  doing: Doing;
  step: string;
  action?: TrailAction;
  reverses?: string;
}

/** Lower case without accents: what searching compares. */
export const fold = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** @throws malformed-request, naming the field */
function validated<K extends FactKind>(kind: K, fact: unknown): Fact<K> {
  const result = (factKinds[kind] as z.ZodType).safeParse(fact);
  if (!result.success) {
    const field = result.error.issues[0]?.path.map(String).join('.') ?? '';
    throw new CaseloadError('malformed-request', field === '' ? kind : field);
  }
  return result.data as Fact<K>;
}

/** @throws damaged when a stored fact no longer fits its schema */
export function read<K extends FactKind>(kind: K, body: string): Fact<K> {
  const result = (factKinds[kind] as z.ZodType).safeParse(JSON.parse(body));
  if (!result.success) throw new CaseloadError('damaged', kind);
  return result.data as Fact<K>;
}

/** Stored text of a fact, or null. */
export function bodyOf(db: Db, kind: FactKind, id: string): string | null {
  const row = statement(db, `SELECT body FROM ${homes[kind].table} WHERE id = ?`).get(id) as
    { body: string } | undefined;
  return row?.body ?? null;
}

export function getFact<K extends FactKind>(db: Db, kind: K, id: string): Fact<K> | null {
  const body = bodyOf(db, kind, id);
  return body === null ? null : read(kind, body);
}

/** One id names one thing: the trail tells facts by it. @throws malformed-request */
export function refuseOthersId(db: Db, kind: FactKind | 'blob', id: string): void {
  const other = statement(db, 'SELECT 1 FROM trail WHERE fact_id = ? AND kind <> ? LIMIT 1').get(id, kind);
  if (other !== undefined) throw new CaseloadError('malformed-request', 'id');
}

/**
 * Sets a fact to `after` (null removes it) and adds the trail entry. The one place that writes fact tables.
 * Only inside a transaction; foreign keys are checked when it ends.
 */
export function setBody(db: Db, kind: FactKind, id: string, after: string | null, step: Step): void {
  const { table } = homes[kind];
  const before = bodyOf(db, kind, id);
  if (before === after) return;
  if (before === null) refuseOthersId(db, kind, id);
  const usual = after === null ? 'remove' : before === null ? 'create' : 'update';
  const fact = JSON.parse((after ?? before) as string) as Fact;
  append(
    db,
    {
      clientId: clientOf(kind, fact),
      kind,
      factId: id,
      action: step.action ?? usual,
      step: step.step,
      ...(step.reverses === undefined ? {} : { reverses: step.reverses }),
      before,
      after,
    },
    step.doing,
  );
  if (after === null) {
    statement(db, `DELETE FROM ${table} WHERE id = ?`).run(id);
    return;
  }
  const folded = kind === 'client' ? fold(`${(fact as Fact<'client'>).name} ${(fact as Fact<'client'>).code}`) : null;
  if (before !== null) {
    statement(db, `UPDATE ${table} SET body = ? WHERE id = ?`).run(after, id);
    if (folded !== null) statement(db, 'UPDATE client SET folded = ? WHERE id = ?').run(folded, id);
    return;
  }
  const made = plucked(db, 'SELECT min(seq) FROM trail WHERE fact_id = ?').get(id) as number;
  const columns = folded === null ? '' : ', folded';
  const values = folded === null ? [id, made, after] : [id, made, after, folded];
  statement(db, `INSERT INTO ${table} (id, made, body${columns}) VALUES (${values.map(() => '?').join(', ')})`).run(
    ...values,
  );
}

/** Id of the fact that answers the same question already. */
function sameQuestion(db: Db, kind: FactKind, fact: Record<string, unknown>): string | null {
  const { table, question } = homes[kind];
  if (question.length === 0) return null;
  const where = question.map(([, column]) => `${column} = ?`).join(' AND ');
  const row = statement(db, `SELECT id FROM ${table} WHERE ${where}`).get(...question.map(([field]) => fact[field])) as
    { id: string } | undefined;
  return row?.id ?? null;
}

/** Content without stamp: saving the same again is no change. */
const content = (fact: Fact): string => JSON.stringify({ ...fact, at: '', by: '' });

const isFrozen = (kind: FactKind, fact: Fact): boolean =>
  kind === 'issuedPage' || (kind === 'program' && (fact as Fact<'program'>).status === 'approved');

/** What was approved or issued stays as it was; an issued page may still be given its PDF. */
function refuseFrozen(kind: FactKind, before: Fact, after: Fact): void {
  if (kind === 'program' && isFrozen(kind, before)) throw new CaseloadError('already-approved');
  if (kind === 'issuedPage') {
    const [old, now] = [before as Fact<'issuedPage'>, after as Fact<'issuedPage'>];
    if (old.pdf !== null || content({ ...now, pdf: null }) !== content(old)) throw new CaseloadError('already-issued');
  }
}

/** A visit, sample or goal of another client must not be named by mistake. */
function refuseStranger(db: Db, kind: FactKind, fact: Fact): void {
  if (kind === 'client') return;
  const parents = { visitId: 'visit', sampleId: 'sample', pageId: 'samplePage', goalId: 'goal' } as const;
  for (const [field, parent] of Object.entries(parents) as [string, FactKind][]) {
    const id = (fact as unknown as Record<string, unknown>)[field];
    if (typeof id !== 'string') continue;
    const owner = plucked(db, `SELECT client_id FROM ${homes[parent].table} WHERE id = ?`).get(id);
    if (owner === undefined) throw new CaseloadError('not-found', parent);
    if (owner !== clientOf(kind, fact)) throw new CaseloadError('malformed-request', field);
  }
}

function putFact<K extends FactKind>(db: Db, kind: K, unstamped: Unstamped<K>, step: Step): Fact<K> {
  const known = sameQuestion(db, kind, unstamped as Record<string, unknown>);
  const fact = validated(kind, { ...unstamped, id: known ?? unstamped.id, ...step.doing });
  const body = bodyOf(db, kind, fact.id);
  if (body !== null) {
    const before = read(kind, body);
    if (clientOf(kind, before) !== clientOf(kind, fact)) throw new CaseloadError('malformed-request', 'clientId');
    if (content(before) === content(fact)) return before;
    refuseFrozen(kind, before, fact);
  }
  refuseStranger(db, kind, fact);
  setBody(db, kind, fact.id, JSON.stringify(fact), step);
  return fact;
}

function removeFact(db: Db, kind: FactKind, id: string, step: Step): void {
  for (const [child, column] of homes[kind].children) {
    const ids = plucked(db, `SELECT id FROM ${homes[child].table} WHERE ${column} = ?`).all(id) as string[];
    for (const childId of ids) removeFact(db, child, childId, step);
  }
  const body = bodyOf(db, kind, id);
  if (body !== null && isFrozen(kind, read(kind, body))) {
    throw new CaseloadError(kind === 'program' ? 'already-approved' : 'already-issued');
  }
  setBody(db, kind, id, null, step);
}

export const newStep = (doing: Doing, action?: TrailAction): Step => ({
  doing,
  step: randomUUID(),
  ...(action === undefined ? {} : { action }),
});

/** All writes of one act in one immediate transaction: nothing of it stays when anything is refused. */
export function together<T>(db: Db, doing: Doing, act: (write: Writer) => T, action?: TrailAction): T {
  const step = newStep(doing, action);
  return guarded(() =>
    db
      .transaction(() =>
        act({
          put: (kind, fact) => putFact(db, kind, fact, step),
          putBlob: (clientId, mime, bytes) => putBlob(db, clientId, mime, bytes, doing),
          remove: (kind, id) => {
            if (bodyOf(db, kind, id) === null) throw new CaseloadError('not-found', kind);
            removeFact(db, kind, id, step);
          },
        }),
      )
      .immediate(),
  );
}
