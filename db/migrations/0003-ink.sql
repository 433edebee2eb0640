-- Pen motion. The raw samples of a finished bout lie in a blob; while it is written they come in pieces, about one a
-- second, so that a crash costs a second. The pieces go when the bout is finished, or with its recording.
CREATE TABLE ink_recording (
  id TEXT PRIMARY KEY,
  made INTEGER NOT NULL,
  body TEXT NOT NULL CHECK (json_valid(body)),
  client_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.clientId') STORED REFERENCES client (id) DEFERRABLE INITIALLY DEFERRED,
  visit_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.visitId') STORED REFERENCES visit (id) DEFERRABLE INITIALLY DEFERRED,
  sample_id TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.sampleId') STORED REFERENCES sample (id) DEFERRABLE INITIALLY DEFERRED,
  blob_id TEXT GENERATED ALWAYS AS (body ->> '$.blob') STORED REFERENCES blob (id) DEFERRABLE INITIALLY DEFERRED,
  at TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.at') VIRTUAL,
  by TEXT NOT NULL GENERATED ALWAYS AS (body ->> '$.by') VIRTUAL
) STRICT;
CREATE INDEX ink_recording_client ON ink_recording (client_id);
CREATE INDEX ink_recording_visit ON ink_recording (visit_id);
CREATE INDEX ink_recording_sample ON ink_recording (sample_id);

CREATE TABLE ink_piece (
  recording_id TEXT NOT NULL REFERENCES ink_recording (id) ON DELETE CASCADE,
  seq INTEGER NOT NULL CHECK (seq >= 0),
  bytes BLOB NOT NULL,
  PRIMARY KEY (recording_id, seq)
) STRICT;
