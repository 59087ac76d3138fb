import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { layCircuit } from '#core/map/commands/lay-circuit.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { MapNode, PathStep, Segment } from '#core/map/records.ts';
import { segmentLine, wireLengthMm } from '#core/map/segment-line.ts';
import { farNodeId, runsAtNodes } from '#core/map/topology.ts';
import { tracePath } from '#core/map/trace-path.ts';
import { traceWays, wayLengthMm } from '#core/map/trace-ways.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { sample } from '#tests/sample.ts';

/** A square mesh of branches, so that there are many ways round, with wire lengths of its own. */
function mesh(side: number, lengths: readonly number[]): MapDocument {
  const nodes = new Map<NodeId, MapNode>();
  const segments = new Map<Segment['id'], Segment>();
  const id = (x: number, y: number): NodeId => `node:${x}-${y}`;
  const addRun = (from: NodeId, to: NodeId): void => {
    const measuredLengthMm = lengths[segments.size % lengths.length] ?? 100;
    const run: Segment = {
      ...sample.rear,
      id: `segment:${segments.size}`,
      fromNodeId: from,
      toNodeId: to,
      measuredLengthMm,
    };
    segments.set(run.id, run);
  };
  for (let x = 0; x < side; x++) {
    for (let y = 0; y < side; y++) {
      const at = { xMm: x * 100, yMm: y * 100, zMm: 0 };
      nodes.set(id(x, y), { id: id(x, y), name: '', kind: 'branch', at, panelIds: [], note: '' });
      if (x > 0) addRun(id(x - 1, y), id(x, y));
      if (y > 0) addRun(id(x, y), id(x, y - 1));
    }
  }
  return { ...sample.map, nodes, segments, circuits: new Map() };
}

/** Lengths of every way that passes no node twice, by walking them all. */
function everyWay(map: MapDocument, from: NodeId, to: NodeId): readonly number[] {
  const runs = runsAtNodes(map);
  const found: number[] = [];
  const walk = (at: NodeId, passed: ReadonlySet<NodeId>, mm: number): void => {
    if (at === to) {
      found.push(mm);
      return;
    }
    for (const run of runs.get(at) ?? []) {
      const far = farNodeId(run, at);
      const line = segmentLine(map, run);
      if (passed.has(far) || !line) continue;
      walk(far, new Set(passed).add(far), mm + wireLengthMm(run, line.lengthMm));
    }
  };
  walk(from, new Set([from]), 0);
  return found.sort((a, b) => a - b);
}

const nodesAlong = (map: MapDocument, path: readonly PathStep[]): readonly NodeId[] =>
  path.flatMap((step, i) => {
    const run = map.segments.get(step.segmentId) as Segment;
    const [start, end] = step.reversed ? [run.toNodeId, run.fromNodeId] : [run.fromNodeId, run.toNodeId];
    return i === 0 ? [start, end] : [end];
  });

describe('ways a wire could take', () => {
  test('are the shortest of all there are, in order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 101, max: 900 }), { minLength: 12, maxLength: 12 }),
        fc.integer({ min: 1, max: 9 }),
        (lengths, most) => {
          const map = mesh(3, lengths);
          const ways = traceWays(map, { fromNodeId: 'node:0-0', toNodeId: 'node:2-2' }, most);
          const all = everyWay(map, 'node:0-0', 'node:2-2');
          expect(ways.ok && ways.value.map((way) => way.lengthMm)).toEqual(all.slice(0, most));
        },
      ),
      { seed: 4, numRuns: 60 },
    );
  });

  test('each hang together from the one end to the other and pass no place twice', () => {
    const map = mesh(4, [100, 170, 240, 130, 360]);
    const ways = traceWays(map, { fromNodeId: 'node:0-0', toNodeId: 'node:3-2' }, 12);
    if (!ways.ok) throw new Error(ways.problem.code);
    expect(ways.value).toHaveLength(12);
    for (const { path, lengthMm } of ways.value) {
      const nodes = nodesAlong(map, path);
      expect(nodes[0]).toBe('node:0-0');
      expect(nodes.at(-1)).toBe('node:3-2');
      expect(new Set(nodes).size).toBe(nodes.length);
      expect(wayLengthMm(map, path)).toBe(lengthMm);
    }
    expect(new Set(ways.value.map(({ path }) => path.map((step) => step.segmentId).join())).size).toBe(12);
  });

  test('two runs side by side between the same plugs are two ways', () => {
    const twin: Segment = { ...sample.middle, id: 'segment:twin', measuredLengthMm: 640 };
    const map = { ...sample.map, segments: new Map(sample.map.segments).set(twin.id, twin) };
    const ways = traceWays(map, { fromNodeId: 'node:west', toNodeId: 'node:far' }, 5);
    expect(ways.ok && ways.value.map((way) => way.lengthMm)).toEqual([1500, 1640]);
  });

  test('no way leads through a part that ends a wire', () => {
    const map = mesh(3, [100]);
    const blocked = new Map(map.nodes);
    for (const id of ['node:1-1', 'node:0-1'] as const) {
      blocked.set(id, { ...(blocked.get(id) as MapNode), kind: 'module' });
    }
    const ways = traceWays({ ...map, nodes: blocked }, { fromNodeId: 'node:0-0', toNodeId: 'node:2-2' }, 9);
    expect(ways.ok && ways.value.map(({ path }) => path.length)).toEqual([4]);
  });

  test('a way leads through such a part where the circuit is known to pass it', () => {
    const nodes = new Map(sample.map.nodes);
    const middle = nodes.get('node:middle') as MapNode;
    nodes.set(middle.id, { ...middle, kind: 'fuse-box' });
    const wish = { fromNodeId: 'node:west', toNodeId: 'node:far' } as const;
    const map = { ...sample.map, nodes };
    expect(traceWays(map, wish, 3).ok).toBe(false);
    const ways = traceWays(map, { ...wish, through: ['node:middle'] }, 3);
    expect(ways.ok && ways.value.map((way) => way.lengthMm)).toEqual([1500]);
  });

  test('where nothing joins the two ends, that is said', () => {
    const map = { ...sample.map, segments: new Map() };
    expect(traceWays(map, { fromNodeId: 'node:west', toNodeId: 'node:far' }, 3)).toEqual({
      ok: false,
      problem: { code: 'no-path', fromNode: 'node:west', toNode: 'node:far' },
    });
  });
});

describe('a circuit laid along a way', () => {
  const laid = (path: readonly PathStep[]) => {
    const patch = layCircuit(sample.map, { circuitId: sample.circuit.id, path });
    const map = patch.ok ? applyPatch(sample.map, patch.value) : patch;
    const circuit = map.ok ? map.value.circuits.get(sample.circuit.id) : undefined;
    if (!map.ok || !circuit) throw new Error('not laid');
    return { map: map.value, circuit };
  };

  test('turned round it keeps what sits at each end, and its length', () => {
    const back = [...sample.circuit.path].reverse().map((step) => ({ ...step, reversed: !step.reversed }));
    const { map, circuit } = laid(back);
    expect(circuit.ends).toEqual([...sample.circuit.ends].reverse());
    const straight = layStraight(map, circuit);
    expect(straight.ok && straight.value.lengthMm).toBe(sample.line.lengthMm);
  });

  test('cut short it ends where it was cut, with nothing known of that end yet', () => {
    const { circuit } = laid(sample.circuit.path.slice(0, 2));
    expect(circuit.ends).toEqual([sample.circuit.ends[0], { nodeId: 'node:east', kind: 'other' }]);
  });

  test('a way with a gap, or none at all, is refused', () => {
    const gap = [sample.circuit.path[0], sample.circuit.path[2]] as PathStep[];
    const refused = layCircuit(sample.map, { circuitId: sample.circuit.id, path: gap });
    expect(refused.ok ? null : refused.problem.code).toBe('circuit-broken');
    const none = layCircuit(sample.map, { circuitId: sample.circuit.id, path: [] });
    expect(none.ok ? null : none.problem.code).toBe('circuit-untraced');
  });
});

test('the first way is the one the tracer offers', () => {
  const map = mesh(4, [310, 120, 470]);
  const wish = { fromNodeId: 'node:0-3', toNodeId: 'node:3-0' } as const;
  const [path, ways] = [tracePath(map, wish), traceWays(map, wish, 1)];
  expect(ways.ok && ways.value[0]?.path).toEqual(path.ok && path.value);
});
