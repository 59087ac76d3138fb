import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import type { RequestName, RequestOutput } from '#electron/contract/contract.ts';
import { openWorkshop, type Workshop } from '#electron/open-workshop.ts';
import { freshFolder } from './fresh-folder.ts';

function openAt(folder: string): Workshop {
  const workshop = openWorkshop(folder, join(folder, 'no-samples'));
  if (!workshop.ok) throw new Error(workshop.problem.code);
  return workshop.value;
}

function ask<N extends RequestName>(workshop: Workshop, name: N, input: unknown): RequestOutput<N> {
  const reply = workshop.answer(name, input);
  if (!reply.ok) throw new Error(reply.problem.code);
  return reply.value as RequestOutput<N>;
}

const makeMap = (workshop: Workshop, name: string) =>
  ask(workshop, 'map.create', { name, bodyStyle: 'van', driveSide: 'right' });
const mapNames = (workshop: Workshop) => ask(workshop, 'library.list', {}).maps.map(({ name }) => name);

test('a start makes a backup of what changed, and none when nothing did', async () => {
  const folder = freshFolder();
  const first = openAt(folder);
  await first.backups.settled();
  expect(ask(first, 'backup.list', {})).toMatchObject({
    running: null,
    trouble: null,
    backups: [{ reason: 'start' }],
  });
  first.backups.begin('start');
  await first.backups.settled();
  expect(ask(first, 'backup.list', {}).backups).toHaveLength(1);
  makeMap(first, 'Van');
  first.close();
  const second = openAt(folder);
  onTestFinished(() => second.close());
  await second.backups.settled();
  expect(ask(second, 'backup.list', {}).backups).toHaveLength(2);
});

test('going back to a backup takes one request, and so does going forward again', async () => {
  const workshop = openAt(freshFolder());
  onTestFinished(() => workshop.close());
  await workshop.backups.settled();
  makeMap(workshop, 'Van');
  ask(workshop, 'backup.take', {});
  await workshop.backups.settled();
  makeMap(workshop, 'Later van');
  const asked = ask(workshop, 'backup.list', {}).backups.find(({ reason }) => reason === 'asked');
  ask(workshop, 'backup.restore', { fileName: asked?.fileName });
  await workshop.backups.settled();
  expect(mapNames(workshop)).toEqual(['Van']);
  makeMap(workshop, 'Van after');
  const before = ask(workshop, 'backup.list', {}).backups.find(({ reason }) => reason === 'before-restore');
  ask(workshop, 'backup.restore', { fileName: before?.fileName });
  await workshop.backups.settled();
  expect(mapNames(workshop).sort()).toEqual(['Later van', 'Van']);
  expect(ask(workshop, 'backup.list', {}).backups).toHaveLength(4);
});

test('a backup that is not among them is refused by name', () => {
  const workshop = openAt(freshFolder());
  onTestFinished(() => workshop.close());
  for (const fileName of ['undertrim.db', '../undertrim.db', '']) {
    expect(workshop.answer('backup.restore', { fileName })).toMatchObject({ ok: false });
  }
});

test('closing in the middle of a backup leaves no half of one', async () => {
  const folder = freshFolder();
  const first = openAt(folder);
  first.close();
  await first.backups.settled();
  const second = openAt(folder);
  onTestFinished(() => second.close());
  await second.backups.settled();
  expect(readdirSync(join(folder, 'backups')).filter((name) => !name.endsWith('.db'))).toEqual([]);
  expect(ask(second, 'backup.list', {}).backups.length).toBeGreaterThan(0);
});

test('after a damaged start the page can ask what was lost until it was read', async () => {
  const folder = freshFolder();
  const first = openAt(folder);
  makeMap(first, 'Van');
  ask(first, 'backup.take', {});
  await first.backups.settled();
  first.close();
  writeFileSync(join(folder, 'undertrim.db'), 'not a store '.repeat(2_000));
  const second = openAt(folder);
  onTestFinished(() => second.close());
  const { loss } = ask(second, 'loss.read', {});
  expect(loss?.asideFolder).toContain('set-aside');
  expect(loss?.keptMaps).toBe(mapNames(second).length);
  ask(second, 'loss.noted', {});
  expect(ask(second, 'loss.read', {})).toEqual({ loss: null });
});
