import { describe, expect, test } from 'vitest';
import { hazardAlong } from '#core/chafe/hazard-along.ts';
import type { ElectricalReading } from '#core/circuit/car-state.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { standingWire } from '#core/circuit/circuit-network.ts';
import { partsOnLeads, usableReadings } from '#core/circuit/usable-readings.ts';
import { layLadder } from '#core/circuit/wire-ladder.ts';
import { reachedWire } from '#core/circuit/wire-reach.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { pieceTests } from '#core/job/piece-tests.ts';
import { placesInReach } from '#core/job/places-in-reach.ts';
import type { PossibleTest, TestGrounds } from '#core/job/possible-test.ts';
import { possibleTests } from '#core/job/possible-tests.ts';
import { rankOnLine } from '#core/job/rank-on-line.ts';
import { wirePieces } from '#core/job/wire-pieces.ts';
import { layHypotheses } from '#core/locate/hypotheses.ts';
import type { CircuitDuty } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, MapNode, Panel } from '#core/map/records.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { branchedWire } from '#tests/core/circuit/branched-wire.ts';
import { straightWire } from '#tests/core/circuit/four-metre-wire.ts';
import { sample } from '#tests/sample.ts';

const cellCount = 80;

/** 8 m of wire with plugs at 2, 4 and 6 m; the one at 2 m lies under a panel, which lies under another. */
function threePlugs(changes: Partial<Circuit> = {}): TestGrounds & { readonly map: MapDocument } {
  const { map, line } = straightWire({ lengthMm: 8000, plugsMm: [2000, 4000, 6000], mm2: 0.35 });
  const circuit = { ...line.circuit, ...changes };
  const laid = layStraight(map, circuit);
  if (!laid.ok) throw new Error(laid.problem.code);
  const hidden = { ...(map.nodes.get('node:c1') as MapNode), panelIds: ['panel:kick' as const] };
  const panel = (id: Panel['id'], offFirst: readonly Panel['id'][]): Panel => ({
    ...sample.tread,
    id,
    offFirst: [...offFirst],
  });
  return {
    map: {
      ...map,
      nodes: new Map(map.nodes).set(hidden.id, hidden),
      circuits: new Map([[circuit.id, circuit]]),
      panels: new Map([panel('panel:kick', ['panel:mat']), panel('panel:mat', [])].map((p) => [p.id, p])),
    },
    line: laid.value,
    cells: layHypotheses(
      Float64Array.from({ length: cellCount + 1 }, (_, i) => i * 100),
      [2000, 4000, 6000].map((stationMm, i) => ({
        nodeId: `node:c${i + 1}` as NodeId,
        stationMm,
        place: 'plug' as const,
      })),
    ),
    cellProbability: new Float64Array(cellCount).fill(1 / cellCount),
    stretches: [],
    entries: [],
    medianMm: 4000,
  };
}

const at = '2026-01-05T09:00:00Z';
const leads = (tests: readonly PossibleTest[]) => new Set(tests.flatMap(({ nodeIds }) => nodeIds));
const looked = (id: JobEntry['id']): JobEntry => ({
  id,
  at,
  type: 'inspection',
  stretches: [{ segmentId: 'segment:s1', fromMm: 0, toMm: 10 }],
  nodeIds: ['node:c1'],
  result: 'seen-sound',
  lookQuality: 0.9,
  note: '',
});

/** How far the ways a test may come out are from summing to one, at worst. */
const furthestFromOne = (chances: PossibleTest['chances']): number =>
  Math.max(
    ...Array.from(chances[0] ?? [Number.POSITIVE_INFINITY], (_, i) =>
      Math.abs(chances.reduce((sum, row) => sum + (row[i] as number), -1)),
    ),
  );

describe('a plug is in reach', () => {
  test('under nothing, with everything over it off, or once looked into; not after a panel went back on', () => {
    const { map } = threePlugs();
    const reach = (entries: readonly JobEntry[], off: readonly Panel['id'][] = []) =>
      placesInReach(map, entries, new Set(off));
    expect(reach([])('node:c2')).toBe(true);
    expect(reach([])('node:c1')).toBe(false);
    expect(reach([], ['panel:kick'])('node:c1')).toBe(false);
    expect(reach([], ['panel:kick', 'panel:mat'])('node:c1')).toBe(true);
    expect(reach([looked('entry:1')])('node:c1')).toBe(true);
    const back: JobEntry = { id: 'entry:2', at, type: 'panel-on', panelId: 'panel:mat' };
    expect(reach([looked('entry:1'), back])('node:c1')).toBe(false);
    expect(reach([back, looked('entry:1')])('node:c1')).toBe(true);
  });

  test('then it is tested at, and not before', () => {
    const grounds = threePlugs();
    expect(leads(pieceTests(grounds))).not.toContain('node:c1');
    expect(leads(pieceTests(grounds))).toContain('node:c2');
    const off = new Set<Panel['id']>(['panel:kick', 'panel:mat']);
    expect(leads(pieceTests({ ...grounds, off }))).toContain('node:c1');
    expect(leads(pieceTests({ ...grounds, entries: [looked('entry:1')] }))).toContain('node:c1');
  });
});

describe('what is measured at a plug in reach', () => {
  const tests = pieceTests(threePlugs());

  test('is asked to either side: to the body, through, by current and by capacitance', () => {
    for (const kind of ['ohms-to-body', 'ohms-through', 'drop', 'drop-both-ends', 'capacitance'])
      expect(tests.map((each) => each.kind)).toContain(kind);
    const halves = tests
      .filter(({ kind, nodeIds }) => kind === 'ohms-to-body' && nodeIds[0] === 'node:c2')
      .map(({ sides }) => sides[0]);
    expect(new Set(halves)).toEqual(new Set(['first-end', 'second-end']));
  });

  test('is dead and hangs free at both ends, and current goes only where every end is unplugged', () => {
    const { line } = threePlugs();
    for (const { kind, state, nodeIds, sides } of tests) {
      expect(state).toMatchObject({ batteryConnected: false, ignitionOn: false });
      const places = nodeIds.map(
        (nodeId, i) => ({ on: 'wire', nodeId, side: sides[i] ?? undefined }) as const,
      );
      expect(partsOnLeads(line, places, state)).toEqual([]);
      for (const [i, nodeId] of nodeIds.entries()) if (sides[i]) expect(state.apartNodeIds).toContain(nodeId);
      if (kind.startsWith('drop'))
        expect(state.apartNodeIds).toEqual(expect.arrayContaining(['node:module', 'node:switch']));
    }
  });

  test('can come out in ways whose chances sum to one under every hypothesis', () => {
    for (const { chances, labels } of tests) {
      expect(chances.length).toBe(labels.length);
      expect(furthestFromOne(chances)).toBeLessThan(1e-9);
    }
  });

  test('costs a minute for each plug parted, the ends are part of the test', () => {
    for (const { plugsParted, sides, state } of tests) {
      expect(plugsParted).toBeGreaterThanOrEqual(sides.filter(Boolean).length);
      expect(plugsParted).toBe(state.apartNodeIds.filter((id) => id.startsWith('node:c')).length);
    }
  });

  test('reads as a usable reading, on the half that is meant', () => {
    const { map, line } = threePlugs();
    for (const { kind, nodeIds, sides, state, injection } of tests) {
      const [from, to] = nodeIds.map(
        (nodeId, i) => ({ on: 'wire', nodeId, side: sides[i] ?? undefined }) as const,
      );
      if (!from) continue;
      const reading: ElectricalReading =
        kind === 'ohms-to-body'
          ? { test: 'ohms', from, to: { on: 'body' }, ohms: 3 }
          : kind === 'ohms-through' && to
            ? { test: 'ohms', from, to, ohms: 0.2 }
            : kind === 'capacitance'
              ? { test: 'capacitance', at: from, picofarads: 60 }
              : {
                  test: 'drop',
                  driven: from,
                  sensed: to ?? from,
                  currentA: injection?.amps ?? 0.1,
                  millivolts: 4,
                };
      const ladder = layLadder(map, line, nodeIds);
      const wires = { mainId: line.circuit.id, main: standingWire(ladder, line.circuit), other: null };
      expect(usableReadings(line, wires, [{ reading, state }]).notes).toEqual([]);
    }
  });

  test('is not asked again once it was read', () => {
    const grounds = threePlugs();
    const count = (entries: readonly JobEntry[]): number =>
      pieceTests({ ...grounds, entries }).filter(
        ({ kind, nodeIds, sides, towardsId }) =>
          kind === 'ohms-to-body' &&
          nodeIds[0] === 'node:c2' &&
          sides[0] === 'first-end' &&
          towardsId === 'node:module',
      ).length;
    expect(count([])).toBe(1);
    expect(count([toBody(3, 'first-end', 'node:module')])).toBe(0);
    expect(count([toBody(3, 'second-end', 'node:switch')])).toBe(1);
  });
});

const jobWith = (entries: readonly JobEntry[]): Job => ({
  ...sample.job,
  mapId: 'map:straight',
  circuitId: 'circuit:signal',
  entries: [...entries],
});

const toBody = (ohms: number | 'open-line', side: 'first-end' | 'second-end', towards: NodeId): JobEntry => ({
  id: 'entry:read',
  at,
  type: 'reading',
  reading: { test: 'ohms', from: { on: 'wire', nodeId: 'node:c2', side }, to: { on: 'body' }, ohms },
  state: {
    apartNodeIds: ['node:c2', towards],
    switchClosed: null,
    ignitionOn: false,
    batteryConnected: false,
  },
  note: '',
});

describe('a reading at a parted plug', () => {
  const { map, line } = threePlugs();
  const field = hazardAlong(map, line);
  /** Chance of a short to the body before the plug at 4 m, and beyond it. */
  const shortOn = (entries: readonly JobEntry[]): readonly [number, number] => {
    const { posterior } = rankOnLine(map, line, field, jobWith(entries), { readingDraws: 0 });
    let before = 0;
    posterior.cellProbability.forEach((p, cell) => {
      if ((posterior.cellEdgesMm[cell + 1] as number) <= 4000) before += p;
    });
    const all = posterior.cellProbability.reduce((sum, p) => sum + p, 0);
    return [before, all - before];
  };

  test('of 3 ohm towards the control unit puts the fault there, though the switch beyond stays plugged in', () => {
    const [before, beyond] = shortOn([toBody(3, 'first-end', 'node:module')]);
    expect(before).toBeGreaterThan(20 * beyond);
  });

  test('of 3 ohm towards the switch puts it there, though the control unit stays plugged in', () => {
    const [before, beyond] = shortOn([toBody(3, 'second-end', 'node:switch')]);
    expect(beyond).toBeGreaterThan(20 * before);
  });

  test('of an open line leaves the other side', () => {
    const [before, beyond] = shortOn([toBody('open-line', 'first-end', 'node:module')]);
    expect(beyond).toBeGreaterThan(3 * before);
  });

  test('with an electronic part on its own half still counts for little', () => {
    const entry = toBody(3, 'first-end', 'node:switch');
    if (entry.type !== 'reading' || entry.reading.test !== 'ohms') throw new Error('ohms were read');
    const { reading, state } = entry;
    expect(partsOnLeads(line, [reading.from, reading.to], state).map(({ kind }) => kind)).toEqual([
      'module-input-pull-up',
    ]);
  });
});

describe('pieces of a branched wire', () => {
  const { map, line } = branchedWire({
    lengthMm: 6000,
    splicesMm: [3000],
    plugsMm: [1500, 4500],
    mm2: 0.5,
    branches: [{ id: 'circuit:lamp', from: 'node:b1', lengthMm: 2000, plugs: [0.5], mm2: 0.5, end: 'load' }],
  });
  const cells = layHypotheses(
    Float64Array.from({ length: 81 }, (_, i) => i * 100),
    [],
  );
  const grounds: TestGrounds = {
    map,
    line,
    cells,
    cellProbability: new Float64Array(80).fill(1 / 80),
    stretches: [],
    entries: [],
    medianMm: 3000,
  };

  test('hang free of everything: what ends on them is unplugged too', () => {
    const pieces = wirePieces(grounds);
    expect(pieces.length).toBeGreaterThan(3);
    const between = pieces.find(({ places: [a, b] }) => a.atMm === 1500 && b.atMm === 4500);
    expect(between?.apartNodeIds).toContain('node:lamp-end');
    for (const { places, reached, apartNodeIds, row } of pieces) {
      const [from] = places;
      expect(reachedWire(line, { row, atMm: from.atMm, side: 'second-end', apartNodeIds })).toEqual(reached);
    }
  });

  test('on the branch end at its own plug', () => {
    const onBranch = wirePieces(grounds).filter(({ row }) => row === 1);
    expect(onBranch.map(({ places }) => places.map(({ nodeId }) => nodeId))).toEqual([
      ['node:lamp-c1', 'node:lamp-end'],
    ]);
  });
});

describe('at a plug two wires pass', () => {
  const own = threePlugs();
  const { circuit } = own.line;
  const beside: Circuit = {
    ...circuit,
    id: 'circuit:beside',
    path: circuit.path.map((step) => ({ ...step, reversed: true })).reverse(),
    ends: [circuit.ends[1], circuit.ends[0]],
  };
  const withBeside = (changes: Partial<Circuit> = {}): TestGrounds => {
    const wireToWire = own.cells.classes.indexOf('wire-to-wire') * cellCount;
    const probability = new Float64Array(own.cells.size);
    probability.fill(1 / cellCount, wireToWire, wireToWire + cellCount);
    const other = { ...beside, ...changes };
    const circuits = new Map([...own.map.circuits, [other.id, other] as const]);
    return { ...own, map: { ...own.map, circuits }, probability };
  };
  const asked = (grounds: TestGrounds) =>
    possibleTests(grounds).filter(({ kind }) => kind === 'ohms-between-at-plug');

  test('ohms from the one to the other, both on the same side of it and both free there', () => {
    const tests = asked(withBeside());
    expect(tests.length).toBeGreaterThan(1);
    for (const { nodeIds, sides, other, state, chances } of tests) {
      expect(other?.nodeIds).toEqual(nodeIds);
      // The other wire was traced the other way, so the same side of the car is its other half.
      expect([sides[0], other?.sides[0]].sort()).toEqual(['first-end', 'second-end']);
      expect(state.batteryConnected).toBe(false);
      expect(state.apartNodeIds).toContain(nodeIds[0]);
      expect(furthestFromOne(chances)).toBeLessThan(1e-9);
    }
  });

  test('never to an airbag or high-voltage wire', () => {
    for (const duty of ['restraint', 'high-voltage'] as const)
      expect(asked(withBeside({ duty }))).toEqual([]);
  });
});

describe('at a plug in reach there is never', () => {
  test.each<CircuitDuty>(['restraint', 'high-voltage'])('any test on a %s wire', (duty) => {
    expect(possibleTests(threePlugs({ duty }))).toEqual([]);
  });

  test('current into a data wire, into a feed, or with an end nobody knows', () => {
    const { circuit } = threePlugs().line;
    const feed: Circuit['ends'] = [{ nodeId: 'node:module', kind: 'fused-supply' }, circuit.ends[1]];
    const unknown: Circuit['ends'] = [{ ...circuit.ends[0], nodeId: null }, circuit.ends[1]];
    for (const changes of [{ duty: 'data' as const }, { ends: feed }, { ends: unknown }]) {
      const tests = pieceTests(threePlugs(changes));
      expect(tests.length).toBeGreaterThan(0);
      expect(tests.filter(({ injection }) => injection !== null)).toEqual([]);
    }
  });
});
