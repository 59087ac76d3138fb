import { expect, test } from 'vitest';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { CircuitId, SegmentId } from '#core/quantity/id.ts';
import { besideTool } from '#renderer/tools/beside/beside-tool.ts';
import { clipTool } from '#renderer/tools/clip/clip-tool.ts';
import { paintTool } from '#renderer/tools/paint/paint-tool.ts';
import { routeTool } from '#renderer/tools/route/route-tool.ts';
import { traceTool } from '#renderer/tools/trace/trace-tool.ts';
import { sample } from '#tests/sample.ts';
import { toolInHand } from '../tool-view.ts';

const blank = emptyMap('map:blank', 'Blank', 'hatch', 'right');

/** One straight run from front to rear, 1000 mm long. */
function straight(): { readonly map: MapDocument; readonly run: SegmentId } {
  const hand = toolInHand(routeTool, blank);
  hand.press(0, 0);
  hand.press(1000, 0);
  hand.key('Enter');
  const [run] = [...hand.map.segments.keys()];
  if (!run) throw new Error('no run');
  return { map: hand.map, run };
}

test('a run drawn beside another lies at the pulled distance on the pulled side', () => {
  for (const [pullTo, yMm] of [
    [62, 60],
    [-38, -40],
  ] as const) {
    const hand = toolInHand(besideTool, straight().map);
    hand.press(500, 0);
    hand.press(500, pullTo);
    const added = [...hand.map.segments.values()].find((each) => hand.selection.includes(each.id));
    expect(added && hand.map.nodes.get(added.fromNodeId)?.at.yMm).toBeCloseTo(yMm, 6);
    expect(hand.map.segments.size).toBe(2);
  }
});

test('a run cannot be drawn on top of the one it goes beside', () => {
  const hand = toolInHand(besideTool, straight().map);
  hand.press(500, 0);
  hand.press(500, 1);
  expect(hand.map.segments.size).toBe(1);
  hand.key('Escape');
  expect(hand.state.segmentId).toBeNull();
});

const seat = 'panel:seat';
const tagsOf = (map: MapDocument, id: SegmentId) =>
  (map.segments.get(id)?.tags ?? []).map(({ panelId, fromMm, toMm, confirmed }) => ({
    panelId,
    fromMm: Math.round(fromMm),
    toMm: Math.round(toMm),
    confirmed,
  }));

test('dragging along a run paints the chosen panel over it as confirmed; with alt it is wiped off', () => {
  const hand = toolInHand(paintTool, sample.map, { paintPanelId: seat });
  hand.drag([1100, 0], [1300, 0]);
  const rear = 'segment:rear';
  const whole = tagsOf(hand.map, rear).find((tag) => tag.panelId === seat);
  expect(whole).toEqual({ panelId: seat, fromMm: 100, toMm: 300, confirmed: true });
  hand.drag([1200, 0], [1300, 0], true, { alt: true });
  expect(tagsOf(hand.map, rear).find((tag) => tag.panelId === seat)?.toMm).toBe(200);
});

test('a drag from one run into the next paints both up to the node they share', () => {
  const hand = toolInHand(paintTool, sample.map, { paintPanelId: seat });
  const { middle, rear } = sample;
  const node = sample.map.nodes.get(rear.fromNodeId)?.at;
  if (!node) throw new Error('no node');
  const on = (mm: number): [number, number] => [node.xMm + mm, node.yMm];
  hand.drag(on(-60), on(200));
  expect(tagsOf(hand.map, rear.id).some((tag) => tag.panelId === seat && tag.fromMm === 0)).toBe(true);
  expect(tagsOf(hand.map, middle.id).some((tag) => tag.panelId === seat && tag.toMm === 500)).toBe(true);
});

test('without a chosen panel, and after Escape, nothing is painted', () => {
  const none = toolInHand(paintTool, sample.map);
  none.drag([1100, 0], [1300, 0]);
  expect(none.map).toBe(sample.map);
  const dropped = toolInHand(paintTool, sample.map, { paintPanelId: seat });
  dropped.drag([1100, 0], [1300, 0], false);
  dropped.key('Escape');
  expect(dropped.effects).toEqual([{ type: 'preview', patch: null }]);
  expect(dropped.map).toBe(sample.map);
});

test('pressing a fixing says it is missing, and pressing it again that it is there', () => {
  const { map, run } = straight();
  const hand = toolInHand(clipTool, map);
  hand.press(300, 0);
  const missing = () => hand.map.segments.get(run)?.clips.map((clip) => clip.missing);
  expect(missing()).toEqual([false]);
  hand.press(300, 0);
  expect(missing()).toEqual([true]);
  hand.press(300, 0);
  expect(missing()).toEqual([false]);
});

/** Two ways between the same ends: straight on, and round by a side. */
function twoWays() {
  const drawing = toolInHand(routeTool, blank, { snapping: false });
  drawing.press(0, 0);
  drawing.press(300, 0);
  drawing.key('Enter');
  drawing.press(300, 0);
  drawing.press(700, 0);
  drawing.key('Enter');
  drawing.press(300, 0);
  drawing.press(500, 400);
  drawing.press(700, 0);
  drawing.key('Enter');
  drawing.press(700, 0);
  drawing.press(1000, 0);
  drawing.key('Enter');
  const hand = toolInHand(traceTool, drawing.map);
  hand.press(0, 0);
  hand.press(1000, 0);
  const [id] = hand.selection as readonly CircuitId[];
  if (!id) throw new Error('not traced');
  return { hand, id };
}

test('with a circuit picked, a press on a run sends it that way', () => {
  const { hand, id } = twoWays();
  const bendsOnWay = () =>
    (hand.map.circuits.get(id)?.path ?? []).map(
      ({ segmentId }) => hand.map.segments.get(segmentId)?.bends.length,
    );
  expect(bendsOnWay()).toEqual([0, 0, 0]);
  hand.pick([id]);
  hand.press(400, 200);
  expect(bendsOnWay()).toEqual([0, 1, 0]);
  expect(hand.traceChoice?.circuitId).toBe(id);
  expect(hand.map.circuits.get(id)?.ends.map((end) => end.nodeId)).not.toContain(null);
});
