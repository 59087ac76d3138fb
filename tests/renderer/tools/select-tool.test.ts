import { expect, test } from 'vitest';
import { selectTool } from '#renderer/tools/select/select-tool.ts';
import { sample } from '#tests/sample.ts';
import { toolInHand } from '../tool-view.ts';

test('a press picks what lies under it, and a press on nothing lets all go', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.press(250, 3);
  expect(hand.selection).toEqual(['segment:front']);
  hand.press(250, 400);
  expect(hand.selection).toEqual([]);
});

test('shift adds to what is picked and takes out again', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.press(250, 0);
  hand.press(1000, 0, { shift: true });
  expect(hand.selection).toEqual(['segment:front', 'node:east']);
  hand.press(250, 0, { shift: true });
  expect(hand.selection).toEqual(['node:east']);
});

test('a press on one of several picks it alone, a drag from it moves them all', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.press(1500, 0);
  hand.press(0, 0, { shift: true });
  expect(hand.selection).toEqual(['node:far', 'node:west']);
  hand.drag([1500, 0], [1500, 60]);
  expect(hand.map.nodes.get('node:west')?.at.yMm).toBe(60);
  expect(hand.selection).toEqual(['node:far', 'node:west']);
  hand.press(1500, 60);
  expect(hand.selection).toEqual(['node:far']);
});

test('a rub spot of one point moves along with what else is picked', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.press(1500, 0);
  hand.press(750, 4, { shift: true });
  expect(hand.selection).toEqual(['node:far', 'rub-spot:edge']);
  hand.drag([750, 4], [750, 54]);
  expect(hand.map.rubSpots.get('rub-spot:edge')?.points[0]?.yMm).toBe(54);
  expect(hand.map.nodes.get('node:far')?.at.yMm).toBe(50);
});

test('dragging a node moves it once, at the end, to where it was let go', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.drag([1500, 0], [1500, 200], false);
  expect(hand.map).toBe(sample.map);
  expect(hand.effects[0]?.type).toBe('preview');
  hand.drag([1500, 0], [1500, 200]);
  expect(hand.map.nodes.get('node:far')?.at).toEqual({ xMm: 1500, yMm: 200, zMm: 0 });
  expect(hand.effects.map((effect) => effect.type)).toEqual(['preview', 'edit']);
});

test('Escape in the middle of a drag drops it and leaves the map untouched', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.drag([1500, 0], [1500, 200], false);
  hand.key('Escape');
  expect(hand.effects).toEqual([{ type: 'preview', patch: null }]);
  expect(hand.state).toEqual({ at: 'rest' });
  expect(hand.map).toBe(sample.map);
});

test('a hand that shakes by two pixels only picks', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.drag([1500, 0], [1502, 0]);
  expect(hand.map).toBe(sample.map);
  expect(hand.selection).toEqual(['node:far']);
});

test('a drag over a run that is not picked draws a box and picks what lies wholly in it', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.drag([450, -50], [1050, 50]);
  expect(hand.selection).toEqual(['node:east', 'node:middle', 'rub-spot:edge', 'segment:middle']);
});

test('a fixing slides along its run and never off it', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.drag([400, 0], [300, 90]);
  const stations = hand.map.segments.get('segment:front')?.clips.map((clip) => clip.stationMm);
  expect(stations).toEqual([100, 300]);
});

test('a double press on a picked run puts a bend there, which can then be dragged', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.pick(['segment:rear']);
  hand.double(1250, 0);
  expect(hand.map.segments.get('segment:rear')?.bends).toHaveLength(1);
  hand.drag([1250, 0], [1250, 120]);
  expect(hand.map.segments.get('segment:rear')?.bends[0]).toEqual({ xMm: 1250, yMm: 120, zMm: 0 });
});

test('Alt and a press take a bend out again', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.pick(['segment:rear']);
  hand.double(1250, 0);
  hand.press(1250, 0, { alt: true });
  expect(hand.map.segments.get('segment:rear')?.bends).toEqual([]);
});

test('Delete asks for what is picked to be removed and removes nothing itself', () => {
  const hand = toolInHand(selectTool, sample.map);
  hand.pick(['node:far']);
  hand.key('Delete');
  expect(hand.effects).toEqual([{ type: 'remove', ids: ['node:far'] }]);
  expect(hand.map).toBe(sample.map);
});
