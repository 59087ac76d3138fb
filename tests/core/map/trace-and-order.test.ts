import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changePanel } from '#core/map/commands/change-panel.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { offClosure, panelCycle, takeOffOrder } from '#core/map/panel-order.ts';
import type { Panel, PathStep } from '#core/map/records.ts';
import { segmentLine, wireLengthMm } from '#core/map/segment-line.ts';
import { connectedParts, farNodeId, runsAtNodes } from '#core/map/topology.ts';
import { tracePath } from '#core/map/trace-path.ts';
import type { NodeId, PanelId } from '#core/quantity/id.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { chanceBeside, randomMap } from '#tests/generated/random-map.ts';
import { sample } from '#tests/sample.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000 });

/** Shortest lengths from one node by relaxing every run until nothing changes (Bellman and Ford's method). */
function shortestByRelaxing(map: MapDocument, from: NodeId): ReadonlyMap<NodeId, number> {
  const through = new Set(['branch', 'inline-connector', 'splice', 'grommet']);
  const best = new Map<NodeId, number>([[from, 0]]);
  for (let round = 0; round <= map.nodes.size; round++) {
    for (const run of map.segments.values()) {
      const line = segmentLine(map, run);
      if (!line) continue;
      for (const [a, b] of [
        [run.fromNodeId, run.toNodeId],
        [run.toNodeId, run.fromNodeId],
      ] as const) {
        const passable = a === from || through.has(map.nodes.get(a)?.kind ?? '');
        const mm = (best.get(a) ?? Number.POSITIVE_INFINITY) + wireLengthMm(run, line.lengthMm);
        if (passable && mm < (best.get(b) ?? Number.POSITIVE_INFINITY)) best.set(b, mm);
      }
    }
  }
  return best;
}

function lengthOf(map: MapDocument, path: readonly PathStep[]): number {
  let mm = 0;
  for (const step of path) {
    const run = map.segments.get(step.segmentId);
    const line = run && segmentLine(map, run);
    if (run && line) mm += wireLengthMm(run, line.lengthMm);
  }
  return mm;
}

describe('tracing a circuit', () => {
  test('finds the shortest way there is, as found by a slower method', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const map = randomMap(seed, { runs: 30 });
        const nodes = [...map.nodes.keys()];
        const draw = drawFrom(chanceBeside(seed));
        const from = nodes[0] as NodeId;
        const to = draw.pick(nodes.slice(1));
        const path = tracePath(map, { fromNodeId: from, toNodeId: to });
        const best = shortestByRelaxing(map, from).get(to);
        expect(path.ok).toBe(best !== undefined);
        if (path.ok && best !== undefined) expect(lengthOf(map, path.value)).toBeCloseTo(best, 6);
      }),
      { seed: 41, numRuns: 100 },
    );
  });

  test('goes through the wished node, and not over a run to be avoided', () => {
    const wishes = { fromNodeId: 'node:west', toNodeId: 'node:far' } as const;
    const via = tracePath(sample.map, { ...wishes, viaNodeIds: ['node:east'] });
    expect(via.ok && via.value.map((step) => step.segmentId)).toEqual([
      'segment:front',
      'segment:middle',
      'segment:rear',
    ]);
    expect(tracePath(sample.map, { ...wishes, avoidSegmentIds: ['segment:middle'] })).toEqual({
      ok: false,
      problem: { code: 'no-path', fromNode: 'node:west', toNode: 'node:far' },
    });
  });

  test('does not run through a module on the way unless told to', () => {
    const middle = sample.map.nodes.get('node:middle');
    if (!middle) throw new Error('no middle node');
    const nodes = new Map(sample.map.nodes).set('node:middle', { ...middle, kind: 'module' });
    const map = { ...sample.map, nodes };
    const wishes = { fromNodeId: 'node:west', toNodeId: 'node:far' } as const;
    expect(tracePath(map, wishes)).toMatchObject({ problem: { code: 'no-path' } });
    expect(tracePath(map, { ...wishes, viaNodeIds: ['node:middle'] }).ok).toBe(true);
  });
});

describe('pieces of harness', () => {
  test('every run is in exactly one, and no run joins two of them', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const whole = randomMap(seed);
        const kept = [...whole.segments].filter((_, i) => i % 3 !== 0);
        const map = { ...whole, segments: new Map(kept) };
        const parts = connectedParts(map);
        const listed = parts.flatMap((part) => part.segmentIds);
        expect(listed.toSorted()).toEqual([...map.segments.keys()].toSorted());
        const partOf = new Map(parts.flatMap((part, i) => part.nodeIds.map((id) => [id, i] as const)));
        for (const run of map.segments.values()) {
          expect(partOf.get(run.fromNodeId)).toBe(partOf.get(run.toNodeId));
        }
        for (const [nodeId, runs] of runsAtNodes(map)) {
          for (const run of runs) expect(farNodeId(run, farNodeId(run, nodeId))).toBe(nodeId);
        }
      }),
      { seed: 43, numRuns: 100 },
    );
  });
});

/** Panels by number, each with the numbers that come off before it. */
const panels = (firsts: readonly (readonly number[])[]): ReadonlyMap<PanelId, Panel> =>
  new Map(
    firsts.map((list, order): [PanelId, Panel] => [
      `panel:p${order}`,
      { ...sample.seat, id: `panel:p${order}`, offFirst: list.map((i): PanelId => `panel:p${i}`), order },
    ]),
  );

const anyOrder = fc.array(fc.array(fc.nat(7), { maxLength: 3 }), { minLength: 8, maxLength: 8 });

describe('the order panels come off', () => {
  test('either there is a ring, told correctly, or an order in which nothing comes off too soon', () => {
    fc.assert(
      fc.property(anyOrder, (firsts) => {
        const table = panels(firsts);
        const ring = panelCycle(table);
        const order = takeOffOrder(table, table.keys());
        expect(order === null).toBe(ring !== null);
        if (ring) {
          for (const [i, id] of ring.entries()) {
            const before = ring[(i + ring.length - 1) % ring.length] as PanelId;
            expect(table.get(id)?.offFirst).toContain(before);
          }
        }
        const off = new Set<PanelId>();
        for (const id of order ?? []) {
          expect(table.get(id)?.offFirst.every((first) => off.has(first))).toBe(true);
          off.add(id);
        }
      }),
      { seed: 47, numRuns: 500 },
    );
  });

  test('whatever a panel waits for is in its closure, and nothing else', () => {
    const table = panels([[], [0], [1], [], [3]]);
    expect([...offClosure(table, ['panel:p2'])].sort()).toEqual(['panel:p0', 'panel:p1', 'panel:p2']);
  });

  test('a very long chain of panels is walked without trouble', () => {
    const table = panels(Array.from({ length: 20_000 }, (_, i) => [(i + 1) % 20_000]));
    expect(panelCycle(table)?.length).toBe(20_000);
  });

  test('a change that would make a panel wait for itself is refused with the ring', () => {
    const map = { ...sample.map, panels: panels([[], [0], [1]]) };
    expect(changePanel(map, { panelId: 'panel:p0', changes: { offFirst: ['panel:p2'] } })).toEqual({
      ok: false,
      problem: { code: 'panel-cycle', panels: ['panel:p1', 'panel:p2', 'panel:p0'] },
    });
  });
});
