import { describe, expect, test } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { nextTests } from '#core/job/next-tests.ts';
import type { TestGrounds } from '#core/job/possible-test.ts';
import { possibleTests } from '#core/job/possible-tests.ts';
import { layHypotheses } from '#core/locate/hypotheses.ts';
import type { CircuitDuty, FaultClass } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Circuit, Panel } from '#core/map/records.ts';
import { straightWire } from '#tests/core/circuit/four-metre-wire.ts';
import { sample } from '#tests/sample.ts';

const cellCount = 80;
const kindsBetween = new Set(['ohms-between', 'drop-between', 'beep-between']);

/** Two wires of 0.35 mm2 side by side over 8 m, each 1 m of them under a panel of its own. */
function twoWires(
  changes: Partial<Circuit> = {},
  reversed = false,
): TestGrounds & { readonly map: MapDocument } {
  const branchesMm = [1000, 2000, 3000, 4000, 5000, 6000, 7000];
  const one = straightWire({ lengthMm: 8000, plugsMm: [], branchesMm, mm2: 0.35 });
  const { circuit } = one.line;
  const other: Circuit = {
    ...circuit,
    id: 'circuit:other',
    path: reversed ? circuit.path.map((step) => ({ ...step, reversed: true })).reverse() : circuit.path,
    ends: reversed ? [circuit.ends[1], circuit.ends[0]] : circuit.ends,
    ...changes,
  };
  const map = { ...one.map, circuits: new Map([...one.map.circuits, [other.id, other]]) };
  const laid = layStraight(map, circuit);
  if (!laid.ok) throw new Error(laid.problem.code);
  const cells = layHypotheses(
    Float64Array.from({ length: cellCount + 1 }, (_, i) => i * 100),
    [],
  );
  return {
    map,
    line: laid.value,
    cells,
    cellProbability: new Float64Array(cellCount).fill(1 / cellCount),
    stretches: [],
    entries: [],
    medianMm: 4000,
    probability: shares(cells.size, 'wire-to-wire', 1),
  };
}

/** So much chance on one class, even over the wire, and the rest on an open. */
function shares(size: number, kind: FaultClass, share: number): Float64Array {
  const { classes } = layHypotheses(new Float64Array([0, 1]), []);
  const row = new Float64Array(size);
  row.fill(
    (1 - share) / cellCount,
    classes.indexOf('open') * cellCount,
    (classes.indexOf('open') + 1) * cellCount,
  );
  const from = classes.indexOf(kind) * cellCount;
  row.fill(share / cellCount, from, from + cellCount);
  return row;
}

const between = (grounds: TestGrounds) => possibleTests(grounds).filter(({ kind }) => kindsBetween.has(kind));

describe('tests between two wires', () => {
  test('are ohms from both ends, a small current and a beep, where two wires touching is a live thought', () => {
    const tests = between(twoWires());
    expect(new Set(tests.map(({ kind }) => kind))).toEqual(kindsBetween);
    for (const each of tests) {
      expect(each.other?.circuitId).toBe('circuit:other');
      expect(each.nodeIds).toEqual(['node:module', 'node:switch']);
      expect(each.other?.nodeIds).toEqual(['node:module', 'node:switch']);
    }
  });

  test('say which end of the other wire lies beside which end of this one, however it was traced', () => {
    for (const each of between(twoWires({}, true)))
      expect(each.other?.nodeIds).toEqual(['node:module', 'node:switch']);
  });

  test('under every hypothesis the ways each may come out sum to one', () => {
    for (const { chances } of between(twoWires()))
      for (let i = 0; i < (chances[0]?.length ?? 0); i++)
        expect(chances.reduce((sum, row) => sum + (row[i] as number), 0)).toBeCloseTo(1, 9);
  });

  test('the ohms to look for are those of both wires up to the place, less those beyond', () => {
    const ohms = between(twoWires()).find(({ kind }) => kind === 'ohms-between');
    const last = ohms?.labels.filter(({ what }) => what === 'figure').at(-1);
    // At the far end: two wires of 8 m of 0.0544 ohm/m at 0.953 of that, nothing beyond.
    expect(last?.what === 'figure' ? last.to : 0).toBeCloseTo(2 * 8 * 0.0544 * 0.953, 6);
    expect(ohms?.expected?.value).toBeCloseTo(0, 6);
  });

  test('are not asked where touching is hardly thought of', () => {
    const grounds = twoWires();
    expect(between({ ...grounds, probability: shares(grounds.cells.size, 'wire-to-wire', 0.01) })).toEqual(
      [],
    );
    expect(between({ ...grounds, probability: undefined })).toEqual([]);
  });

  test('ask of the wire that fails too before one that works', () => {
    const grounds = twoWires();
    const third: Circuit = { ...(grounds.map.circuits.get('circuit:other') as Circuit), id: 'circuit:third' };
    const map = { ...grounds.map, circuits: new Map([...grounds.map.circuits, [third.id, third]]) };
    const asked = between({ ...grounds, map, alsoFailing: ['circuit:third'], working: ['circuit:other'] });
    expect(asked[0]?.other?.circuitId).toBe('circuit:third');
  });

  test('with one end read already only the other is asked for; with both, neither', () => {
    const grounds = twoWires();
    const reading = (nodeId: 'node:module' | 'node:switch'): JobEntry => ({
      id: `entry:${nodeId.slice(5)}`,
      at: '2026-01-05T09:00:00Z',
      type: 'reading',
      reading: {
        test: 'ohms',
        from: { on: 'wire', nodeId },
        to: { on: 'wire', nodeId, circuitId: 'circuit:other' },
        ohms: 0.5,
      },
      state: { apartNodeIds: [], switchClosed: null, ignitionOn: false, batteryConnected: false },
      note: '',
    });
    const ohms = (entries: readonly JobEntry[]) =>
      between({ ...grounds, entries }).find(({ kind }) => kind === 'ohms-between');
    expect(ohms([reading('node:module')])?.nodeIds).toEqual(['node:switch']);
    expect(ohms([reading('node:module'), reading('node:switch')])).toBeUndefined();
  });
});

describe('tests between two wires are never offered', () => {
  test.each<[string, CircuitDuty]>([
    ['an airbag wire', 'restraint'],
    ['a high-voltage wire', 'high-voltage'],
  ])('with %s beside', (_, duty) => {
    expect(between(twoWires({ duty }))).toEqual([]);
  });

  test('from an airbag or high-voltage wire itself', () => {
    const grounds = twoWires();
    for (const duty of ['restraint', 'high-voltage'] as const) {
      const line = { ...grounds.line, circuit: { ...grounds.line.circuit, duty } };
      expect(possibleTests({ ...grounds, line })).toEqual([]);
    }
  });

  test('with current into or out of a data wire', () => {
    const tests = between(twoWires({ duty: 'data' }));
    expect(tests.map(({ kind }) => kind)).not.toContain('drop-between');
    expect(tests.map(({ kind }) => kind)).toContain('ohms-between');
  });

  test('live: both wires are dead and unplugged at both ends', () => {
    const far: Circuit['ends'] = [
      { nodeId: 'node:module', kind: 'fused-supply' },
      { nodeId: 'node:switch', kind: 'load' },
    ];
    for (const changes of [{}, { ends: far, fuseA: 10 }])
      for (const { state, injection } of between(twoWires(changes))) {
        expect(state).toMatchObject({ batteryConnected: false, ignitionOn: false });
        expect(state.apartNodeIds).toEqual(expect.arrayContaining(['node:module', 'node:switch']));
        if (injection) expect(injection).toMatchObject({ way: 'limited-supply', amps: 0.1 });
      }
  });

  test('to a wire whose end nobody knows', () => {
    const grounds = twoWires();
    const other = grounds.map.circuits.get('circuit:other') as Circuit;
    const ends: Circuit['ends'] = [other.ends[0], { ...other.ends[1], nodeId: null }];
    expect(between(twoWires({ ends }))).toEqual([]);
  });
});

test('where every metre costs half an hour of trim, a test between the two wires is worth its minutes', () => {
  const grounds = twoWires();
  const panels = new Map(
    Array.from({ length: 8 }, (_, i): [Panel['id'], Panel] => {
      const id: Panel['id'] = `panel:p${i}`;
      return [id, { ...sample.tread, id, minutesOff: 30, offFirst: [] }];
    }),
  );
  const found = nextTests({
    ...grounds,
    map: { ...grounds.map, panels },
    probability: shares(grounds.cells.size, 'wire-to-wire', 1),
    stretches: [...panels.keys()].map((id, i) => ({
      segmentId: `segment:s${i + 1}`,
      fromMm: i * 1000,
      toMm: (i + 1) * 1000,
      panelIds: [id],
    })),
    parts: [],
    off: new Set(),
  });
  expect(kindsBetween).toContain(found[0]?.kind);
  expect(found[0]?.minutesSaved).toBeGreaterThan(10);
});
