/** Only a find whose proof is whole counts: what was worked out from the records by other rules is forgotten. */
export const version = 4;

export function up(connection: { exec(sql: string): unknown }): void {
  connection.exec(`
UPDATE job SET recall = NULL, lesson = NULL;

DELETE FROM lesson_amount;

UPDATE job SET find_count = -1
WHERE find_count > 0 OR id IN (SELECT job_id FROM job_entry WHERE body ->> '$.type' = 'finding');
`);
}
