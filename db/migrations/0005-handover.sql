-- What colleagues wrote about a client, as it stands in their own trails: each row carries the hash it has there, so
-- that it can be checked, told apart from every other and handed on. Rows are only added; erasing a client takes them.
CREATE TABLE handed_entry (
  hash TEXT PRIMARY KEY,
  laptop TEXT NOT NULL,
  seq INTEGER NOT NULL CHECK (seq > 0),
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  client_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  fact_id TEXT NOT NULL,
  action TEXT NOT NULL,
  step TEXT NOT NULL,
  reverses TEXT,
  digest TEXT NOT NULL,
  prev_hash TEXT NOT NULL,
  salt TEXT NOT NULL,
  -- The step of one's own trail in which it was taken in; the note of that step holds the sum of all of them.
  taken TEXT NOT NULL,
  before TEXT CHECK (before IS NULL OR json_valid(before)),
  after TEXT CHECK (after IS NULL OR json_valid(after))
) STRICT;
CREATE UNIQUE INDEX handed_entry_place ON handed_entry (laptop, seq);
CREATE INDEX handed_entry_taken ON handed_entry (taken);
CREATE INDEX handed_entry_client ON handed_entry (client_id);
CREATE INDEX handed_entry_fact ON handed_entry (fact_id);
CREATE TRIGGER handed_entry_never_changes BEFORE UPDATE ON handed_entry
BEGIN SELECT raise(ABORT, 'entries of colleagues are kept or erased, never changed'); END;

-- A restored caseload goes on under a new name: the laptop it grew from, and the last entry both have in common.
CREATE TABLE handed_laptop (
  laptop TEXT PRIMARY KEY,
  grew_from TEXT NOT NULL,
  up_to INTEGER NOT NULL
) STRICT;
