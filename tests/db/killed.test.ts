import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { seededChance } from '#core/quantity/chance.ts';
import { readHistory } from '#db/map-history-store.ts';
import { readMap } from '#db/map-store.ts';
import { freshFolder } from '#tests/hosts/fresh-folder.ts';
import { openAt } from './open-fresh-store.ts';

/** Runs the editing program on a file and kills it after so long; gives the last revision it told. */
async function editUntilKilled(file: string, afterFirstMs: number): Promise<number> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'edit-until-killed.ts'), file], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let told = '';
  child.stdout.on('data', (part: Buffer) => {
    told += part.toString();
  });
  const ended = new Promise((resolve) => child.once('close', resolve));
  while (!told.includes('\n') && child.exitCode === null) await wait(5);
  await wait(afterFirstMs);
  child.kill('SIGKILL');
  await ended;
  return Number(told.slice(0, told.lastIndexOf('\n')).split('\n').at(-1));
}

test('a program killed in the middle of work has every edit it said was kept', async () => {
  const chance = seededChance(7);
  for (let round = 0; round < 4; round++) {
    const file = join(freshFolder(), 'undertrim.db');
    const told = await editUntilKilled(file, chance() * 120);
    const connection = openAt(file);
    expect(connection.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(connection.pragma('foreign_key_check')).toEqual([]);
    const map = readMap(connection, 'map:tiny');
    expect(told).toBeGreaterThan(0);
    // The last edit may have reached the disk before its telling did; never the other way round.
    expect(map?.revision === told || map?.revision === told + 1).toBe(true);
    expect(map?.nodes.find(({ id }) => id === 'node:far')?.at.yMm).toBe(map?.revision);
    expect(readHistory(connection, 'map:tiny').done).toHaveLength(map?.revision ?? -1);
  }
}, 30_000);
