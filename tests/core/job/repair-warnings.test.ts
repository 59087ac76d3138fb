import { describe, expect, test } from 'vitest';
import { type PlannedRepair, repairWarnings } from '#core/job/repair-warnings.ts';
import type { CircuitDuty } from '#core/map/kinds.ts';
import type { Panel, Segment } from '#core/map/records.ts';
import { sample } from '#tests/sample.ts';
import { place } from './closing-record.ts';

const good: PlannedRepair = {
  practices: ['crimp-and-sealed-sleeve'],
  joints: 1,
  cures: ['edge-trim'],
  makerAllows: 'yes',
};

function codes(
  repair: Partial<PlannedRepair>,
  changes: Partial<Segment> = {},
  duty: CircuitDuty = 'ordinary',
  stretches = [...place] as { segmentId: 'segment:middle'; fromMm: number; toMm: number }[],
): readonly string[] {
  const segments = new Map(sample.map.segments).set('segment:middle', { ...sample.middle, ...changes });
  return repairWarnings({ ...sample.map, segments }, stretches, duty, { ...good, ...repair })
    .map(({ code }) => code)
    .filter((code) => code !== 'shield-trim-from-heat');
}

describe('practice that does not last', () => {
  test('a good repair at a quiet place gives no warning', () => {
    expect(codes({})).toEqual([]);
  });

  test('a join where the loom bends is warned of, one moved off the bend is not', () => {
    expect(codes({}, { traits: ['crosses-hinge'] })).toEqual(['join-in-flexing-part']);
    expect(codes({}, { traits: ['slides-with-seat'] })).toEqual(['join-in-flexing-part']);
    const practices = ['crimp-and-sealed-sleeve', 'joints-moved-off-the-bend'] as const;
    expect(codes({ practices: [...practices] }, { traits: ['crosses-hinge'] })).toEqual([]);
  });

  test('two joins side by side are warned of, staggered ones are not', () => {
    expect(codes({ joints: 2 })).toEqual(['joins-side-by-side']);
    expect(codes({ joints: 2, practices: ['crimp-and-sealed-sleeve', 'joints-staggered'] })).toEqual([]);
  });

  test('a missing fixing near by must be renewed', () => {
    const clips = [{ id: 'clip:gone', stationMm: 400, kind: 'clip', missing: true }] as const;
    expect(codes({}, { clips: [...clips] })).toEqual(['fixing-not-renewed']);
    expect(codes({ cures: ['fixing-renewed'] }, { clips: [...clips] })).toEqual([]);
    expect(
      codes({}, { clips: [{ ...clips[0], stationMm: 0 }] }, 'ordinary', [
        { ...place[0], fromMm: 400, toMm: 420 },
      ]),
    ).toEqual([]);
  });

  test('a repair that takes nothing away from what rubbed is warned of', () => {
    expect(codes({ cures: [] })).toEqual(['cause-not-removed']);
  });

  test('tape alone is not enough in the wet', () => {
    expect(codes({ practices: ['crimp-and-tape'] }, { traits: ['wet'] })).toEqual(['join-not-sealed']);
    expect(codes({ practices: ['crimp-and-tape'] })).toEqual([]);
  });

  test('a join within 50 mm of a plug is warned of', () => {
    const near = [{ ...place[0], fromMm: 30, toMm: 40 }];
    expect(codes({}, {}, 'ordinary', near)).toEqual(['join-near-plug']);
    expect(codes({ practices: ['insulation-covered'], joints: 0 }, {}, 'ordinary', near)).toEqual([]);
  });

  test('a data pair stays twisted', () => {
    expect(codes({}, {}, 'data')).toEqual(['pair-untwisted']);
    expect(codes({ practices: ['crimp-and-sealed-sleeve', 'pair-kept-twisted'] }, {}, 'data')).toEqual([]);
  });
});

describe('wiring that may not be repaired without asking', () => {
  test('airbag wiring asks for the maker’s word, high voltage always', () => {
    expect(codes({ makerAllows: 'not-asked' }, {}, 'restraint')).toEqual(['maker-must-allow']);
    expect(codes({ makerAllows: 'yes' }, {}, 'restraint')).toEqual([]);
    expect(codes({ makerAllows: 'yes' }, {}, 'high-voltage')).toEqual(['maker-must-allow']);
  });
});

test('hot air asks for a shield at trim, and is refused near fuel', () => {
  const warned = (cautions: Panel['cautions']) => {
    const panels = new Map(sample.map.panels).set('panel:seat', { ...sample.seat, cautions });
    return repairWarnings({ ...sample.map, panels }, [...place], 'ordinary', good).map(({ code }) => code);
  };
  expect(warned(['airbag'])).toEqual(['shield-trim-from-heat']);
  expect(warned(['fuel'])).toEqual(['no-heat-near-fuel']);
});
