/** What each closed job teaches about where looms chafe, in amounts that are summed without reading a job. */
export const version = 3;

export function up(connection: { exec(sql: string): unknown }): void {
  connection.exec(`
ALTER TABLE job ADD COLUMN lesson TEXT CHECK (lesson IN ('none', 'some'));

CREATE TABLE lesson_amount (
  job_id TEXT NOT NULL REFERENCES job (id) ON DELETE CASCADE,
  map_id TEXT NOT NULL,
  level TEXT NOT NULL CHECK (level IN ('causes', 'rubSpotKinds', 'rubSpots')),
  key TEXT NOT NULL,
  found REAL NOT NULL,
  expected REAL NOT NULL,
  PRIMARY KEY (job_id, level, key)
) STRICT, WITHOUT ROWID;

CREATE INDEX lesson_amount_by_kind ON lesson_amount (level, key, found, expected) WHERE level <> 'rubSpots';

CREATE INDEX lesson_amount_by_map ON lesson_amount (map_id, level, key, found, expected);

CREATE INDEX job_to_learn ON job (map_id, map_revision) WHERE stage = 'closed' AND lesson IS NULL;

CREATE INDEX job_with_lesson ON job (map_id) WHERE lesson = 'some';
`);
}
