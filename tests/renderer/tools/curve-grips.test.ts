import { expect, test } from 'vitest';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import { applyPatch } from '#core/map/patch.ts';
import type { OutlineId } from '#core/quantity/id.ts';
import { outlineTool } from '#renderer/tools/outline/outline-tool.ts';
import { bendCorner } from '#renderer/tools/select/curve-grips.ts';
import { cornerInHand, selectTool } from '#renderer/tools/select/select-tool.ts';
import { toolInHand } from '../tool-view.ts';

const blank = emptyMap('map:blank', 'Blank', 'hatch', 'right');

/** A wedge of three edges whose middle corner is rounded. */
function rounded(): { readonly map: MapDocument; readonly id: OutlineId } {
  const drawing = toolInHand(outlineTool, blank, { snapping: false });
  drawing.press(0, 0);
  drawing.press(500, 300);
  drawing.press(1000, 0);
  drawing.key('Enter');
  const [outline] = [...drawing.map.outlines.values()];
  if (!outline) throw new Error('nothing was drawn');
  const patch = bendCorner(drawing.map, outline.id, 1, true);
  const map = patch.ok ? applyPatch(drawing.map, patch.value) : patch;
  if (!map.ok) throw new Error(map.problem.code);
  return { map: map.value, id: outline.id };
}

const middleOf = (map: MapDocument, id: OutlineId) => map.outlines.get(id)?.vertices[1];

test('a rounded corner runs level between its neighbours, and goes straight again', () => {
  const { map, id } = rounded();
  expect(middleOf(map, id)?.handleOut?.dyMm).toBe(0);
  expect(middleOf(map, id)?.handleIn?.dxMm).toBeLessThan(0);
  const patch = bendCorner(map, id, 1, false);
  const after = patch.ok ? applyPatch(map, patch.value) : patch;
  expect(after.ok && middleOf(after.value, id)).toEqual({ xMm: 500, yMm: 300 });
});

test('pulling one handle of a corner turns the other with it; with alt it stays', () => {
  for (const alone of [false, true]) {
    const { map, id } = rounded();
    const hand = toolInHand(selectTool, map);
    hand.pick([id]);
    hand.press(500, 300);
    expect(cornerInHand(hand.state, { map: hand.map, selection: hand.selection })?.index).toBe(1);
    const out = middleOf(hand.map, id)?.handleOut;
    if (!out) throw new Error('no handle');
    hand.drag([500 + out.dxMm, 300 + out.dyMm], [500, 500], true, { alt: alone });
    const corner = middleOf(hand.map, id);
    expect(corner?.handleOut).toEqual({ dxMm: 0, dyMm: 200 });
    expect(Math.round(corner?.handleIn?.dxMm ?? 0) + 0).toBe(alone ? -out.dxMm : 0);
  }
});

test('Escape lays the corner down first and only then picks nothing', () => {
  const { map, id } = rounded();
  const hand = toolInHand(selectTool, map);
  hand.pick([id]);
  hand.press(500, 300);
  hand.key('Escape');
  expect(hand.state).toEqual({ at: 'rest' });
  expect(hand.selection).toEqual([id]);
  hand.key('Escape');
  expect(hand.selection).toEqual([]);
});

test('a corner put into a bent edge leaves the shape as it was', () => {
  const { map, id } = rounded();
  const hand = toolInHand(selectTool, map);
  hand.pick([id]);
  // The first edge half-way along its curve: 1/8 a + 3/8 b + 3/8 c + 1/8 d, with b on a.
  const [a, d] = map.outlines.get(id)?.vertices ?? [];
  const into = d?.handleIn;
  if (!a || !d || !into) throw new Error('no bent edge');
  const half = (from: number, handle: number, to: number): number =>
    from / 8 + (3 * from) / 8 + (3 * (to + handle)) / 8 + to / 8;
  hand.double(half(a.xMm, into.dxMm, d.xMm), half(a.yMm, into.dyMm, d.yMm));
  const vertices = hand.map.outlines.get(id)?.vertices ?? [];
  expect(vertices).toHaveLength(4);
  expect(vertices[1]?.xMm).toBeCloseTo(half(a.xMm, into.dxMm, d.xMm), 0);
});
