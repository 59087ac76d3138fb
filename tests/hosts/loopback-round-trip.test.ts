import { describe, expect, test } from 'vitest';
import type { JobEntry } from '#core/job/job-document.ts';
import { type MapExchange, mapFromExchange, mapToExchange } from '#core/map/exchange.ts';
import { applyPatch, invertPatch, type Patch, patchOf } from '#core/map/patch.ts';
import type { Transaction } from '#core/map/transaction.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { Result } from '#core/quantity/result.ts';
import { provedAt } from '#tests/core/job/proved-at.ts';
import { randomPng } from '#tests/generated/random-picture.ts';
import { sample } from '#tests/sample.ts';
import { type Launch, launchLoopback } from './loopback-launch.ts';

/** The value of a result that must be good. */
function good<T>(result: Result<T>): T {
  expect(result).toMatchObject({ ok: true });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

const transaction = (patch: Patch, origin: Transaction['origin'] = 'user'): Transaction => ({
  label: 'edit.test',
  origin,
  patch,
  selectionBefore: [],
  selectionAfter: ['node:west'],
});

const moved = patchOf({
  changed: [
    [
      sample.map.nodes.get('node:west') as never,
      { ...sample.map.nodes.get('node:west'), at: { xMm: -25, yMm: 0, zMm: 0 } } as never,
    ],
  ],
});

const sampleText = JSON.stringify(mapToExchange(sample.map));

async function bringInSample({ client }: Launch): Promise<MapId> {
  const { mapId } = good(await client('file.bringIn', { text: sampleText, store: true }));
  return mapId as MapId;
}

describe('every request through the loopback host', () => {
  test('a new map is listed, opened, edited and removed', async () => {
    const { client } = await launchLoopback();
    const { mapId } = good(
      await client('map.create', { name: 'Hatch', bodyStyle: 'hatch', driveSide: 'left' }),
    );
    expect(good(await client('library.list', {})).maps).toMatchObject([
      { id: mapId, name: 'Hatch', revision: 0 },
    ]);
    const node = sample.map.nodes.get('node:west');
    const added = transaction(patchOf({ added: [node as never] }));
    const committed = good(await client('map.commit', { mapId, expectedRevision: 0, transaction: added }));
    expect(committed).toEqual({ revision: 1 });
    const opened = good(await client('map.open', { mapId }));
    expect(opened.map.nodes).toEqual([node]);
    expect(opened.history).toEqual({ done: [added], undone: [] });
    good(await client('map.remove', { mapId }));
    expect(good(await client('library.list', {})).maps).toEqual([]);
    expect(await client('map.open', { mapId })).toEqual({
      ok: false,
      problem: { code: 'not-found', thing: mapId },
    });
  });

  test('an edit on an old revision is refused and changes nothing', async () => {
    const launch = await launchLoopback();
    const mapId = await bringInSample(launch);
    const commit = { mapId, expectedRevision: 0, transaction: transaction(moved) };
    good(await launch.client('map.commit', commit));
    expect(await launch.client('map.commit', commit)).toEqual({
      ok: false,
      problem: { code: 'stale-revision', expected: 0, found: 1 },
    });
    const { map, history } = good(await launch.client('map.open', { mapId }));
    expect([map.revision, history.done.length]).toEqual([1, 1]);
  });

  test('a job keeps its map as it stood, whatever is edited or removed later', async () => {
    const launch = await launchLoopback();
    const { client } = launch;
    const mapId = await bringInSample(launch);
    const before = good(await client('map.open', { mapId })).map;
    const { vehicle, complaint, failureType, circuitId } = sample.job;
    const intake = {
      vehicle,
      complaint,
      failureType,
      circuitId,
      alsoFailingCircuitIds: [],
      workingCircuitIds: [],
    };
    const { jobId } = good(await client('job.create', { mapId, ...intake }));
    good(await client('map.commit', { mapId, expectedRevision: 0, transaction: transaction(moved) }));
    expect(good(await client('job.open', { jobId })).map).toEqual(before);
    good(await client('map.remove', { mapId }));
    expect(good(await client('job.open', { jobId })).map).toEqual(before);
    expect(good(await client('library.list', {})).jobs).toMatchObject([
      { id: jobId, mapId, mapName: 'Tiny sample', plate: 'STOCK 1', stage: 'testing' },
    ]);
  });

  test('entries are added to a job in order, and its stage and finds follow', async () => {
    const launch = await launchLoopback();
    const { client } = launch;
    const mapId = await bringInSample(launch);
    const text = JSON.stringify({ ...sample.job, mapId });
    const { jobId } = good(await client('file.bringIn', { text, store: true }));
    const id = jobId ?? 'job:none';
    const off = {
      id: 'entry:1',
      at: '2026-01-05T09:20:00Z',
      type: 'panel-off',
      panelId: 'panel:tread',
    } as const;
    const [seen, described, proof] = provedAt([{ segmentId: 'segment:middle', fromMm: 200, toMm: 260 }]);
    const found: JobEntry = { ...seen, id: 'entry:2', at: '2026-01-05T09:31:00Z' };
    expect(good(await client('job.append', { jobId: id, expectedEntries: 0, entries: [off] }))).toEqual({
      entryCount: 1,
    });
    const late = await client('job.append', { jobId: id, expectedEntries: 0, entries: [found] });
    expect(late).toEqual({ ok: false, problem: { code: 'stale-revision', expected: 0, found: 1 } });
    good(await client('job.append', { jobId: id, expectedEntries: 1, entries: [found] }));
    expect(good(await client('job.open', { jobId: id })).job.entries).toEqual([off, found]);
    const list = good(await client('library.list', {}));
    expect(list.jobs).toMatchObject([{ stage: 'found', minutesSpent: 31 }]);
    // What was seen counts as a find once it is proved.
    expect(list.maps).toMatchObject([{ jobCount: 1, findCount: 0 }]);
    good(await client('job.append', { jobId: id, expectedEntries: 2, entries: [described, proof] }));
    expect(good(await client('library.list', {})).maps).toMatchObject([{ findCount: 1 }]);
    const back = {
      id: 'entry:3',
      at: '2026-01-05T09:32:00Z',
      type: 'take-back',
      entryId: 'entry:2',
    } as const;
    good(await client('job.append', { jobId: id, expectedEntries: 4, entries: [back] }));
    expect(good(await client('library.list', {})).jobs).toMatchObject([{ stage: 'opening' }]);
    const stray = { ...back, id: 'entry:4', entryId: 'entry:never' } as const;
    expect(await client('job.append', { jobId: id, expectedEntries: 5, entries: [stray] })).toEqual({
      ok: false,
      problem: { code: 'job-reference', entry: 'entry:4', field: 'entryId', missing: 'entry:never' },
    });
  });

  test('what was taken down at the start of a job can be corrected', async () => {
    const launch = await launchLoopback();
    await bringInSample(launch);
    const { client } = launch;
    good(await client('file.bringIn', { text: JSON.stringify(sample.job), store: true }));
    const { id, mapId, mapRevision, openedAt, entries, format, version, ...intake } = sample.job;
    const changed = { ...intake, circuitId: null, complaint: 'Lamp stays on' };
    good(await client('job.changeIntake', { jobId: id, ...changed }));
    expect(good(await client('job.open', { jobId: id })).job).toEqual({ ...sample.job, ...changed });
    expect([mapId, mapRevision, openedAt, entries.length, format, version]).toHaveLength(6);
  });

  test('a map handed out and brought in again is known, and drawn further it comes in beside ours when told to', async () => {
    const launch = await launchLoopback();
    const { client } = launch;
    const mapId = await bringInSample(launch);
    const { text, fileName } = good(await client('file.handOut', { mapId }));
    expect(fileName).toBe('tiny-sample.map.json');
    const looked = good(await client('file.bringIn', { text, store: false }));
    expect(looked).toMatchObject({
      summary: { kind: 'map', segments: 3, alreadyHere: true, sameHere: true },
      mapId: null,
    });
    expect(good(await client('file.bringIn', { text, store: true })).mapId).toBe(mapId);
    expect(good(await client('library.list', {})).maps).toHaveLength(1);
    const theirs = JSON.parse(text) as MapExchange;
    const further = { ...theirs, revision: 3, details: { ...theirs.details, name: 'Drawn further' } };
    const file = { text: JSON.stringify(further), store: true, whenOther: 'both' as const };
    const { mapId: copyId } = good(await client('file.bringIn', file));
    expect(copyId).not.toBe(mapId);
    expect(good(await client('library.list', {})).maps).toHaveLength(2);
    const copy: MapExchange = good(await client('map.open', { mapId: copyId as MapId })).map;
    expect({ ...copy, id: mapId }).toEqual(further);
    expect(good(await client('map.open', { mapId })).map).toEqual(theirs);
  });

  test('undo and redo move through the kept history, and an edit drops what was undone', async () => {
    const launch = await launchLoopback();
    const { client } = launch;
    const mapId = await bringInSample(launch);
    const commit = async (expectedRevision: number, patch: Patch, origin?: Transaction['origin']) =>
      client('map.commit', { mapId, expectedRevision, transaction: transaction(patch, origin) });
    good(await commit(0, moved));
    expect(await commit(1, moved, 'redo')).toMatchObject({ ok: false });
    good(await commit(1, invertPatch(moved), 'undo'));
    const undone = good(await client('map.open', { mapId }));
    expect(mapFromExchange(undone.map)).toEqual({ ...sample.map, revision: 2 });
    expect(undone.history).toMatchObject({ done: [], undone: [{ patch: moved }] });
    good(await commit(2, moved, 'redo'));
    expect(good(await client('map.open', { mapId })).history).toMatchObject({ done: [{}], undone: [] });
    good(await commit(3, invertPatch(moved), 'undo'));
    good(await commit(4, patchOf({ removed: [sample.rubSpot] })));
    expect(good(await client('map.open', { mapId })).history).toMatchObject({ done: [{}], undone: [] });
    const past = applyPatch(sample.map, moved);
    expect(past.ok && mapToExchange({ ...past.value, revision: 3 })).toEqual(
      good(await client('map.open', { mapId, revision: 3 })).map,
    );
  });

  test('places keep their state and pictures keep their bytes', async () => {
    const { client } = await launchLoopback();
    expect(good(await client('place.read', { key: 'draw' }))).toEqual({ text: null });
    good(await client('place.keep', { key: 'draw', text: '{"zoom":2}' }));
    expect(good(await client('place.read', { key: 'draw' }))).toEqual({ text: '{"zoom":2}' });
    const base64 = randomPng(3).toString('base64');
    const { sha256 } = good(await client('picture.keep', { base64 }));
    expect(good(await client('picture.read', { sha256 }))).toEqual({ mediaType: 'image/png', base64 });
    const text = Buffer.from('<svg onload=alert(1)>').toString('base64');
    expect(await client('picture.keep', { base64: text })).toMatchObject({
      problem: { code: 'wrong-format' },
    });
  });

  test('bad input is named by its field and nothing is kept', async () => {
    const { client, address, ownHeaders } = await launchLoopback();
    const bad = { name: '', bodyStyle: 'hatch', driveSide: 'left' } as const;
    expect(await client('map.create', bad)).toMatchObject({ problem: { code: 'bad-field', path: 'name' } });
    const reply = await fetch(`${address}/request/toString`, {
      method: 'POST',
      headers: ownHeaders,
      body: '{}',
    });
    expect(await reply.json()).toEqual({ ok: false, problem: { code: 'unknown-request', name: 'toString' } });
    for (const [text, code] of [
      ['{', 'not-json'],
      ['{"format":"other"}', 'wrong-format'],
      ['{"format":"undertrim.map","version":99}', 'newer-version'],
      ['{"format":"undertrim.map","version":1}', 'bad-field'],
    ] as const) {
      expect(await client('file.bringIn', { text, store: true })).toMatchObject({ problem: { code } });
    }
    expect(good(await client('library.list', {}))).toEqual({ maps: [], jobs: [] });
  });
});
