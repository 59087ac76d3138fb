import { describe, expect, test } from 'vitest';
import { flattenOutline } from '#core/geometry/outline-curve.ts';
import { planDistanceToPathMm } from '#core/geometry/piece-distance.ts';
import { closeOutline } from '#core/map/commands/close-outline.ts';
import { insertVertex } from '#core/map/commands/insert-vertex.ts';
import { mirrorOutline } from '#core/map/commands/mirror-outline.ts';
import { moveVertex } from '#core/map/commands/move-vertex.ts';
import { removeVertex } from '#core/map/commands/remove-vertex.ts';
import { emptyMap, type MapDocument } from '#core/map/map-document.ts';
import type { Outline, Vertex } from '#core/map/records.ts';
import { edited } from '#tests/generated/edited.ts';

const id = 'outline:shell';

function mapWith(vertices: Vertex[], closed: boolean, centreLineYMm = 0): MapDocument {
  const map = emptyMap('map:o', 'O', 'hatch', 'right');
  const outline: Outline = { id, name: 'Shell', kind: 'shell', closed, vertices, order: 0 };
  return { ...map, details: { ...map.details, centreLineYMm }, outlines: new Map([[id, outline]]) };
}

const shell = (map: MapDocument): Outline => map.outlines.get(id) as Outline;

const half: Vertex[] = [
  { xMm: 0, yMm: 0, handleOut: { dxMm: 0, dyMm: 300 } },
  { xMm: 500, yMm: 800 },
  { xMm: 4000, yMm: 800, handleOut: { dxMm: 200, dyMm: -50 } },
  { xMm: 4300, yMm: 0, handleIn: { dxMm: 0, dyMm: 400 } },
];

describe('outlines', () => {
  test('a half drawn to the centre line becomes one whole without doubled corners', () => {
    const whole = shell(
      edited(mapWith(half, false), mirrorOutline(mapWith(half, false), { outlineId: id, how: 'complete' })),
    );
    expect(whole.closed).toBe(true);
    expect(whole.vertices.length).toBe(6);
    const line = flattenOutline(whole.vertices, true, 0.5);
    for (const point of line) {
      expect(planDistanceToPathMm({ xMm: point.xMm, yMm: -point.yMm }, line, true)).toBeLessThan(1);
    }
    const left = Math.min(...line.map((point) => point.yMm));
    expect(left).toBeCloseTo(-Math.max(...line.map((point) => point.yMm)), 6);
  });

  test('a mirrored copy lies as far on the other side of the centre line', () => {
    const map = mapWith(half, false, 100);
    const after = edited(map, mirrorOutline(map, { outlineId: id, how: 'copy', copyId: 'outline:twin' }));
    expect(after.outlines.get('outline:twin')?.vertices[1]).toEqual({ xMm: 500, yMm: -600 });
    expect(shell(after).vertices).toEqual(half);
  });

  test('a corner put into a bent edge does not change the shape', () => {
    for (const share of [0.2, 0.5, 0.9]) {
      const map = mapWith(half, true);
      const after = edited(map, insertVertex(map, { outlineId: id, edge: 2, share }));
      expect(shell(after).vertices.length).toBe(5);
      const before = flattenOutline(half, true, 0.1);
      for (const point of flattenOutline(shell(after).vertices, true, 0.1)) {
        expect(planDistanceToPathMm(point, before, true)).toBeLessThan(0.2);
      }
    }
  });

  test('the edge that closes an outline takes a corner too, but an open one has no such edge', () => {
    const closed = mapWith(half, true);
    const after = edited(closed, insertVertex(closed, { outlineId: id, edge: 3, share: 0.5 }));
    expect(shell(after).vertices.length).toBe(5);
    const open = mapWith(half, false);
    expect(insertVertex(open, { outlineId: id, edge: 3, share: 0.5 })).toMatchObject({
      problem: { code: 'bad-value', field: 'edge' },
    });
  });

  test('closing drops a last corner drawn on top of the first', () => {
    const map = mapWith([...half, { xMm: 0.2, yMm: 0 }], false);
    const after = shell(edited(map, closeOutline(map, { outlineId: id, closed: true })));
    expect(after).toMatchObject({ closed: true });
    expect(after.vertices.length).toBe(4);
  });

  test('two corners cannot be closed, and a triangle keeps its corners', () => {
    const two = mapWith(half.slice(0, 2), false);
    expect(closeOutline(two, { outlineId: id, closed: true })).toMatchObject({
      problem: { code: 'too-few-points', needed: 3, found: 2 },
    });
    const three = mapWith(half.slice(0, 3), true);
    expect(removeVertex(three, { outlineId: id, index: 0 })).toMatchObject({
      problem: { code: 'too-few-points', needed: 3, found: 2 },
    });
  });

  test('a moved corner keeps its handles unless they are set anew', () => {
    const map = mapWith(half, false);
    const at = { xMm: 10, yMm: 20 };
    const kept = edited(map, moveVertex(map, { outlineId: id, index: 0, at }));
    expect(shell(kept).vertices[0]).toEqual({ ...at, handleOut: { dxMm: 0, dyMm: 300 } });
    const straight = edited(map, moveVertex(map, { outlineId: id, index: 0, at, handleOut: null }));
    expect(shell(straight).vertices[0]).toEqual(at);
  });
});
