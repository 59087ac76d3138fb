/**
 * What past jobs are found by, indexed by every three letters in a row; and indexes for the lists of the first
 * page. Triggers note which jobs have to be read again for it, so that no writer can forget to.
 */
export const version = 5;

export function up(connection: { exec(sql: string): unknown }): void {
  connection.exec(`
CREATE TABLE job_search (
  id INTEGER NOT NULL PRIMARY KEY,
  job_id TEXT NOT NULL UNIQUE REFERENCES job (id) ON DELETE CASCADE,
  map_id TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  words TEXT NOT NULL,
  codes TEXT NOT NULL
) STRICT;

CREATE INDEX job_search_by_change ON job_search (changed_at DESC, job_id);

CREATE VIRTUAL TABLE job_search_letters USING fts5 (
  words, codes, content = 'job_search', content_rowid = 'id', tokenize = 'trigram case_sensitive 1'
);

CREATE TRIGGER job_search_added AFTER INSERT ON job_search BEGIN
  INSERT INTO job_search_letters (rowid, words, codes) VALUES (new.id, new.words, new.codes);
END;

CREATE TRIGGER job_search_removed AFTER DELETE ON job_search BEGIN
  INSERT INTO job_search_letters (job_search_letters, rowid, words, codes)
  VALUES ('delete', old.id, old.words, old.codes);
END;

CREATE TABLE job_to_index (
  map_id TEXT NOT NULL,
  job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  PRIMARY KEY (map_id, job_id)
) STRICT, WITHOUT ROWID;

INSERT INTO job_to_index SELECT map_id, id FROM job;

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

CREATE INDEX job_open ON job (changed_at DESC, id) WHERE stage <> 'closed';

CREATE INDEX job_to_count ON job (id) WHERE find_count < 0;

DROP INDEX job_by_map;

CREATE INDEX job_by_map ON job (map_id, map_revision, find_count);
`);
}
