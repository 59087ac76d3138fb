import { type Connection, statement } from './connection.ts';

/** What a place of the screen kept for itself (camera, open lists); null when nothing yet. */
export function readPlace(connection: Connection, key: string): string | null {
  const row = statement<{ text: string }>(connection, 'SELECT text FROM place_state WHERE key = ?').get(key);
  return row?.text ?? null;
}

/** Keeps the state of a place under its key, over what was there. */
export function keepPlace(connection: Connection, key: string, text: string): void {
  statement(
    connection,
    'INSERT INTO place_state (key, text) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET text = excluded.text',
  ).run(key, text);
}
