import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import type { Handlers } from '#electron/contract/handlers.ts';
import { answer } from '#electron/handlers/answer.ts';
import { openLog } from '#electron/log.ts';
import { freshFolder } from './fresh-folder.ts';

const now = (): string => '2026-01-05T09:00:00.000Z';

/** Handlers of which reading a place throws. */
function throwing(error: unknown): Handlers {
  const handler = (): never => {
    throw error;
  };
  return { 'place.read': handler } as unknown as Handlers;
}

test('a slip of ours is told as ours and noted without the customer’s words', () => {
  const folder = freshFolder();
  const slip = new TypeError('plate AB12 CDE is undefined\n    at the gate of AB12 CDE (x:1:2)');
  const reply = answer(throwing(slip), openLog(folder, now), 'place.read', { key: 'AB12 CDE' });
  expect(reply).toMatchObject({ ok: false, problem: { code: 'our-bug' } });
  const log = readFileSync(join(folder, 'undertrim.log'), 'utf8');
  expect(log).toContain('2026-01-05T09:00:00.000Z place.read TypeError');
  expect(log).toContain('answer.test.ts');
  expect(log).not.toContain('AB12');
});

test('a full disk under a handler is told as a full disk', () => {
  const full = new Database.SqliteError('database or disk is full', 'SQLITE_FULL');
  expect(answer(throwing(full), openLog(freshFolder(), now), 'place.read', { key: 'a' })).toEqual({
    ok: false,
    problem: { code: 'store-full' },
  });
});

test('a name that is no request is refused, whatever it is', () => {
  const log = openLog(freshFolder(), now);
  for (const name of ['__proto__', 'constructor', 'map.steal', '', 7, null, { toString: () => 'map.open' }]) {
    expect(answer({} as Handlers, log, name, {})).toMatchObject({ problem: { code: 'unknown-request' } });
  }
});

test('input beyond the contract never reaches a handler', () => {
  const log = openLog(freshFolder(), now);
  for (const input of [undefined, null, [], 'key', { key: 7 }, { key: 'a', more: 1 }]) {
    const reply = answer(throwing(new Error('reached')), log, 'place.read', input);
    expect(reply).toMatchObject({ ok: false, problem: { code: 'bad-field' } });
  }
});

test('a log that has grown long is put aside, one older one kept', () => {
  const folder = freshFolder();
  const file = join(folder, 'undertrim.log');
  writeFileSync(file, 'x'.repeat(500_001));
  openLog(folder, now).trouble('map.open', null);
  expect(statSync(join(folder, 'undertrim.older.log')).size).toBe(500_001);
  expect(readFileSync(file, 'utf8')).toBe('2026-01-05T09:00:00.000Z map.open object\n');
});

test('a log that cannot be written does not stop the work', () => {
  const file = join(freshFolder(), 'file');
  writeFileSync(file, '');
  openLog(join(file, 'below'), now).trouble('map.open', new Error('x'));
  expect(existsSync(join(file, 'below'))).toBe(false);
});
