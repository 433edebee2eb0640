-- What the client wants to write, the check of a signature, trials of pens and papers, and the plan for the next visit.
CREATE TABLE writing_occasion (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.code') STORED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX writing_occasion_client ON writing_occasion (client_id);
CREATE UNIQUE INDEX writing_occasion_code ON writing_occasion (client_id, code);
CREATE TABLE signature_check (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX signature_check_client ON signature_check (client_id);
CREATE INDEX signature_check_visit ON signature_check (visit_id);
CREATE TABLE trial (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX trial_client ON trial (client_id);
CREATE INDEX trial_visit ON trial (visit_id);
CREATE TABLE visit_plan (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX visit_plan_client ON visit_plan (client_id);
CREATE UNIQUE INDEX visit_plan_visit ON visit_plan (visit_id);
