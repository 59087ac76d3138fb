import type { Connection } from '#db/connection.ts';

/** Every table and index of a store as SQL, in order of name. */
export function schemaDump(connection: Connection): string {
  const statements = connection
    .prepare(`SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type DESC, name`)
    .pluck()
    .all() as string[];
  return `${statements.map((sql) => `${sql};`).join('\n\n')}\n`;
}
