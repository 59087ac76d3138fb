import { describe, expect, test } from 'vitest';
import type { HazardField } from '#core/chafe/hazard-field.ts';
import { type CircuitLine, layStraight } from '#core/circuit/circuit-line.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { rankOnLine } from '#core/job/rank-on-line.ts';
import type { Ranking } from '#core/job/ranking.ts';
import type { CarState, Reading } from '#core/job/reading.ts';
import { splitSegment } from '#core/map/commands/split-segment.ts';
import { faultClasses } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { Circuit } from '#core/map/records.ts';
import { seededChance } from '#core/quantity/chance.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { straightWire } from '#tests/core/circuit/four-metre-wire.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { sample } from '#tests/sample.ts';

const cellCount = 60;
const seeds = [1, 2, 3, 4];
const other = 'circuit:beside' as const;

/** Every kind of reading once, on a circuit of its own, and every other circuit that may be named. */
interface Generated {
  readonly map: MapDocument;
  readonly line: CircuitLine;
  readonly readings: readonly (readonly [Reading, CarState])[];
}

function generated(seed: number): Generated {
  const { chance, between } = drawFrom(seededChance(seed));
  const lengthMm = Math.round(between(2000, 8000));
  const plugMm = Math.round(lengthMm * between(0.3, 0.7));
  const wire = straightWire({
    lengthMm,
    plugsMm: [plugMm],
    branchesMm: [Math.round(plugMm * 0.4), Math.round(plugMm + 0.6 * (lengthMm - plugMm))],
    mm2: 0.35,
  });
  const { circuit } = wire.line;
  const beside: Circuit = {
    ...circuit,
    id: other,
    path: circuit.path.slice(1),
    ends: [{ nodeId: 'node:b1', kind: 'other' }, circuit.ends[1]],
  };
  const map = { ...wire.map, circuits: new Map([...wire.map.circuits, [other, beside] as const]) };
  const dead: CarState = {
    apartNodeIds: ['node:module', 'node:switch'],
    switchClosed: null,
    ignitionOn: false,
    batteryConnected: false,
  };
  const live: CarState = { apartNodeIds: [], switchClosed: false, ignitionOn: true, batteryConnected: true };
  const at = (nodeId: NodeId) => ({ on: 'wire', nodeId }) as const;
  const [near, far] = [at('node:module'), at('node:switch')];
  const body = { on: 'body' } as const;
  const lastRun = [{ segmentId: 'segment:s4' as const, fromMm: 0, toMm: 200 }];
  const millivolts = between(1, 5 * (lengthMm / 1000));
  return {
    map,
    line: wire.line,
    readings: [
      [{ test: 'ohms', from: near, to: body, ohms: between(0.3, 60) }, dead],
      [{ test: 'ohms', from: far, to: { ...far, circuitId: other }, ohms: 'open-line' }, dead],
      [{ test: 'beep', from: near, to: far, beeps: chance() < 0.7 }, dead],
      [{ test: 'volts', from: near, to: body, volts: between(0, 4) }, live],
      [{ test: 'drop', driven: near, sensed: far, currentA: 0.1, millivolts }, dead],
      [{ test: 'capacitance', at: far, picofarads: between(20, 45 * (lengthMm / 1000)) }, dead],
      [
        { test: 'symptom', stays: chance() < 0.5 },
        { ...live, apartNodeIds: ['node:c1'] },
      ],
      [{ test: 'move', stretches: lastRun, changed: Math.floor(between(0, 6)), tried: 10 }, live],
      [{ test: 'function', works: true, stretches: lastRun }, live],
      [{ test: 'function', works: chance() < 0.5, stretches: lastRun }, live],
    ],
  };
}

function jobWith(readings: Generated['readings'], changes: Partial<Job> = {}): Job {
  const entries = readings.map(
    ([reading, state], i): JobEntry => ({
      id: `entry:${i}`,
      at: '2026-01-05T09:00:00Z',
      type: 'reading',
      reading,
      state,
      note: '',
    }),
  );
  return {
    ...sample.job,
    mapId: 'map:straight',
    circuitId: 'circuit:signal',
    failureType: 'not-known',
    alsoFailingCircuitIds: [other],
    ...changes,
    entries,
  };
}

/** A hazard that is the same everywhere, on even cells, so that a mirrored line has mirrored cells. */
function even(lengthMm: number): HazardField {
  const perMm = new Float64Array(cellCount).fill(1);
  return {
    cellEdgesMm: Float64Array.from({ length: cellCount + 1 }, (_, i) => (i * lengthMm) / cellCount),
    byClass: Object.fromEntries(faultClasses.map((kind) => [kind, perMm])) as HazardField['byClass'],
    causes: [{ cause: 'anywhere', thing: null, figures: {}, firstCell: 0, perMm }],
  };
}

const ranked = ({ map, line }: Pick<Generated, 'map' | 'line'>, job: Job, draws = 0): Ranking =>
  rankOnLine(map, line, even(line.lengthMm), job, { readingDraws: draws });

const furthest = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Math.max(...Array.from(a, (value, i) => Math.abs(value - (b[i] as number))));

const classesOf = ({ posterior }: Ranking): number[] => Object.values(posterior.classes);

describe('whatever was read, of every kind, alone and together', () => {
  test('the chances of everything that may be wrong sum to one', () => {
    for (const seed of seeds) {
      const each = generated(seed);
      for (const readings of [each.readings, ...each.readings.map((one) => [one])])
        expect(classesOf(ranked(each, jobWith(readings))).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    }
  });

  test('the order of readings does not matter, but for the two positions of a part', () => {
    for (const seed of seeds) {
      const each = generated(seed);
      const { readings } = each;
      const turned = [...readings.slice(0, -2).reverse(), ...readings.slice(-2)];
      const [one, two] = [ranked(each, jobWith(readings)), ranked(each, jobWith(turned))];
      expect(furthest(one.posterior.cellProbability, two.posterior.cellProbability)).toBeLessThan(1e-9);
      expect(furthest(classesOf(one), classesOf(two))).toBeLessThan(1e-9);
    }
  });

  test('one that could not have come out otherwise changes nothing', () => {
    const state = { apartNodeIds: [], switchClosed: false, ignitionOn: false, batteryConnected: false };
    const body = { on: 'body' } as const;
    const empty: readonly (readonly [Reading, CarState])[] = [
      [{ test: 'volts', from: body, to: body, volts: 0 }, state],
      // Nothing of the circuit was apart, moved or tried in another position.
      [{ test: 'symptom', stays: true }, state],
      [
        { test: 'move', stretches: [{ segmentId: 'segment:off', fromMm: 0, toMm: 9 }], changed: 3, tried: 9 },
        state,
      ],
      [{ test: 'function', works: false, stretches: [] }, state],
    ];
    for (const seed of seeds.slice(0, 3)) {
      const each = generated(seed);
      const plain = ranked(each, jobWith(each.readings));
      for (const one of empty) {
        const after = ranked(each, jobWith([...each.readings, one]));
        expect(furthest(after.posterior.cellProbability, plain.posterior.cellProbability)).toBeLessThan(1e-9);
        expect(furthest(classesOf(after), classesOf(plain))).toBeLessThan(1e-9);
      }
    }
  });

  test('the circuit traced from its other end gives the mirrored answer', () => {
    for (const seed of seeds) {
      const each = generated(seed);
      const { circuit } = each.line;
      const turned: Circuit = {
        ...circuit,
        path: [...circuit.path].reverse().map((step) => ({ ...step, reversed: true })),
        ends: [circuit.ends[1], circuit.ends[0]],
      };
      const map = { ...each.map, circuits: new Map(each.map.circuits).set(circuit.id, turned) };
      const line = laidIn(map);
      for (const readings of [each.readings, ...each.readings.slice(0, 8).map((one) => [one])].slice(
        0,
        seed === 1 ? 9 : 1,
      )) {
        const [one, two] = [ranked(each, jobWith(readings)), ranked({ map, line }, jobWith(readings))];
        const mirrored = [...two.posterior.cellProbability].reverse();
        expect(furthest(one.posterior.cellProbability, mirrored)).toBeLessThan(1e-6);
      }
    }
  });

  test('a run cut in two on the map gives the same answer', () => {
    for (const seed of seeds) {
      const each = generated(seed);
      const cut = splitSegment(each.map, {
        segmentId: 'segment:s2',
        stationMm: 150,
        ids: { nodeId: 'node:cut', segmentId: 'segment:cut' },
      });
      if (!cut.ok) throw new Error(cut.problem.code);
      const after = applyPatch(each.map, cut.value);
      if (!after.ok) throw new Error(after.problem.code);
      const line = laidIn(after.value);
      const [one, two] = [
        ranked(each, jobWith(each.readings)),
        ranked({ map: after.value, line }, jobWith(each.readings)),
      ];
      expect(furthest(one.posterior.cellProbability, two.posterior.cellProbability)).toBeLessThan(1e-6);
    }
  });
});

function laidIn(map: MapDocument): CircuitLine {
  const laid = layStraight(map, map.circuits.get('circuit:signal') as Circuit);
  if (!laid.ok) throw new Error(laid.problem.code);
  return laid.value;
}

describe('two readings that cannot both hold are named, whatever their kinds', () => {
  const wire = straightWire({ lengthMm: 6000, plugsMm: [3000], branchesMm: [1500, 4500], mm2: 0.35 });
  const ends: CarState = {
    apartNodeIds: ['node:module', 'node:switch'],
    switchClosed: null,
    ignitionOn: false,
    batteryConnected: false,
  };
  const live: CarState = { apartNodeIds: [], switchClosed: false, ignitionOn: true, batteryConnected: true };
  const [near, far] = [
    { on: 'wire', nodeId: 'node:module' } as const,
    { on: 'wire', nodeId: 'node:switch' } as const,
  ];
  const body = { on: 'body' } as const;
  const run = (n: 1 | 4) => [{ segmentId: `segment:s${n}` as const, fromMm: 0, toMm: 1500 }];
  type Pair = readonly [string, readonly [Reading, CarState], readonly [Reading, CarState]];
  const drop = (driven: typeof near | typeof far, millivolts: number): readonly [Reading, CarState] => [
    { test: 'drop', driven, sensed: driven === near ? far : near, currentA: 0.1, millivolts },
    ends,
  ];
  const pairs: readonly Pair[] = [
    ['two drops at the two ends of the wire', drop(near, 3), drop(far, 3)],
    [
      'ohms to the body and ohms to it from the other end',
      [{ test: 'ohms', from: near, to: body, ohms: 5 }, ends],
      [{ test: 'ohms', from: far, to: body, ohms: 500 }, ends],
    ],
    [
      'a wire that is open from end to end and one that beeps through',
      [{ test: 'ohms', from: near, to: far, ohms: 'open-line' }, ends],
      [{ test: 'beep', from: near, to: far, beeps: true }, ends],
    ],
    [
      'a beep to the body and an open line to it',
      [{ test: 'beep', from: near, to: body, beeps: true }, ends],
      [{ test: 'ohms', from: near, to: body, ohms: 'open-line' }, ends],
    ],
    [
      'two capacitances that come to a small part of the wire',
      [{ test: 'capacitance', at: near, picofarads: 5 }, ends],
      [{ test: 'capacitance', at: far, picofarads: 6 }, ends],
    ],
    [
      'a plug that clears one side and a drop that lies there',
      [
        { test: 'symptom', stays: true },
        { ...live, apartNodeIds: ['node:c1'] },
      ],
      drop(near, 27),
    ],
    [
      'one plug pulled twice, the fault gone once and once not',
      [
        { test: 'symptom', stays: true },
        { ...live, apartNodeIds: ['node:c1'] },
      ],
      [
        { test: 'symptom', stays: false },
        { ...live, apartNodeIds: ['node:c1'] },
      ],
    ],
    [
      'a place that answers to every press and a drop elsewhere',
      [{ test: 'move', stretches: run(4), changed: 9, tried: 10 }, live],
      drop(near, 2),
    ],
    [
      'two places that both answer to every press',
      [{ test: 'move', stretches: run(1), changed: 9, tried: 10 }, live],
      [{ test: 'move', stretches: run(4), changed: 9, tried: 10 }, live],
    ],
  ];

  test('and readings that agree are not', () => {
    const agreeing: readonly (readonly (readonly [Reading, CarState])[])[] = [
      [
        [{ test: 'capacitance', at: near, picofarads: 90 }, ends],
        [{ test: 'capacitance', at: far, picofarads: 180 }, ends],
        [{ test: 'ohms', from: near, to: far, ohms: 'open-line' }, ends],
      ],
      [
        [{ test: 'capacitance', at: near, picofarads: 270 }, ends],
        [{ test: 'beep', from: near, to: far, beeps: true }, ends],
        [{ test: 'ohms', from: near, to: body, ohms: 'open-line' }, ends],
      ],
      [
        [
          { test: 'symptom', stays: true },
          { ...live, apartNodeIds: ['node:c1'] },
        ],
        [
          { test: 'symptom', stays: true },
          { ...live, apartNodeIds: ['node:c1'] },
        ],
      ],
    ];
    for (const readings of agreeing)
      expect(ranked(wire, jobWith(readings, { alsoFailingCircuitIds: [] }), 4).contradictions).toEqual([]);
  });

  test.each(pairs)('%s', (_, one, two) => {
    for (const readings of [
      [one, two],
      [two, one],
    ]) {
      const job = jobWith(readings, { alsoFailingCircuitIds: [] });
      const { contradictions } = ranked(wire, job, 4);
      expect(contradictions[0]?.entryIds.toSorted()).toEqual(['entry:0', 'entry:1']);
    }
  });
});
