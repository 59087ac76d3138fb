import { expect, test } from 'vitest';
import { stepCautions } from '#core/job/step-cautions.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit } from '#core/map/records.ts';
import { sample } from '#tests/sample.ts';

// Common practice, no source: no airbag or high-voltage plug is parted without the maker's wait and isolation.
const circuit = sample.line.circuit;
const withDuty = (duty: Circuit['duty']): { map: MapDocument; circuit: Circuit } => {
  const changed = { ...circuit, duty };
  return { map: { ...sample.map, circuits: new Map([[changed.id, changed]]) }, circuit: changed };
};

test('an opening says what each of its panels is marked with, once', () => {
  expect(stepCautions(sample.map, circuit, ['panel:tread'], [])).toEqual([]);
  expect(stepCautions(sample.map, circuit, ['panel:tread', 'panel:seat'], [])).toEqual(['airbag']);
});

test('looking for a fault on an airbag or high-voltage circuit says so at every opening', () => {
  for (const [duty, caution] of [
    ['restraint', 'airbag'],
    ['high-voltage', 'high-voltage'],
  ] as const) {
    const { map, circuit: guarded } = withDuty(duty);
    expect(stepCautions(map, guarded, [], [])).toEqual([caution]);
    expect(stepCautions(map, guarded, ['panel:tread'], [])).toEqual([caution]);
  }
});

test('parting a plug that an airbag circuit runs through says so, whatever is searched for', () => {
  const { map, circuit: guarded } = withDuty('restraint');
  const segment = map.segments.get(guarded.path[0]?.segmentId ?? 'segment:none');
  const searched: Circuit = { ...guarded, id: 'circuit:other', duty: 'ordinary', path: [] };
  expect(stepCautions(map, searched, [], [segment?.toNodeId ?? 'node:none'])).toEqual(['airbag']);
  expect(stepCautions(map, searched, [], ['node:elsewhere'])).toEqual([]);
});
