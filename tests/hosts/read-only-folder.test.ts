import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openStore } from '#db/open-store.ts';
import { freshFolder } from './fresh-folder.ts';

/** Starts on a folder as a user who may not write there; root may write anywhere, so it becomes another. */
function startWithoutRights(data: string) {
  const program = join(import.meta.dirname, 'serve-until-stopped.ts');
  const other = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
  return spawnSync(process.execPath, [program, '--data', data, '--no-window'], {
    encoding: 'utf8',
    timeout: 60_000,
    ...other,
  });
}

test.skipIf(process.platform === 'win32')(
  'a start on a folder that may not be written to says so and what to do, and changes nothing',
  () => {
    const data = join(freshFolder(), 'data');
    const store = openStore(join(data, 'undertrim.db'));
    if (store.ok) store.value.close();
    writeFileSync(join(data, 'in-use.lock'), '');
    const before = readFileSync(join(data, 'undertrim.db'));
    const names = readdirSync(data);
    for (const name of names) chmodSync(join(data, name), 0o444);
    chmodSync(join(data, '..'), 0o755);
    chmodSync(data, 0o555);
    const { status, stderr } = startWithoutRights(data);
    chmodSync(data, 0o755);
    expect(stderr).toContain(`may not write in ${data}`);
    expect(stderr).toContain('--data');
    expect(status).toBe(1);
    expect(readFileSync(join(data, 'undertrim.db')).equals(before)).toBe(true);
    expect(readdirSync(data)).toEqual(names);
  },
  90_000,
);
