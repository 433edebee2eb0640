-- Printed sheets of two spirals that came back drawn on: the picture, the hand, the times and what was measured.
CREATE TABLE spiral_sheet (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  sample_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.sampleId') STORED REFERENCES sample (id) DEFERRABLE INITIALLY DEFERRED,
  blob_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.blob') STORED REFERENCES blob (id) DEFERRABLE INITIALLY DEFERRED,
  view_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.view') STORED REFERENCES blob (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX spiral_sheet_client ON spiral_sheet (client_id);
CREATE INDEX spiral_sheet_visit ON spiral_sheet (visit_id);
CREATE INDEX spiral_sheet_sample ON spiral_sheet (sample_id);
