import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { rank } from '#core/job/rank.ts';
import { whatChanged } from '#core/job/rank-change.ts';
import type { Ranking } from '#core/job/ranking.ts';
import type { Stretch } from '#core/job/reading.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit } from '#core/map/records.ts';
import { compensatedSum } from '#core/quantity/sums.ts';
import { sample } from '#tests/sample.ts';

const at = '2026-01-05T10:00:00Z';
const ranked = (map: MapDocument, job: Job): Ranking => {
  const result = rank(map, job);
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
};
const withEntries = (entries: readonly JobEntry[]): Job => ({ ...sample.job, entries: [...entries] });
const sum = (ranking: Ranking): number =>
  compensatedSum([
    ...ranking.posterior.stretches.map((stretch) => stretch.probability),
    ...ranking.posterior.components.map((part) => part.probability),
    ranking.posterior.noneOfThese,
  ]);

const runs = ['segment:front', 'segment:middle', 'segment:rear'] as const;
const stretch = fc
  .tuple(fc.constantFrom(...runs), fc.integer({ min: 0, max: 490 }), fc.integer({ min: 10, max: 500 }))
  .map(
    ([segmentId, from, length]): Stretch => ({ segmentId, fromMm: from, toMm: Math.min(500, from + length) }),
  );
const inspection = (results: readonly ('seen-sound' | 'seen-damaged-not-cause' | 'found')[]) =>
  fc
    .tuple(
      fc.array(stretch, { minLength: 1, maxLength: 3 }),
      fc.constantFrom(...results),
      fc.double({ min: 0.05, max: 1, noNaN: true }),
    )
    .map(
      ([stretches, result, lookQuality]): JobEntry => ({
        id: 'entry:look',
        at,
        type: 'inspection',
        stretches: [...stretches],
        result,
        lookQuality,
        note: '',
      }),
    );
const move = fc.tuple(stretch, fc.integer({ min: 0, max: 10 })).map(
  ([moved, changed]): JobEntry => ({
    id: 'entry:move',
    at,
    type: 'reading',
    reading: { test: 'move', stretches: [moved], changed, tried: 10 },
    state: { apartNodeIds: [], switchClosed: null, ignitionOn: true, batteryConnected: true },
    note: '',
  }),
);
const entries = fc
  .array(fc.oneof(inspection(['seen-sound', 'seen-damaged-not-cause']), move), { maxLength: 5 })
  .map((list) => list.map((entry, i): JobEntry => ({ ...entry, id: `entry:e${i}` })));
const settings = { seed: 41, numRuns: 60 };

const massOf = (ranking: Ranking, stretches: readonly Stretch[]): number => {
  const { cellEdgesMm, cellProbability } = ranking.posterior;
  let mass = 0;
  cellProbability.forEach((probability, cell) => {
    const middle = ((cellEdgesMm[cell] as number) + (cellEdgesMm[cell + 1] as number)) / 2;
    const inside = stretches.some(({ segmentId, fromMm, toMm }) => {
      const start = runs.indexOf(segmentId as (typeof runs)[number]) * 500;
      return middle >= start + fromMm && middle <= start + toMm;
    });
    if (inside) mass += probability;
  });
  return mass;
};

describe('the answer as a whole', () => {
  test('stretches, parts and none of these sum to one, and so do the classes', () => {
    fc.assert(
      fc.property(entries, (list) => {
        const ranking = ranked(sample.map, withEntries(list));
        expect(Math.abs(sum(ranking) - 1)).toBeLessThan(1e-9);
        expect(Math.abs(compensatedSum(Object.values(ranking.posterior.classes)) - 1)).toBeLessThan(1e-9);
      }),
      settings,
    );
  });

  test('the order in which entries were made does not matter', () => {
    fc.assert(
      fc.property(entries, (list) => {
        const forward = ranked(sample.map, withEntries(list));
        const backward = ranked(sample.map, withEntries([...list].reverse()));
        forward.posterior.cellProbability.forEach((probability, cell) => {
          expect(backward.posterior.cellProbability[cell]).toBeCloseTo(probability, 12);
        });
        expect(backward.expectedMinutes).toBeCloseTo(forward.expectedMinutes, 9);
      }),
      settings,
    );
  });

  test('a sound look never raises the chance of its own stretch', () => {
    fc.assert(
      fc.property(
        entries,
        stretch,
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (list, seen, lookQuality) => {
          const look: JobEntry = {
            id: 'entry:new',
            at,
            type: 'inspection',
            stretches: [seen],
            result: 'seen-sound',
            lookQuality,
            note: '',
          };
          const before = ranked(sample.map, withEntries(list));
          const after = ranked(sample.map, withEntries([...list, look]));
          expect(massOf(after, [seen])).toBeLessThanOrEqual(massOf(before, [seen]) + 1e-12);
        },
      ),
      settings,
    );
  });

  test('taking an entry back gives exactly the answer from before it', () => {
    fc.assert(
      fc.property(entries, inspection(['seen-sound', 'seen-damaged-not-cause', 'found']), (list, extra) => {
        const before = ranked(sample.map, withEntries(list));
        const takenBack = ranked(
          sample.map,
          withEntries([
            ...list,
            { ...extra, id: 'entry:extra' },
            { id: 'entry:back', at, type: 'take-back', entryId: 'entry:extra' },
          ]),
        );
        expect(takenBack).toEqual(before);
      }),
      settings,
    );
  });

  test('running minutes and running chance add up, and ranks count from one', () => {
    const { digPlan, expectedMinutes } = ranked(sample.map, sample.job);
    let minutes = 0;
    let chance = 0;
    digPlan.forEach((step, i) => {
      minutes += step.minutes;
      chance += step.probability;
      expect(step.rank).toBe(i + 1);
      expect(step.runningMinutes).toBeCloseTo(minutes, 9);
      expect(step.runningProbability).toBeCloseTo(chance, 9);
    });
    expect(digPlan.length).toBeGreaterThan(2);
    expect(expectedMinutes).toBeLessThan(minutes);
  });

  test('every run of the circuit is in the plan, under the panels that hide it', () => {
    const { digPlan } = ranked(sample.map, sample.job);
    expect(new Set(digPlan.flatMap((step) => step.look.segmentIds))).toEqual(new Set(runs));
    const taken = digPlan.flatMap((step) => step.takeOff);
    expect(taken).toEqual(['panel:tread', 'panel:seat']);
  });
});

describe('the same car seen another way', () => {
  const turned: Circuit = {
    ...sample.circuit,
    path: [...sample.circuit.path].reverse().map((step) => ({ ...step, reversed: !step.reversed })),
    ends: [sample.circuit.ends[1], sample.circuit.ends[0]],
  };
  const turnedMap: MapDocument = { ...sample.map, circuits: new Map([[turned.id, turned]]) };
  const mirroredMap: MapDocument = {
    ...sample.map,
    nodes: new Map(
      [...sample.map.nodes].map(([id, node]) => [id, { ...node, at: { ...node.at, yMm: -node.at.yMm } }]),
    ),
    rubSpots: new Map(
      [...sample.map.rubSpots].map(([id, spot]) => [
        id,
        { ...spot, points: spot.points.map((point) => ({ ...point, yMm: -point.yMm })) },
      ]),
    ),
  };

  test('a circuit traced from its other end gives the same chances and the same plan', () => {
    fc.assert(
      fc.property(entries, (list) => {
        const one = ranked(sample.map, withEntries(list));
        const other = ranked(turnedMap, withEntries(list));
        const turnedStretches = [...other.posterior.stretches].reverse();
        one.posterior.stretches.forEach((each, i) => {
          expect(turnedStretches[i]?.probability).toBeCloseTo(each.probability, 9);
          expect(1500 - (turnedStretches[i]?.toMm ?? 0)).toBeCloseTo(each.fromMm, 6);
        });
        expect(other.posterior.medianStationMm).toBeCloseTo(1500 - one.posterior.medianStationMm, 4);
        expect(other.posterior.credible80Mm).toBeCloseTo(one.posterior.credible80Mm, 4);
        expect(other.expectedMinutes).toBeCloseTo(one.expectedMinutes, 6);
      }),
      settings,
    );
  });

  test('a mirrored car gives the same answer', () => {
    const one = ranked(sample.map, sample.job);
    const other = ranked(mirroredMap, sample.job);
    one.posterior.stretches.forEach((each, i) => {
      expect(other.posterior.stretches[i]?.probability).toBeCloseTo(each.probability, 9);
    });
    expect(other.digPlan.map((step) => step.takeOff)).toEqual(one.digPlan.map((step) => step.takeOff));
  });
});

describe('what is refused, and what is only warned of', () => {
  const broken = (changes: Partial<Circuit>): MapDocument => ({
    ...sample.map,
    circuits: new Map([[sample.circuit.id, { ...sample.circuit, ...changes }]]),
  });
  const problemOf = (map: MapDocument, job: Job = sample.job) => {
    const result = rank(map, job);
    return result.ok ? null : result.problem.code;
  };

  test('no circuit chosen, no trace, a gap in the trace, another map', () => {
    expect(problemOf(sample.map, { ...sample.job, circuitId: null })).toBe('job-circuit-unset');
    expect(problemOf(broken({ path: [] }))).toBe('circuit-untraced');
    const [front, , rear] = sample.circuit.path;
    expect(problemOf(broken({ path: front && rear ? [front, rear] : [] }))).toBe('circuit-broken');
    expect(problemOf(sample.map, { ...sample.job, mapId: 'map:other' })).toBe('job-map-mismatch');
    expect(problemOf(sample.map, { ...sample.job, circuitId: 'circuit:gone' })).toBe('job-reference');
  });

  test('panels on the path that wait for one another in a ring', () => {
    const tread = { ...sample.tread, offFirst: ['panel:seat' as const] };
    expect(problemOf({ ...sample.map, panels: new Map(sample.map.panels).set(tread.id, tread) })).toBe(
      'panel-cycle',
    );
  });

  test('a fault elsewhere on the map does not stop the search', () => {
    const apart = {
      ...sample.rear,
      id: 'segment:spare' as const,
      fromNodeId: 'node:gone' as const,
      clips: [],
    };
    expect(
      problemOf({ ...sample.map, segments: new Map(sample.map.segments).set(apart.id, apart) }),
    ).toBeNull();
  });

  test('an entry about a run the map does not have is left out and named', () => {
    const look: JobEntry = {
      id: 'entry:odd',
      at,
      type: 'inspection',
      stretches: [{ segmentId: 'segment:gone', fromMm: 0, toMm: 10 }],
      result: 'seen-sound',
      lookQuality: 1,
      note: '',
    };
    const ranking = ranked(sample.map, withEntries([look]));
    expect(ranking.posterior).toEqual(ranked(sample.map, sample.job).posterior);
    expect(ranking.warnings).toContainEqual({
      code: 'entry-ignored',
      entryId: 'entry:odd',
      problem: { code: 'job-reference', entry: 'entry:odd', field: 'stretches', missing: 'segment:gone' },
    });
  });

  test('an airbag or high-voltage circuit carries its warning', () => {
    for (const [duty, code] of [
      ['restraint', 'restraint-circuit'],
      ['high-voltage', 'high-voltage-circuit'],
    ] as const) {
      expect(ranked(broken({ duty }), sample.job).warnings.map((warning) => warning.code)).toContain(code);
    }
  });
});

describe('readings used so far', () => {
  const reading = (id: JobEntry['id'], stays: boolean, apart: 'node:middle' | 'node:far'): JobEntry => ({
    id,
    at,
    type: 'reading',
    reading: { test: 'symptom', stays },
    state: { apartNodeIds: [apart], switchClosed: null, ignitionOn: true, batteryConnected: true },
    note: '',
  });
  const chanceOfFront = (ranking: Ranking) => ranking.posterior.stretches[0]?.probability ?? 0;

  test('a short that stays with the plug apart moves to the module’s side of it, one that goes away from it', () => {
    const before = chanceOfFront(ranked(sample.map, sample.job));
    const stays = ranked(sample.map, withEntries([reading('entry:1', true, 'node:middle')]));
    const goes = ranked(sample.map, withEntries([reading('entry:1', false, 'node:middle')]));
    expect(chanceOfFront(stays)).toBeGreaterThan(before * 2);
    expect(chanceOfFront(goes)).toBeLessThan(before / 2);
  });

  test('one that stays with the switch unplugged clears the switch', () => {
    const part = (ranking: Ranking) =>
      ranking.posterior.components.find(({ nodeId }) => nodeId === 'node:far')?.probability ?? 0;
    const after = ranked(sample.map, withEntries([reading('entry:1', true, 'node:far')]));
    expect(part(after)).toBeLessThan(part(ranked(sample.map, sample.job)) / 2);
  });

  test('on an airbag circuit no reading is used', () => {
    const circuit: Circuit = { ...sample.circuit, duty: 'restraint' };
    const map = { ...sample.map, circuits: new Map([[circuit.id, circuit]]) };
    const after = ranked(map, withEntries([reading('entry:1', true, 'node:middle')]));
    expect(after.posterior).toEqual(ranked(map, sample.job).posterior);
    expect(after.warnings).toContainEqual({
      code: 'readings-unused',
      count: 1,
      readings: [{ entryId: 'entry:1', why: 'forbidden-duty' }],
    });
  });
});

describe('what a new entry changed', () => {
  const look: JobEntry = {
    id: 'entry:look',
    at,
    type: 'inspection',
    stretches: [{ segmentId: 'segment:rear', fromMm: 0, toMm: 500 }],
    result: 'seen-sound',
    lookQuality: 0.95,
    note: '',
  };

  test('nothing moves when nothing was learned', () => {
    const ranking = ranked(sample.map, sample.job);
    expect(whatChanged(ranking, ranking)).toEqual({ movedUp: [], movedDown: [], added: [], gone: [] });
  });

  test('the place just seen sound moves down, and nothing else counts as moved', () => {
    const change = whatChanged(ranked(sample.map, sample.job), ranked(sample.map, withEntries([look])));
    expect(change.movedDown.map(({ step }) => step.look.segmentIds)).toEqual([['segment:rear']]);
    expect(change.movedUp).toEqual([]);
    expect(change.movedDown[0]?.after).toBeGreaterThan(change.movedDown[0]?.before as number);
  });

  test('a change on moving a place that was seen sound moves it up again', () => {
    const rear = [{ segmentId: 'segment:rear' as const, fromMm: 0, toMm: 500 }];
    const moving: JobEntry = {
      id: 'entry:move',
      at,
      type: 'reading',
      reading: { test: 'move', stretches: rear, changed: 6, tried: 10 },
      state: { apartNodeIds: [], switchClosed: null, ignitionOn: true, batteryConnected: true },
      note: '',
    };
    const change = whatChanged(
      ranked(sample.map, withEntries([look])),
      ranked(sample.map, withEntries([look, moving])),
    );
    expect(change.movedUp.map(({ step }) => step.look.segmentIds)).toEqual([['segment:rear']]);
    expect(change.movedUp[0]?.after).toBe(1);
  });

  test('once the cause is proved, the plan shows only its place', () => {
    const found = ranked(sample.map, withEntries([{ ...look, result: 'found' }]));
    expect(found.posterior.classes.component).toBe(0);
    expect(new Set(found.digPlan.flatMap((step) => step.look.segmentIds))).toEqual(new Set(['segment:rear']));
  });
});
