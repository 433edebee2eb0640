-- Words typed for pages that are not issued yet: one row a visit, saved like every other edit.
CREATE TABLE page_draft (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX page_draft_client ON page_draft (client_id);
CREATE UNIQUE INDEX page_draft_visit ON page_draft (visit_id);
