import { describe, expect, test } from 'vitest';
import { circuitFaults } from '#core/circuit/circuit-faults.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { drawRoute } from '#core/map/commands/draw-route.ts';
import { emptyMap } from '#core/map/map-document.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { edited } from '#tests/generated/edited.ts';
import { sample } from '#tests/sample.ts';

const at = (xMm: number, yMm: number) => ({ at: { xMm, yMm, zMm: 0 } });
const draw = (map: typeof sample.map, points: Parameters<typeof drawRoute>[1]['points']) =>
  drawRoute(map, { routeName: 'Roof', points }, seededChance(5));

describe('drawing a route', () => {
  test('on empty ground makes one run with bends between two loose ends', () => {
    const empty = emptyMap('map:e', 'E', 'hatch', 'right');
    const map = edited(empty, draw(empty, [at(0, 0), at(100, 0), at(100, 80), at(300, 80)]));
    const [run] = map.segments.values();
    expect(map.segments.size).toBe(1);
    expect([...map.nodes.values()].map((node) => node.kind)).toEqual(['loose-end', 'loose-end']);
    expect(run?.bends).toEqual([
      { xMm: 100, yMm: 0, zMm: 0 },
      { xMm: 100, yMm: 80, zMm: 0 },
    ]);
    expect(run?.routeName).toBe('Roof');
  });

  test('through nodes makes one run between each two of them', () => {
    const points = [
      { ...at(0, 0), snap: { nodeId: 'node:west' as const } },
      at(250, 200),
      { ...at(510, 3), snap: { nodeId: 'node:middle' as const } },
      { ...at(1500, 0), snap: { nodeId: 'node:far' as const } },
    ];
    const map = edited(sample.map, draw(sample.map, points));
    const drawn = [...map.segments.values()].filter((run) => run.routeName === 'Roof');
    expect(drawn.map((run) => [run.fromNodeId, run.toNodeId, run.bends.length])).toEqual([
      ['node:west', 'node:middle', 1],
      ['node:middle', 'node:far', 0],
    ]);
  });

  test('onto a run twice splits it twice, and circuits through it keep their length', () => {
    const points = [
      { ...at(600, 0), snap: { segmentId: 'segment:middle' as const, stationMm: 100 } },
      at(700, 300),
      { ...at(900, 0), snap: { segmentId: 'segment:middle' as const, stationMm: 400 } },
    ];
    const map = edited(sample.map, draw(sample.map, points));
    expect(map.segments.size).toBe(6);
    const circuit = map.circuits.get('circuit:seat-switch');
    expect(circuit?.path.length).toBe(5);
    expect(circuitFaults(map)).toEqual([]);
    const laid = circuit && layStraight(map, circuit);
    expect(laid?.ok && laid.value.lengthMm).toBeCloseTo(1500, 9);
  });

  test('onto the very end of a run uses the node that is there', () => {
    const points = [
      { ...at(0, 0), snap: { segmentId: 'segment:front' as const, stationMm: 500.3 } },
      at(500, 90),
    ];
    const map = edited(sample.map, draw(sample.map, points));
    expect(map.segments.size).toBe(4);
    expect([...map.segments.values()].at(-1)?.fromNodeId).toBe('node:middle');
  });

  test('on from a loose end makes that end a branch', () => {
    const empty = emptyMap('map:e', 'E', 'hatch', 'right');
    const first = edited(empty, draw(empty, [at(0, 0), at(100, 0)]));
    const end = [...first.nodes.values()][1];
    if (!end) throw new Error('no end drawn');
    const points = [{ at: end.at, snap: { nodeId: end.id } }, at(200, 50)];
    const map = edited(first, drawRoute(first, { routeName: 'On', points }, seededChance(6)));
    expect(map.nodes.get(end.id)?.kind).toBe('branch');
  });

  test('counts points on top of each other once', () => {
    const empty = emptyMap('map:e', 'E', 'hatch', 'right');
    const map = edited(empty, draw(empty, [at(0, 0), at(0, 0.2), at(50, 0), at(50, 0), at(90, 0)]));
    expect([...map.segments.values()][0]?.bends.length).toBe(1);
  });

  test('of one point, of no length or back to its own node is refused', () => {
    const snap = { nodeId: 'node:far' as const };
    expect(draw(sample.map, [at(0, 0)])).toMatchObject({ problem: { code: 'too-few-points' } });
    expect(draw(sample.map, [at(0, 0), at(0.1, 0)])).toMatchObject({ problem: { code: 'same-point' } });
    expect(draw(sample.map, [{ ...at(0, 0), snap }, at(9, 90), { ...at(0, 0), snap }])).toMatchObject({
      problem: { code: 'same-node', node: 'node:far' },
    });
  });

  test('with a source of chance that repeats itself still never takes an id that is there', () => {
    const empty = emptyMap('map:e', 'E', 'hatch', 'right');
    const first = edited(
      empty,
      drawRoute(empty, { routeName: 'A', points: [at(0, 0), at(9, 0)] }, seededChance(1)),
    );
    const again = drawRoute(first, { routeName: 'B', points: [at(0, 50), at(9, 50)] }, seededChance(1));
    expect(edited(first, again).segments.size).toBe(2);
  });
});
