-- Practice pages that came back written on: picture, day of practice and what was measured. Kept apart from samples.
CREATE TABLE practice_page (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  date TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.date') STORED,
  blob_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.blob') STORED REFERENCES blob (id) DEFERRABLE INITIALLY DEFERRED,
  view_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.view') STORED REFERENCES blob (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX practice_page_client ON practice_page (client_id);
