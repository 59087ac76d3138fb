import { describe, expect, test } from 'vitest';
import type { ElectricalReading } from '#core/circuit/car-state.ts';
import { lineEnds } from '#core/circuit/circuit-line.ts';
import { bareState, withEndsApart } from '#core/circuit/circuit-network.ts';
import { fineHandMeter } from '#core/circuit/default-meter-table.ts';
import { splicedTo, withBranches } from '#core/circuit/joined-wires.ts';
import { readingsLogLikelihood } from '#core/circuit/reading-likelihood.ts';
import { safeInjection } from '#core/circuit/safe-injection.ts';
import { reachedWire } from '#core/circuit/wire-reach.ts';
import { symptomEvidence } from '#core/job/job-evidence.ts';
import { layHypotheses } from '#core/locate/hypotheses.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit } from '#core/map/records.ts';
import { branchedWire } from './branched-wire.ts';
import { cellMiddles, placeOf } from './four-metre-wire.ts';

/** 4 m with a splice at 1.5 m, from which 2 m run to another load, with a plug half way. */
const shape = {
  lengthMm: 4000,
  splicesMm: [1500],
  plugsMm: [],
  mm2: 0.35,
  ends: ['fused-supply', 'load'],
  branches: [{ id: 'circuit:side', from: 'node:b1', lengthMm: 2000, plugs: [0.5], mm2: 0.35, end: 'load' }],
} as const;
const { map, line } = branchedWire(shape);
const withCircuit = (
  change: (circuit: Circuit) => Circuit,
  id: Circuit['id'] = 'circuit:side',
): MapDocument => ({
  ...map,
  circuits: new Map([...map.circuits].map(([key, each]) => [key, key === id ? change(each) : each])),
});
const main = line.circuit;

describe('wires on a splice', () => {
  test('the branch lies after the circuit on its ruler, from the splice outwards', () => {
    expect(line.mainMm).toBe(4000);
    expect(line.lengthMm).toBe(6000);
    expect(line.branches).toMatchObject([{ parent: -1, joinMm: 1500, fromMm: 4000, toMm: 6000 }]);
    expect(line.spans.map(({ fromMm }) => fromMm)).toEqual([0, 1500, 4000, 5000]);
    expect(lineEnds(line).map(({ nodeId }) => nodeId)).toEqual([
      'node:module',
      'node:switch',
      'node:side-end',
    ]);
  });

  test('traced from its far end it lies the same way', () => {
    const turned = branchedWire({ ...shape, branches: [{ ...shape.branches[0], reversed: true }] });
    const places = (of: typeof line) => of.branches.map(({ nodes, end }) => ({ nodes, end }));
    expect(places(turned.line)).toEqual(places(line));
  });

  test('searched from the branch, the trunk hangs on it both ways', () => {
    const side = map.circuits.get('circuit:side') as Circuit;
    const { branches, mainMm } = withBranches(map, { ...sideLine(), circuit: side });
    expect(mainMm).toBe(2000);
    expect(branches.map(({ fromMm, toMm }) => toMm - fromMm).sort()).toEqual([1500, 2500]);
  });

  test('wires that only pass the splice by are not on it', () => {
    const passing: Circuit = { ...main, id: 'circuit:passing', wireColours: ['black'] };
    const crowded = { ...map, circuits: new Map([...map.circuits, [passing.id, passing]]) };
    expect(splicedTo(crowded, passing, 'node:b1')).toEqual([]);
    // Two wires run through and nothing tells which one the branch belongs to.
    expect(splicedTo(crowded, main, 'node:b1')).toEqual([]);
    const coloured = new Map(crowded.circuits);
    for (const id of [main.id, 'circuit:side'] as const)
      coloured.set(id, { ...(coloured.get(id) as Circuit), wireColours: ['red', 'white'] });
    const known = { ...crowded, circuits: coloured };
    const joined = splicedTo(known, coloured.get(main.id) as Circuit, 'node:b1');
    expect(joined.map(({ id }) => id)).toEqual(['circuit:side']);
    expect(splicedTo(known, passing, 'node:b1')).toEqual([]);
  });

  test('a pin word at the splice settles it', () => {
    const pinned = (pin: string) => (circuit: Circuit) => ({
      ...circuit,
      pins: [{ nodeId: 'node:b1' as const, pin }],
    });
    const apart = withCircuit(pinned('two'));
    expect(splicedTo(apart, main, 'node:b1')).toEqual([]);
    const both = { ...withCircuit(pinned('one')) };
    const searched = pinned('one')(main);
    expect(splicedTo(both, searched, 'node:b1').map(({ id }) => id)).toEqual(['circuit:side']);
  });

  test('a node that is no splice joins nothing', () => {
    const plain = new Map(map.nodes);
    const node = plain.get('node:b1');
    if (node) plain.set(node.id, { ...node, kind: 'branch' });
    expect(splicedTo({ ...map, nodes: plain }, main, 'node:b1')).toEqual([]);
  });
});

function sideLine(): typeof line {
  const own = line.branches[0];
  if (!own) throw new Error('the side wire hangs on the circuit');
  const shift = (mm: number): number => mm - own.fromMm;
  return {
    circuit: own.circuit,
    spans: line.spans
      .filter(({ fromMm }) => fromMm >= own.fromMm)
      .map((span) => ({ ...span, fromMm: shift(span.fromMm), toMm: shift(span.toMm) })),
    lengthMm: own.toMm - own.fromMm,
    mainMm: own.toMm - own.fromMm,
    nodes: own.nodes.map((node) => ({ ...node, stationMm: shift(node.stationMm) })),
    branches: [],
  };
}

describe('what hangs together', () => {
  test('through the splice, up to a parted plug on the branch', () => {
    expect(reachedWire(line, { row: 0, atMm: 0, apartNodeIds: ['node:side-c1'] })).toEqual([
      { row: 0, fromMm: 0, toMm: 4000 },
      { row: 1, fromMm: 4000, toMm: 5000 },
    ]);
  });

  test('from the branch back to both ends of the circuit', () => {
    const pieces = reachedWire(line, { row: 1, atMm: 6000, apartNodeIds: [] });
    expect(pieces.reduce((sum, { fromMm, toMm }) => sum + toMm - fromMm, 0)).toBe(6000);
  });

  test('a break before the splice cuts off the branch too', () => {
    expect(reachedWire(line, { row: 0, atMm: 0, apartNodeIds: [], brokenMm: 1000 })).toEqual([
      { row: 0, fromMm: 0, toMm: 1000 },
    ]);
  });
});

const stationsMm = cellMiddles(6000, 300);
const unplugged = withEndsApart(bareState, lineEnds(line));
const at = (nodeId: 'node:module' | 'node:switch' | 'node:side-end') => ({ on: 'wire', nodeId }) as const;

describe('readings on a circuit with a branch', () => {
  const ohmsPerMm = (0.0544 * 0.953) / 1000;
  const drop = (
    from: Parameters<typeof at>[0],
    to: Parameters<typeof at>[0],
    mm: number,
  ): ElectricalReading => ({
    test: 'drop',
    driven: at(from),
    sensed: at(to),
    currentA: 0.1,
    millivolts: Math.round(1000 * 0.1 * ohmsPerMm * mm * 100) / 100,
  });
  const said = (readings: readonly ElectricalReading[]) =>
    readingsLogLikelihood(
      map,
      line,
      readings.map((reading) => ({ reading, state: unplugged, meter: fineHandMeter })),
      { stationsMm },
    ).byClass['short-to-ground'];
  const shareOnBranch = (log: Float64Array): number => {
    const top = Math.max(...log);
    const weights = [...log].map((value) => Math.exp(value - top));
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    return weights.filter((_, i) => (stationsMm[i] as number) > 4000).reduce((sum, w) => sum + w, 0) / all;
  };

  test('between the circuit’s own ends a short on the branch reads as one at the splice', () => {
    const log = said([drop('node:module', 'node:switch', 1500), drop('node:switch', 'node:module', 2500)]);
    expect(shareOnBranch(log)).toBeGreaterThan(0.6);
    const onMain = log.map((value, i) => ((stationsMm[i] as number) < 4000 ? value : -1e9));
    expect(placeOf(stationsMm, onMain).mean).toBeCloseTo(1.5, 0);
    // Flat along the branch: nothing taken there.
    const branch = [...log].filter(
      (_, i) => (stationsMm[i] as number) > 4150 && (stationsMm[i] as number) < 5850,
    );
    expect(Math.max(...branch) - Math.min(...branch)).toBeLessThan(1);
  });

  test('a lead at the branch’s own end puts it at its place on the branch', () => {
    // 0.7 m out on the branch: 1.5 and 0.7 m of wire from the supply end, 1.3 m from the branch's end.
    const log = said([
      drop('node:module', 'node:side-end', 2200),
      drop('node:side-end', 'node:module', 1300),
    ]);
    expect(shareOnBranch(log)).toBeGreaterThan(0.99);
    expect(Math.abs(placeOf(stationsMm, log).mean - 4.7)).toBeLessThan(0.1);
  });

  test('the end of a branch that carries no current reads its splice, so the fault is elsewhere', () => {
    const log = said([drop('node:module', 'node:side-end', 1500), drop('node:module', 'node:switch', 3000)]);
    expect(shareOnBranch(log)).toBeLessThan(0.01);
    expect(Math.abs(placeOf(stationsMm, log).mean - 3)).toBeLessThan(0.2);
  });

  test('an open on the branch leaves its end cut off and the rest whole', () => {
    const { byClass } = readingsLogLikelihood(
      map,
      line,
      [
        {
          reading: { test: 'ohms', from: at('node:module'), to: at('node:switch'), ohms: 0.2 },
          state: unplugged,
        },
        {
          reading: { test: 'ohms', from: at('node:module'), to: at('node:side-end'), ohms: 'open-line' },
          state: unplugged,
        },
      ],
      { stationsMm },
    );
    expect(placeOf(stationsMm, byClass.open).mean).toBeCloseTo(5, 1);
    expect(Math.max(...byClass.open.subarray(0, 199))).toBeLessThan(Math.max(...byClass.open) - 10);
  });

  test('capacitance sees the branch too: half of the wire gone from the module end is the branch gone', () => {
    const capacitance = (nodeId: Parameters<typeof at>[0], picofarads: number) => ({
      reading: { test: 'capacitance', at: at(nodeId), picofarads } as const,
      state: unplugged,
    });
    // Broken 0.5 m out on the branch: 4.5 m seen from either end of the circuit, 1.5 m from the branch's.
    const { byClass } = readingsLogLikelihood(
      map,
      line,
      [capacitance('node:module', 202), capacitance('node:switch', 202), capacitance('node:side-end', 68)],
      { stationsMm },
    );
    const { mean } = placeOf(stationsMm, byClass.open);
    expect(Math.abs(mean - 4.5)).toBeLessThan(0.3);
  });

  test('a lead names the branch’s circuit or none: the same reading', () => {
    const named = { on: 'wire', nodeId: 'node:side-end', circuitId: 'circuit:side' } as const;
    const reading = drop('node:module', 'node:side-end', 2200);
    if (reading.test !== 'drop') throw new Error('a drop was made');
    expect(said([{ ...reading, sensed: named }])).toEqual(said([reading]));
  });
});

describe('unplugging on a circuit with a branch', () => {
  const cells = layHypotheses(
    Float64Array.from({ length: 61 }, (_, i) => i * 100),
    [],
  );
  const row = (stays: boolean) =>
    symptomEvidence(line, ['node:side-c1'], stays)?.(cells) ?? new Float64Array(0);
  const short = cells.classes.indexOf('short-to-ground') * cells.cellCount;

  test('a short that stays with the branch parted is not beyond the plug; the rest keeps its chance', () => {
    expect(row(true)[short + 55]).toBeCloseTo(Math.log(0.05), 10);
    for (const cell of [5, 30, 45]) expect(row(true)[short + cell]).toBeCloseTo(Math.log(0.95), 10);
  });

  test('one that goes is', () => {
    expect(row(false)[short + 55]).toBeCloseTo(Math.log(0.95), 10);
    expect(row(false)[short + 30]).toBeCloseTo(Math.log(0.05), 10);
  });
});

describe('current into a circuit with a branch', () => {
  const signal = branchedWire({ ...shape, ends: ['module-input-pull-up', 'switch-to-ground'] });
  const joined = signal.line.branches;

  test('not with the part at the end of the branch still plugged in', () => {
    const state = withEndsApart(bareState, signal.line.circuit.ends);
    expect(safeInjection(signal.line.circuit, state, { joined })).toEqual({
      outcome: 'refused',
      reason: { code: 'end-plugged-in', nodeIds: ['node:side-end'] },
    });
    expect(
      safeInjection(signal.line.circuit, withEndsApart(bareState, lineEnds(signal.line)), { joined }).outcome,
    ).toBe('allowed');
  });

  test('not where an airbag, high-voltage or data wire is spliced to it', () => {
    for (const duty of ['restraint', 'high-voltage', 'data'] as const) {
      const guarded = joined.map((branch) => ({ ...branch, circuit: { ...branch.circuit, duty } }));
      const state = withEndsApart(bareState, lineEnds(signal.line));
      expect(safeInjection(signal.line.circuit, state, { joined: guarded }).outcome).toBe('refused');
    }
  });
});
