/** Jobs that are repaired and closed, and what each is worth to the next one, worked out when first asked for. */
export const version = 2;

export function up(connection: { exec(sql: string): unknown }): void {
  connection.exec(`
CREATE TABLE job_next (
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
  recall TEXT,
  FOREIGN KEY (map_id, map_revision) REFERENCES map_snapshot (map_id, revision)
) STRICT;

INSERT INTO job_next
  SELECT id, map_id, map_revision, head, opened_at, changed_at, stage, minutes_spent, find_count, entry_count, NULL
  FROM job;

DROP TABLE job;

ALTER TABLE job_next RENAME TO job;

CREATE INDEX job_by_map ON job (map_id, map_revision);
`);
}
