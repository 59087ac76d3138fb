import { expect, test } from 'vitest';
import { addOutline } from '#core/map/commands/add-outline.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import { nodeTool } from '#renderer/tools/node/node-tool.ts';
import { outlineTool } from '#renderer/tools/outline/outline-tool.ts';
import { panelTool } from '#renderer/tools/panel/panel-tool.ts';
import { routeTool } from '#renderer/tools/route/route-tool.ts';
import { toolInHand } from '../tool-view.ts';

const blank = emptyMap('map:blank', 'Blank', 'hatch', 'right');

/** A map with one square outline, its corners at 0 and 1000. */
function withSquare(): MapDocument {
  const vertices = [
    [0, 0],
    [1000, 0],
    [1000, 1000],
    [0, 1000],
  ].map(([xMm, yMm]) => ({ xMm: xMm as number, yMm: yMm as number }));
  const outline = {
    id: 'outline:square' as const,
    name: 'Square',
    kind: 'shell' as const,
    closed: true,
    vertices,
    order: 0,
  };
  const patch = addOutline(blank, { outline });
  const map = patch.ok ? applyPatch(blank, patch.value) : patch;
  if (!map.ok) throw new Error(map.problem.code);
  return map.value;
}

const placesOf = (map: MapDocument): readonly (readonly [number, number])[] =>
  [...map.panels.values()].flatMap((panel) => panel.area.map(({ xMm, yMm }) => [xMm, yMm] as const));

test('a panel’s corners take hold of corners and edges of an outline', () => {
  const hand = toolInHand(panelTool, withSquare());
  hand.press(4, -5);
  hand.press(500, 6);
  hand.press(500, 400);
  hand.key('Enter');
  expect(placesOf(hand.map)).toEqual([
    [0, 0],
    [500, 0],
    [500, 400],
  ]);
});

test('a part set down alone takes hold of an edge, and of the grid where it is switched on', () => {
  const hand = toolInHand(nodeTool, withSquare(), { grid: true });
  hand.press(500, 6);
  hand.press(497, 404);
  expect([...hand.map.nodes.values()].map(({ at }) => [at.xMm, at.yMm])).toEqual([
    [500, 0],
    [500, 400],
  ]);
});

test('alt lets nothing take hold, and so does switching it off', () => {
  for (const free of [
    { choices: {}, keys: { alt: true } },
    { choices: { snapping: false }, keys: {} },
  ]) {
    const hand = toolInHand(panelTool, withSquare(), free.choices);
    hand.press(4, -5, free.keys);
    hand.press(500, 6, free.keys);
    hand.press(500, 400, free.keys);
    hand.key('Enter');
    expect(placesOf(hand.map)[0]).toEqual([4, -5]);
    expect(placesOf(hand.map)[1]).toEqual([500, 6]);
  }
});

test('the grid takes hold where no edge is near', () => {
  const hand = toolInHand(routeTool, withSquare(), { grid: true });
  hand.press(204, 306);
  hand.press(598, 703);
  hand.key('Enter');
  expect([...hand.map.nodes.values()].map((node) => [node.at.xMm, node.at.yMm])).toEqual([
    [200, 310],
    [600, 700],
  ]);
});

test('a half drawn mirrored from the centre line back to it becomes one whole outline', () => {
  const hand = toolInHand(outlineTool, blank, { mirror: true });
  hand.press(0, 4);
  hand.press(200, 700);
  hand.press(3800, 700);
  hand.press(4000, -3);
  hand.key('Enter');
  const outlines = [...hand.map.outlines.values()];
  expect(outlines).toHaveLength(1);
  expect(outlines[0]?.closed).toBe(true);
  expect(outlines[0]?.vertices.map(({ yMm }) => yMm)).toEqual([0, 700, 700, 0, -700, -700]);
});

test('a seat drawn mirrored on one side gets its twin on the other, in one step', () => {
  const hand = toolInHand(outlineTool, blank, { mirror: true, outlineKind: 'seat' });
  hand.press(1500, 200);
  hand.press(2000, 200);
  hand.press(2000, 600);
  hand.press(1500, 200);
  const yOf = [...hand.map.outlines.values()].map((each) => each.vertices.map(({ yMm }) => yMm));
  expect(yOf).toEqual([
    [200, 200, 600],
    [-200, -200, -600],
  ]);
});

test('an outline across the centre line is not doubled', () => {
  const hand = toolInHand(outlineTool, blank, { mirror: true });
  hand.press(0, -300);
  hand.press(900, -300);
  hand.press(900, 300);
  hand.key('Enter');
  expect(hand.map.outlines.size).toBe(1);
});

test('rounded bends are kept with the route that is drawn', () => {
  const hand = toolInHand(routeTool, blank, { smooth: true });
  hand.press(0, 0);
  hand.press(500, 0);
  hand.press(500, 500);
  hand.key('Enter');
  expect([...hand.map.segments.values()].map((run) => run.smooth)).toEqual([true]);
});
