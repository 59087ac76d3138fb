import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { mapToExchange } from '#core/map/exchange.ts';
import { sampleFolder } from '#electron/build/project-folder.ts';
import type { RequestInput, RequestName, RequestOutput } from '#electron/contract/contract.ts';
import { openWorkshop } from '#electron/open-workshop.ts';
import { sample } from '#tests/sample.ts';
import { freshFolder } from './fresh-folder.ts';

/** A workshop on a data folder, and the one way to ask it. */
function open(data: string, samples: string) {
  const workshop = openWorkshop(data, samples);
  if (!workshop.ok) throw new Error(workshop.problem.code);
  onTestFinished(() => workshop.value.close());
  const ask = <N extends RequestName>(name: N, input: RequestInput<N>): RequestOutput<N> => {
    const reply = workshop.value.answer(name, input);
    if (!reply.ok) throw new Error(JSON.stringify(reply.problem));
    return reply.value as RequestOutput<N>;
  };
  return { ask, close: workshop.value.close };
}

test('the first start brings in the sample vehicles of the project, jobs and all', () => {
  const { ask } = open(join(freshFolder(), 'data'), sampleFolder);
  const { maps, jobs } = ask('library.list', {});
  expect(maps.length).toBeGreaterThan(0);
  expect(jobs.length).toBeGreaterThan(0);
  for (const job of jobs) {
    const opened = ask('job.open', { jobId: job.id });
    expect(opened.map.circuits.some(({ id }) => id === opened.job.circuitId)).toBe(true);
  }
  expect(maps[0]?.picture.routes.length).toBeGreaterThan(0);
});

test('a sample the user removed does not come back, and one kept is not brought in twice', () => {
  const folder = freshFolder();
  const samples = join(folder, 'samples');
  mkdirSync(samples);
  writeFileSync(join(samples, 'a.map.json'), JSON.stringify(mapToExchange(sample.map)));
  writeFileSync(
    join(samples, 'b.map.json'),
    JSON.stringify({ ...mapToExchange(sample.map), id: 'map:other' }),
  );
  const first = open(join(folder, 'data'), samples);
  expect(
    first
      .ask('library.list', {})
      .maps.map(({ id }) => id)
      .sort(),
  ).toEqual(['map:other', 'map:tiny']);
  first.ask('map.remove', { mapId: 'map:tiny' });
  first.close();
  const second = open(join(folder, 'data'), samples);
  expect(second.ask('library.list', {}).maps.map(({ id }) => id)).toEqual(['map:other']);
});

test('a sample that cannot be read is noted and the start goes on', () => {
  const folder = freshFolder();
  writeFileSync(join(folder, 'bad.map.json'), '{');
  const { ask } = open(join(folder, 'data'), folder);
  expect(ask('library.list', {}).maps).toEqual([]);
  expect(readFileSync(join(folder, 'data', 'undertrim.log'), 'utf8')).toContain(
    'sample bad.map.json not-json',
  );
});

test('a map that hangs together badly, or a job that does not fit its map, is refused whole', () => {
  const { ask } = open(join(freshFolder(), 'data'), 'none');
  const map = mapToExchange(sample.map);
  const problemOf = (document: object): unknown => {
    try {
      ask('file.bringIn', { text: JSON.stringify(document), store: true });
    } catch (error) {
      return JSON.parse((error as Error).message);
    }
    return null;
  };
  expect(problemOf({ ...map, nodes: map.nodes.slice(1) })).toMatchObject({ code: 'missing-reference' });
  expect(problemOf(sample.job)).toEqual({ code: 'not-found', thing: 'map:tiny' });
  expect(problemOf(map)).toBeNull();
  expect(problemOf({ ...sample.job, mapRevision: 3 })).toEqual({
    code: 'stale-revision',
    expected: 3,
    found: 0,
  });
  expect(problemOf({ ...sample.job, circuitId: 'circuit:gone' })).toMatchObject({
    code: 'job-reference',
    missing: 'circuit:gone',
  });
  expect(ask('library.list', {}).jobs).toEqual([]);
  expect(problemOf({ ...sample.job, circuitId: null })).toBeNull();
  expect(ask('library.list', {}).jobs).toHaveLength(1);
});

test('a mirrored copy is for the other side of drive, turned as ticked, with its runs unchecked', () => {
  const { ask } = open(join(freshFolder(), 'data'), 'none');
  const map = mapToExchange({
    ...sample.map,
    rubSpots: new Map([[sample.rubSpot.id, sample.rubSpot]]),
  });
  ask('file.bringIn', { text: JSON.stringify(map), store: true });
  const copyOf = (mirrorIds?: string[]) => {
    const input = { mapId: map.id, name: 'Other side', mirrored: true, ...(mirrorIds ? { mirrorIds } : {}) };
    return ask('map.open', { mapId: ask('map.copy', input).mapId }).map;
  };
  const whole = copyOf();
  expect(whole.details).toMatchObject({ name: 'Other side', driveSide: 'left' });
  expect(whole.segments.every(({ unchecked }) => unchecked)).toBe(true);
  expect(whole.rubSpots[0]?.points[0]?.yMm).toBe(-4);
  const part = copyOf(['node:far']);
  expect(part.segments.filter(({ unchecked }) => unchecked).map(({ id }) => id)).toEqual(['segment:rear']);
  expect(part.rubSpots[0]?.points[0]?.yMm).toBe(4);
  const plain = ask('map.copy', { mapId: map.id, name: 'Again', mirrored: false });
  expect(ask('map.open', { mapId: plain.mapId }).map).toEqual({
    ...map,
    id: plain.mapId,
    details: { ...map.details, name: 'Again' },
  });
});
