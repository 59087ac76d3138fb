import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Connection } from '#db/connection.ts';
import { openStore } from '#db/open-store.ts';
import { freshFolder } from '#tests/hosts/fresh-folder.ts';

/** A store in a file, closed when the test ends. */
export function openAt(file: string): Connection {
  const store = openStore(file);
  if (!store.ok) throw new Error(store.problem.code);
  onTestFinished(() => void store.value.close());
  return store.value;
}

/** A new store in a folder of its own. */
export function openFreshStore(): { readonly connection: Connection; readonly file: string } {
  const file = join(freshFolder(), 'undertrim.db');
  return { connection: openAt(file), file };
}
