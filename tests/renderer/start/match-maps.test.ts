import { expect, test } from 'vitest';
import type { MapSummary } from '#electron/contract/contract.ts';
import { matchMaps } from '#renderer/places/start/match-maps.ts';

const map = (id: MapSummary['id'], name: string, changes: Partial<MapSummary> = {}): MapSummary => ({
  id,
  revision: 1,
  name,
  bodyStyle: 'hatch',
  driveSide: 'right',
  changedAt: '2026-01-05T09:00:00Z',
  jobCount: 0,
  findCount: 0,
  picture: { outlines: [], routes: [] },
  ...changes,
});
const maps = [
  map('map:pivet', 'Orlune Pivét, 2017'),
  map('map:aldine', 'Varnholt Aldine', { bodyStyle: 'estate', driveSide: 'left' }),
];
const found = (typed: string): string[] => matchMaps(maps, typed).map(({ id }) => id);

test('nothing typed shows every map', () => {
  expect(found('')).toEqual(['map:pivet', 'map:aldine']);
  expect(found('   ')).toEqual(['map:pivet', 'map:aldine']);
});

test('a few letters find a map, whatever their case or accent', () => {
  expect(found('pive')).toEqual(['map:pivet']);
  expect(found('PIVET')).toEqual(['map:pivet']);
  expect(found('ald')).toEqual(['map:aldine']);
});

test('body style and side of drive find a map as well, and every word must fit', () => {
  expect(found('estate lhd')).toEqual(['map:aldine']);
  expect(found('estate rhd')).toEqual([]);
  expect(found('orlune hatch')).toEqual(['map:pivet']);
});
