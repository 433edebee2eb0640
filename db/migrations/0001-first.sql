-- The first tables.
--
-- A fact is kept once, as the JSON that was validated against its schema (db/types); what queries and foreign keys
-- need is generated from it, so that the two can never differ. Foreign keys are checked at the end of a
-- transaction: one step may restore a visit and its samples in any order.
-- `made` is the trail entry that first created the fact: a lasting order, also after undo.

CREATE TABLE client (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  -- Name and code without case and accents, for searching.
  folded TEXT NOT NULL,
  name TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.name') STORED,
  code TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.code') STORED,
  archived_on TEXT GENERATED ALWAYS AS (body ->> '$.archivedOn') STORED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE UNIQUE INDEX client_code ON client (code);

-- Original bytes: pictures of pages, issued PDFs. No foreign key to the client: a picture outlives the undo of
-- everything around it and goes only when the client is erased.
CREATE TABLE blob (
  id TEXT PRIMARY KEY,
  client_id TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  mime TEXT NOT NULL,
  size INTEGER NOT NULL,
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  bytes BLOB NOT NULL CHECK (length(bytes) = size)
) STRICT;
CREATE INDEX blob_content ON blob (client_id, sha256);

CREATE TABLE visit (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  date TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.date') STORED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX visit_client ON visit (client_id, date);

CREATE TABLE intake_answer (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  item TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.item') STORED,
  side TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.side') STORED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX intake_answer_client ON intake_answer (client_id);
CREATE UNIQUE INDEX intake_answer_question ON intake_answer (visit_id, item, side);

CREATE TABLE red_flag (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  flag TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.flag') STORED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX red_flag_client ON red_flag (client_id);
CREATE UNIQUE INDEX red_flag_question ON red_flag (visit_id, flag);

CREATE TABLE setup (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX setup_client ON setup (client_id);
CREATE INDEX setup_visit ON setup (visit_id);

CREATE TABLE sample (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  taken_at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.takenAt') STORED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX sample_client ON sample (client_id);
CREATE INDEX sample_visit ON sample (visit_id);

CREATE TABLE sample_page (
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
CREATE INDEX sample_page_client ON sample_page (client_id);
CREATE INDEX sample_page_visit ON sample_page (visit_id);
CREATE INDEX sample_page_sample ON sample_page (sample_id);
CREATE INDEX sample_page_blob ON sample_page (blob_id);
CREATE INDEX sample_page_view ON sample_page (view_id);

CREATE TABLE page_measurement (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  sample_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.sampleId') STORED REFERENCES sample (id) DEFERRABLE INITIALLY DEFERRED,
  page_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.pageId') STORED REFERENCES sample_page (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX page_measurement_client ON page_measurement (client_id);
CREATE INDEX page_measurement_visit ON page_measurement (visit_id);
CREATE INDEX page_measurement_sample ON page_measurement (sample_id);
CREATE INDEX page_measurement_page ON page_measurement (page_id);

CREATE TABLE reading (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  sample_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.sampleId') STORED REFERENCES sample (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX reading_client ON reading (client_id);
CREATE INDEX reading_visit ON reading (visit_id);
CREATE INDEX reading_sample ON reading (sample_id);

CREATE TABLE program (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX program_client ON program (client_id);
CREATE INDEX program_visit ON program (visit_id);

CREATE TABLE practice_log (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  date TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.date') STORED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX practice_log_client ON practice_log (client_id, date);

CREATE TABLE goal (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX goal_client ON goal (client_id);

CREATE TABLE goal_rating (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  goal_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.goalId') STORED REFERENCES goal (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX goal_rating_client ON goal_rating (client_id);
CREATE INDEX goal_rating_visit ON goal_rating (visit_id);
CREATE INDEX goal_rating_goal ON goal_rating (goal_id);

CREATE TABLE issued_page (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  pdf_id TEXT GENERATED ALWAYS AS (body ->> '$.pdf') STORED REFERENCES blob (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX issued_page_client ON issued_page (client_id);
CREATE INDEX issued_page_visit ON issued_page (visit_id);
CREATE INDEX issued_page_pdf ON issued_page (pdf_id);

-- The clinic's settings and its own rule changes, by name.
CREATE TABLE setting (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL CHECK (json_valid(value)),
  at TEXT NOT NULL,
  by TEXT NOT NULL
) STRICT;

-- Who changed what and when; only ever added to. Each entry carries the hash of the one before it. The chain
-- holds salted digests of the values, never the values: it still holds after a client was erased.
CREATE TABLE trail (
  seq INTEGER PRIMARY KEY,
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  client_id TEXT,
  kind TEXT NOT NULL,
  fact_id TEXT NOT NULL,
  action TEXT NOT NULL CHECK (action IN ('create', 'update', 'remove', 'undo', 'redo', 'erase', 'import', 'set')),
  step TEXT NOT NULL,
  reverses TEXT,
  digest TEXT NOT NULL,
  prev_hash TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX trail_client ON trail (client_id, seq);
CREATE INDEX trail_fact ON trail (fact_id, seq);
CREATE INDEX trail_step ON trail (step);

CREATE TRIGGER trail_never_changes BEFORE UPDATE ON trail
BEGIN SELECT raise(ABORT, 'the trail is only added to'); END;
CREATE TRIGGER trail_never_shrinks BEFORE DELETE ON trail
BEGIN SELECT raise(ABORT, 'the trail is only added to'); END;

-- The values before and after, beside the chain, so that erasing can take them away.
CREATE TABLE trail_value (
  seq INTEGER PRIMARY KEY REFERENCES trail (seq),
  salt TEXT NOT NULL,
  before TEXT CHECK (before IS NULL OR json_valid(before)),
  after TEXT CHECK (after IS NULL OR json_valid(after))
) STRICT;
CREATE TRIGGER trail_value_never_changes BEFORE UPDATE ON trail_value
BEGIN SELECT raise(ABORT, 'the values of the trail are kept or erased, never changed'); END;

-- How long the trail is and how it ends: entries cut off at the end would otherwise go unseen.
CREATE TABLE trail_head (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  entries INTEGER NOT NULL,
  hash TEXT NOT NULL
) STRICT;
INSERT INTO trail_head (one, entries, hash) VALUES (1, 0, '');
