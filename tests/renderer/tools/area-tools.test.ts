import { expect, test } from 'vitest';
import { emptyMap } from '#core/map/map-document.ts';
import { outlineTool } from '#renderer/tools/outline/outline-tool.ts';
import { panelTool } from '#renderer/tools/panel/panel-tool.ts';
import { rubSpotTool } from '#renderer/tools/rub-spot/rub-spot-tool.ts';
import { scaleTool } from '#renderer/tools/scale/scale-tool.ts';
import { toolInHand } from '../tool-view.ts';

const blank = emptyMap('map:blank', 'Blank', 'hatch', 'right');

test('pressing the first corner again closes an outline', () => {
  const hand = toolInHand(outlineTool, blank);
  hand.press(0, 0);
  hand.press(400, 0);
  hand.press(400, 300);
  hand.press(3, 2);
  const [outline] = [...hand.map.outlines.values()];
  expect(outline?.closed).toBe(true);
  expect(outline?.vertices).toHaveLength(3);
  expect(hand.selection).toEqual([outline?.id]);
});

test('Enter ends an outline open', () => {
  const hand = toolInHand(outlineTool, blank, { outlineKind: 'sill' });
  hand.press(0, 0);
  hand.press(400, 0);
  hand.key('Enter');
  const [outline] = [...hand.map.outlines.values()];
  expect(outline?.closed).toBe(false);
  expect(outline?.kind).toBe('sill');
});

test('two outlines drawn in turn come in that order and with names of their own', () => {
  const hand = toolInHand(outlineTool, blank);
  for (const y of [0, 500]) {
    hand.press(0, y);
    hand.press(400, y);
    hand.key('Enter');
  }
  const outlines = [...hand.map.outlines.values()].sort((a, b) => a.order - b.order);
  expect(outlines.map((outline) => outline.vertices[0]?.yMm)).toEqual([0, 500]);
  expect(new Set(outlines.map((outline) => outline.name)).size).toBe(2);
});

test('a panel needs three corners; two are kept until the third comes', () => {
  const hand = toolInHand(panelTool, blank);
  hand.press(0, 0);
  hand.press(400, 0);
  hand.key('Enter');
  expect(hand.map.panels.size).toBe(0);
  hand.press(400, 300);
  hand.key('Enter');
  const [panel] = [...hand.map.panels.values()];
  expect(panel?.area).toEqual([
    { xMm: 0, yMm: 0 },
    { xMm: 400, yMm: 0 },
    { xMm: 400, yMm: 300 },
  ]);
});

test('a rub spot is one press as a point and several as a line', () => {
  const point = toolInHand(rubSpotTool, blank);
  point.press(50, 60);
  expect([...point.map.rubSpots.values()][0]?.points).toEqual([{ xMm: 50, yMm: 60, zMm: 0 }]);
  const line = toolInHand(rubSpotTool, blank, { rubSpotShape: 'line', rubSpotKind: 'flange' });
  line.press(0, 0);
  line.press(80, 0);
  line.key('Enter');
  const [spot] = [...line.map.rubSpots.values()];
  expect(spot?.shape).toBe('line');
  expect(spot?.kind).toBe('flange');
  expect(spot?.points).toHaveLength(2);
});

test('the scale is asked for between two presses, and a third begins anew', () => {
  const hand = toolInHand(scaleTool, blank);
  hand.press(0, 0);
  hand.press(1000, 0);
  expect(hand.state.to).toEqual({ xMm: 1000, yMm: 0 });
  expect(hand.overlay.labels[0]?.text).toBe('1000');
  hand.press(50, 50);
  expect(hand.state).toMatchObject({ from: { xMm: 50, yMm: 50 }, to: null });
});
