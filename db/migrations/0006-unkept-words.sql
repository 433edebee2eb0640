-- Words typed into a form that are no fact yet (a day of practice before it is kept, a line before it is added): they
-- outlive a lock, a close and a kill, and go when they were used, or with their client. They have no trail: nothing is
-- recorded until it is kept.
CREATE TABLE unkept_words (
  place TEXT PRIMARY KEY CHECK (length(place) BETWEEN 1 AND 200),
  client_id TEXT REFERENCES client (id) ON DELETE CASCADE DEFERRABLE INITIALLY DEFERRED,
  fields TEXT NOT NULL CHECK (json_valid(fields)),
  at TEXT NOT NULL
) STRICT;
CREATE INDEX unkept_words_client ON unkept_words (client_id);
