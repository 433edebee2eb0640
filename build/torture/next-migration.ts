/** A migration that stands for the next version in the kill test: it rebuilds a table, as real ones do. */
export const NEXT_STATEMENTS = [
  'CREATE TABLE client_note (id TEXT PRIMARY KEY, client_id TEXT NOT NULL REFERENCES client (id), text TEXT) STRICT;',
  "INSERT INTO client_note SELECT 'n-' || id, id, body ->> '$.note' FROM client;",
  'CREATE INDEX client_note_client ON client_note (client_id);',
  'ALTER TABLE setting ADD COLUMN seen INTEGER;',
  'UPDATE setting SET seen = 1;',
  "UPDATE visit SET body = json_set(body, '$.plan', 'moved');",
  'DROP INDEX client_note_client;',
];

/** Statements of a migration file. A trigger's body ends with END; everything else with a semicolon at a line's end. */
export function statementsOf(sql: string): string[] {
  const statements: string[] = [];
  let current = '';
  for (const line of sql.split('\n')) {
    current += `${line}\n`;
    const code = current.replace(/--.*$/gm, '').trim();
    const ended = /^CREATE TRIGGER/i.test(code) ? /\bEND;$/.test(code) : code.endsWith(';');
    if (!ended) continue;
    statements.push(current.trim());
    current = '';
  }
  return statements;
}
