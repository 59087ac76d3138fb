import { expect, test } from 'vitest';
import { emptyMap } from '#core/map/map-document.ts';
import { routeTool } from '#renderer/tools/route/route-tool.ts';
import { sample } from '#tests/sample.ts';
import { toolInHand } from '../tool-view.ts';

const blank = emptyMap('map:blank', 'Blank', 'hatch', 'right');

test('a route on an empty board is one run with its inner presses as bends', () => {
  const hand = toolInHand(routeTool, blank);
  hand.press(0, 0);
  hand.press(100, 0);
  hand.press(100, 200);
  hand.key('Enter');
  const [run] = [...hand.map.segments.values()];
  expect(hand.map.segments.size).toBe(1);
  expect(run?.bends).toEqual([{ xMm: 100, yMm: 0, zMm: 0 }]);
  expect([...hand.map.nodes.values()].map((node) => node.kind)).toEqual(['loose-end', 'loose-end']);
  expect(hand.selection).toEqual([run?.id]);
});

test('a route that starts on a run makes a branch there and leaves the lengths as they were', () => {
  const hand = toolInHand(routeTool, sample.map);
  hand.press(700, 2);
  hand.press(700, 300);
  hand.double(700, 300);
  const branch = [...hand.map.nodes.values()].find((node) => node.at.xMm === 700 && node.at.yMm === 0);
  expect(branch?.kind).toBe('branch');
  expect(hand.map.segments.size).toBe(5);
});

test('a route that ends on a node joins it rather than lying beside it', () => {
  const hand = toolInHand(routeTool, sample.map);
  hand.press(1000, 300);
  hand.press(1003, 4);
  hand.key('Enter');
  const added = [...hand.map.segments.values()].find((run) => !sample.map.segments.has(run.id));
  expect(added?.toNodeId).toBe('node:east');
});

test('shift keeps a free point to the eight directions', () => {
  const hand = toolInHand(routeTool, blank);
  hand.press(0, 0);
  hand.press(300, 14, { shift: true });
  hand.key('Enter');
  const [run] = [...hand.map.segments.values()];
  const end = run && hand.map.nodes.get(run.toNodeId);
  expect(end?.at.yMm).toBe(0);
  expect(end?.at.xMm).toBeCloseTo(Math.hypot(300, 14), 6);
});

test('the length shown while drawing is that of the line to the pointer', () => {
  const hand = toolInHand(routeTool, blank);
  hand.press(0, 0);
  hand.press(300, 0);
  hand.move(300, 400);
  expect(hand.overlay.labels[0]?.text).toBe('700');
});

test('backspace takes the last point back and Escape drops the route', () => {
  const hand = toolInHand(routeTool, blank);
  hand.press(0, 0);
  hand.press(300, 0);
  hand.key('Backspace');
  expect(hand.state.points).toHaveLength(1);
  hand.key('Escape');
  expect(hand.state.points).toHaveLength(0);
  expect(hand.map).toBe(blank);
});

test('a route that comes back to its own start is refused and stays on the board', () => {
  const hand = toolInHand(routeTool, sample.map);
  hand.press(1500, 0);
  hand.press(1600, 300);
  hand.press(1500, 0);
  hand.key('Enter');
  expect(hand.refused?.code).toBe('same-node');
  expect(hand.state.points).toHaveLength(3);
});
