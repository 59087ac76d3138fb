import { type Connection, statement } from './connection.ts';

/** Whether a sample was brought in before; one the user has removed since stays away. */
export function wasOffered(connection: Connection, fileName: string): boolean {
  return (
    statement(connection, 'SELECT 1 FROM sample_offered WHERE file_name = ?').get(fileName) !== undefined
  );
}

/** Notes that a sample was brought in. */
export function noteOffered(connection: Connection, fileName: string, now: string): void {
  statement(
    connection,
    'INSERT INTO sample_offered (file_name, offered_at) VALUES (?, ?) ON CONFLICT (file_name) DO NOTHING',
  ).run(fileName, now);
}
