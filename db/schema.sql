-- The tables at the newest version, as the migrations leave them. Reviewed with each new step;
-- tests/db/migrations.test.ts fails where the two differ.

CREATE TRIGGER job_search_added AFTER INSERT ON job_search BEGIN
  INSERT INTO job_search_letters (rowid, words, codes) VALUES (new.id, new.words, new.codes);
END;

CREATE TRIGGER job_search_removed AFTER DELETE ON job_search BEGIN
  INSERT INTO job_search_letters (job_search_letters, rowid, words, codes)
  VALUES ('delete', old.id, old.words, old.codes);
END;

CREATE TRIGGER job_to_index_when_added AFTER INSERT ON job BEGIN
  INSERT OR IGNORE INTO job_to_index VALUES (new.map_id, new.id);
END;

CREATE TRIGGER job_to_index_when_changed AFTER UPDATE OF head, changed_at ON job BEGIN
  INSERT OR IGNORE INTO job_to_index VALUES (new.map_id, new.id);
END;

CREATE TRIGGER job_to_index_when_map_added AFTER INSERT ON map BEGIN
  INSERT OR IGNORE INTO job_to_index SELECT map_id, id FROM job WHERE map_id = new.id;
END;

CREATE TRIGGER job_to_index_when_map_named AFTER UPDATE OF name ON map WHEN new.name <> old.name BEGIN
  INSERT OR IGNORE INTO job_to_index SELECT map_id, id FROM job WHERE map_id = new.id;
END;

CREATE TRIGGER job_to_index_when_map_removed AFTER DELETE ON map BEGIN
  INSERT OR IGNORE INTO job_to_index SELECT map_id, id FROM job WHERE map_id = old.id;
END;

CREATE TABLE "job" (
  id TEXT NOT NULL PRIMARY KEY,
  map_id TEXT NOT NULL,
  map_revision INTEGER NOT NULL,
  head TEXT NOT NULL,
  opened_at TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  stage TEXT NOT NULL CHECK (stage IN ('testing', 'opening', 'found', 'repaired', 'closed')),
  minutes_spent REAL NOT NULL,
  find_count INTEGER NOT NULL,
  entry_count INTEGER NOT NULL,
  recall TEXT, lesson TEXT CHECK (lesson IN ('none', 'some')),
  FOREIGN KEY (map_id, map_revision) REFERENCES map_snapshot (map_id, revision)
) STRICT;

CREATE TABLE job_entry (
  job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  seq INTEGER NOT NULL,
  entry_id TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (job_id, seq),
  UNIQUE (job_id, entry_id)
) STRICT;

CREATE TABLE job_search (
  id INTEGER NOT NULL PRIMARY KEY,
  job_id TEXT NOT NULL UNIQUE REFERENCES job (id) ON DELETE CASCADE,
  map_id TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  words TEXT NOT NULL,
  codes TEXT NOT NULL
) STRICT;

CREATE VIRTUAL TABLE job_search_letters USING fts5 (
  words, codes, content = 'job_search', content_rowid = 'id', tokenize = 'trigram case_sensitive 1'
);

CREATE TABLE 'job_search_letters_config'(k PRIMARY KEY, v) WITHOUT ROWID;

CREATE TABLE 'job_search_letters_data'(id INTEGER PRIMARY KEY, block BLOB);

CREATE TABLE 'job_search_letters_docsize'(id INTEGER PRIMARY KEY, sz BLOB);

CREATE TABLE 'job_search_letters_idx'(segid, term, pgno, PRIMARY KEY(segid, term)) WITHOUT ROWID;

CREATE TABLE job_to_index (
  map_id TEXT NOT NULL,
  job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  PRIMARY KEY (map_id, job_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE lesson_amount (
  job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  map_id TEXT NOT NULL,
  level TEXT NOT NULL CHECK (level IN ('causes', 'rubSpotKinds', 'rubSpots')),
  key TEXT NOT NULL,
  found REAL NOT NULL,
  expected REAL NOT NULL,
  PRIMARY KEY (job_id, level, key)
) STRICT, WITHOUT ROWID;

CREATE TABLE map (
  id TEXT NOT NULL PRIMARY KEY,
  name TEXT NOT NULL,
  body_style TEXT NOT NULL,
  drive_side TEXT NOT NULL,
  first_revision INTEGER NOT NULL CHECK (first_revision >= 0),
  revision INTEGER NOT NULL CHECK (revision >= first_revision),
  changed_at TEXT NOT NULL,
  picture TEXT
) STRICT, WITHOUT ROWID;

CREATE TABLE map_record (
  map_id TEXT NOT NULL REFERENCES map (id) ON DELETE CASCADE,
  record_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (map_id, record_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE map_snapshot (
  map_id TEXT NOT NULL,
  revision INTEGER NOT NULL,
  name TEXT NOT NULL,
  document BLOB NOT NULL,
  PRIMARY KEY (map_id, revision)
) STRICT;

CREATE TABLE map_transaction (
  map_id TEXT NOT NULL REFERENCES map (id) ON DELETE CASCADE,
  revision INTEGER NOT NULL,
  label TEXT NOT NULL,
  origin TEXT NOT NULL CHECK (origin IN ('user', 'import', 'undo', 'redo')),
  turns_revision INTEGER,
  patch BLOB,
  selections TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('done', 'undone', 'dropped', 'turn')),
  changed_at TEXT NOT NULL,
  PRIMARY KEY (map_id, revision),
  CHECK ((patch IS NULL) = (origin IN ('undo', 'redo'))),
  CHECK ((turns_revision IS NULL) = (origin IN ('user', 'import'))),
  CHECK ((state = 'turn') = (origin IN ('undo', 'redo')))
) STRICT;

CREATE TABLE picture_bytes (
  sha256 TEXT NOT NULL PRIMARY KEY,
  media_type TEXT NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

CREATE TABLE place_state (
  key TEXT NOT NULL PRIMARY KEY,
  text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE sample_offered (
  file_name TEXT NOT NULL PRIMARY KEY,
  offered_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX job_by_map ON job (map_id, map_revision, find_count);

CREATE INDEX job_open ON job (changed_at DESC, id) WHERE stage <> 'closed';

CREATE INDEX job_search_by_change ON job_search (changed_at DESC, job_id);

CREATE INDEX job_to_count ON job (id) WHERE find_count < 0;

CREATE INDEX job_to_learn ON job (map_id, map_revision) WHERE stage = 'closed' AND lesson IS NULL;

CREATE INDEX job_with_lesson ON job (map_id) WHERE lesson = 'some';

CREATE INDEX lesson_amount_by_kind ON lesson_amount (level, key, found, expected) WHERE level <> 'rubSpots';

CREATE INDEX lesson_amount_by_map ON lesson_amount (map_id, level, key, found, expected);

CREATE INDEX map_transaction_by_state ON map_transaction (map_id, state, revision);
