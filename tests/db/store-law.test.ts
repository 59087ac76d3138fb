import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mapFromExchange, mapToExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch, invertPatch, type Patch, patchOf } from '#core/map/patch.ts';
import type { MapNode } from '#core/map/records.ts';
import type { Transaction } from '#core/map/transaction.ts';
import { addJob } from '#db/job-store.ts';
import { commitTransaction, readHistory, readMapAt } from '#db/map-history-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { addMap, readMap } from '#db/map-store.ts';
import { sample } from '#tests/sample.ts';
import { openAt, openFreshStore } from './open-fresh-store.ts';

const now = '2026-01-05T09:00:00Z';
const seed = 41;

type Act = { readonly kind: 'add' | 'remove' | 'move' | 'undo' | 'redo'; readonly place: number };

const acts = fc.array(
  fc.record<Act>({
    kind: fc.constantFrom('add', 'remove', 'move', 'undo', 'redo'),
    place: fc.integer({ min: 0, max: 5 }),
  }),
  { minLength: 1, maxLength: 25 },
);

const nodeAt = (place: number, xMm: number): MapNode => ({
  id: `node:spare-${place}`,
  name: `Spare ${place}`,
  kind: 'branch',
  at: { xMm, yMm: 0, zMm: 0 },
  panelIds: [],
  note: 'A note long enough to be worth pressing small, over and over and over again.',
});

/** The edit an act asks for on a map; null where it makes no sense there. */
function patchFor(map: MapDocument, { kind, place }: Act): Patch | null {
  const node = map.nodes.get(`node:spare-${place}`);
  if (kind === 'add') return node ? null : patchOf({ added: [nodeAt(place, 0)] });
  if (!node) return null;
  return kind === 'remove'
    ? patchOf({ removed: [node] })
    : patchOf({ changed: [[node, nodeAt(place, node.at.xMm + 10)]] });
}

const transaction = (origin: Transaction['origin'], patch: Patch): Transaction => ({
  label: 'edit.moveNode',
  origin,
  patch,
  selectionBefore: ['node:west'],
  selectionAfter: [],
});

test('after any edits, undos and redos the reopened store holds what memory holds, at every revision', () => {
  fc.assert(
    fc.property(acts, (list) => {
      const { connection, file } = openFreshStore();
      const states = [sample.map];
      let done: Transaction[] = [];
      let undone: Transaction[] = [];
      addMap(connection, mapToExchange(sample.map), now);
      for (const act of list) {
        const map = states.at(-1) as MapDocument;
        let next: Transaction | null = null;
        if (act.kind === 'undo' || act.kind === 'redo') {
          const turned = act.kind === 'undo' ? done.at(-1) : undone[0];
          if (!turned) continue;
          next = transaction(act.kind, act.kind === 'undo' ? invertPatch(turned.patch) : turned.patch);
          if (act.kind === 'undo') [done, undone] = [done.slice(0, -1), [turned, ...undone]];
          else [done, undone] = [[...done, turned], undone.slice(1)];
        } else {
          const patch = patchFor(map, act);
          if (!patch) continue;
          next = transaction('user', patch);
          [done, undone] = [[...done, next], []];
        }
        const kept = commitTransaction(connection, sample.map.id, map.revision, next, now);
        expect(kept).toEqual({ ok: true, value: map.revision + 1 });
        const after = applyPatch(map, next.patch);
        if (!after.ok) throw new Error(after.problem.code);
        states.push({ ...after.value, revision: map.revision + 1 });
      }
      connection.close();
      const again = openAt(file);
      expect(readHistory(again, sample.map.id)).toEqual({ done, undone });
      const kept = readMap(again, sample.map.id);
      expect(kept && mapFromExchange(kept)).toEqual(states.at(-1));
      for (const state of states) {
        expect(readMapAt(again, sample.map.id, state.revision)).toEqual({
          ok: true,
          value: mapToExchange(state),
        });
      }
      again.close();
    }),
    { seed, numRuns: 25 },
  );
});

test('what joins the newest edit is one entry with it, turns as one, and leaves no state between', () => {
  const { connection } = openFreshStore();
  addMap(connection, mapToExchange(sample.map), now);
  const id = sample.map.id;
  const named = (from: string, to: string): Transaction =>
    transaction(
      'user',
      patchOf({
        changed: [
          [
            { ...sample.seat, name: from },
            { ...sample.seat, name: to },
          ],
        ],
      }),
    );
  const commit = (revision: number, next: Transaction, joins: boolean) =>
    commitTransaction(connection, id, revision, next, now, joins);
  const was = sample.seat.name;
  expect(commit(0, named(was, 'S'), false).ok).toBe(true);
  expect(commit(1, named('S', 'Se'), true).ok).toBe(true);
  expect(commit(2, named('Se', 'Sea'), true).ok).toBe(true);
  expect(readHistory(connection, id).done.map((each) => each.patch)).toEqual([named(was, 'Sea').patch]);
  expect(readMapAt(connection, id, 0)).toMatchObject({ ok: true });
  for (const gone of [1, 2]) {
    expect(readMapAt(connection, id, gone)).toMatchObject({ problem: { code: 'stale-revision' } });
  }
  const undo = transaction('undo', named('Sea', was).patch);
  expect(commit(3, undo, false).ok).toBe(true);
  expect(readMap(connection, id)?.panels.find((panel) => panel.id === 'panel:seat')?.name).toBe(was);
  // What was turned is an entry of its own for good.
  expect(commit(4, named(was, 'X'), true)).toMatchObject({ problem: { code: 'stale-revision' } });
  expect(commit(4, transaction('redo', named(was, 'Sea').patch), false).ok).toBe(true);
  expect(readHistory(connection, id).done).toHaveLength(1);
});

const firstMove = transaction('user', patchOf({ removed: [sample.rubSpot] }));

test('a refused edit leaves nothing behind, whatever part of it was good', () => {
  const { connection } = openFreshStore();
  addMap(connection, mapToExchange(sample.map), now);
  const before = readMap(connection, sample.map.id);
  const half = patchOf({ added: [nodeAt(1, 0)], removed: [sample.rubSpot, sample.rubSpot] });
  const stale = patchOf({ changed: [[{ ...sample.seat, minutesOff: 99 }, sample.seat]] });
  for (const [patch, thing] of [
    [half, 'rub-spot:edge'],
    [stale, 'panel:seat'],
    [patchOf({ added: [nodeAt(2, 0), sample.tread] }), 'panel:tread'],
  ] as const) {
    const kept = commitTransaction(connection, sample.map.id, 0, transaction('user', patch), now);
    expect(kept).toEqual({ ok: false, problem: { code: 'patch-conflict', thing } });
  }
  expect(readMap(connection, sample.map.id)).toEqual(before);
  expect(readHistory(connection, sample.map.id)).toEqual({ done: [], undone: [] });
});

test('an undo that is not the exact way back is refused', () => {
  const { connection } = openFreshStore();
  addMap(connection, mapToExchange(sample.map), now);
  commitTransaction(connection, sample.map.id, 0, firstMove, now);
  const other = transaction('undo', patchOf({ added: [{ ...sample.rubSpot, severity: 3 }] }));
  expect(commitTransaction(connection, sample.map.id, 1, other, now)).toMatchObject({
    ok: false,
    problem: { code: 'patch-conflict' },
  });
  expect(readMap(connection, sample.map.id)?.rubSpots).toEqual([]);
});

test('a map is pinned once for each revision a job was opened on, and stays as it was', () => {
  const { connection } = openFreshStore();
  const map = mapToExchange(sample.map);
  addMap(connection, map, now);
  addJob(connection, sample.job, map);
  addJob(connection, { ...sample.job, id: 'job:second' }, map);
  commitTransaction(connection, map.id, 0, firstMove, now);
  const pins = connection.prepare('SELECT count(*) FROM map_snapshot').pluck();
  expect(pins.get()).toBe(1);
  expect(readPinnedMap(connection, map.id, 0)).toEqual(map);
  const now1 = readMap(connection, map.id);
  if (!now1) throw new Error('the map is gone');
  addJob(connection, { ...sample.job, id: 'job:third', mapRevision: 1 }, now1);
  expect(pins.get()).toBe(2);
  expect(readPinnedMap(connection, map.id, 1)?.rubSpots).toEqual([]);
});
