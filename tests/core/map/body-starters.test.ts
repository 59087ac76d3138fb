import { describe, expect, it } from 'vitest';
import { flattenOutline } from '#core/geometry/outline-curve.ts';
import { polygonContains } from '#core/geometry/polygon.ts';
import { bodyProportions, type StarterStyle } from '#core/map/body-proportions.ts';
import { bodyStarter, usualBodySize } from '#core/map/body-starters.ts';
import { outlineSchema } from '#core/map/records.ts';

const styles = Object.keys(bodyProportions) as StarterStyle[];

const extent = (values: readonly number[]) => [Math.min(...values), Math.max(...values)];

describe.each(styles)('the %s starter', (style) => {
  const usual = usualBodySize(style);
  const measured = {
    lengthMm: Math.round(usual.lengthMm * 1.07),
    widthMm: Math.round(usual.widthMm * 0.96),
    wheelbaseMm: Math.round(usual.wheelbaseMm * 1.1),
  };

  it.each([
    ['usual', usual],
    ['measured', measured],
  ])('is as long and as wide as the %s car', (_, size) => {
    const shell = bodyStarter(style, size).filter((outline) => outline.kind === 'shell');
    expect(shell.length).toBe(1);
    const drawn = flattenOutline(shell[0]?.vertices ?? [], true, 0.5);
    const [frontMm = 0, rearMm = 0] = extent(drawn.map((point) => point.xMm));
    const [leftMm = 0, rightMm = 0] = extent(drawn.map((point) => point.yMm));
    expect(Math.abs(frontMm)).toBeLessThanOrEqual(2);
    expect(Math.abs(rearMm - size.lengthMm)).toBeLessThanOrEqual(2);
    expect(Math.abs(rightMm - leftMm - size.widthMm)).toBeLessThanOrEqual(4);
  });

  it('has its wheel arches a measured wheelbase apart', () => {
    const middleOf = (name: string) => {
      const outline = bodyStarter(style, measured).find((each) => each.name === name);
      const [fromMm = 0, toMm = 0] = extent((outline?.vertices ?? []).map((vertex) => vertex.xMm));
      return (fromMm + toMm) / 2;
    };
    const apartMm = middleOf('Left rear wheel arch') - middleOf('Left front wheel arch');
    expect(Math.abs(apartMm - measured.wheelbaseMm)).toBeLessThan(40);
  });

  it('is the same on the left as on the right', () => {
    const points = bodyStarter(style, usual).flatMap((outline) => outline.vertices);
    const right = new Set(points.map((vertex) => `${vertex.xMm} ${vertex.yMm}`));
    const lonely = points.filter((vertex) => !right.has(`${vertex.xMm} ${0 - vertex.yMm}`));
    expect(lonely).toEqual([]);
  });

  it('keeps seats, arches, sills, pillars and load floor within the shell, stretched or not', () => {
    for (const size of [usual, measured]) {
      const outlines = bodyStarter(style, size);
      const shell = flattenOutline(outlines[0]?.vertices ?? [], true);
      for (const outline of outlines.slice(1)) {
        const outside = flattenOutline(outline.vertices, outline.closed).filter(
          (point) => !polygonContains(shell, point),
        );
        expect(outside, outline.name).toEqual([]);
      }
    }
  });

  it('can be put on a map as it is', () => {
    const outlines = bodyStarter(style, usual);
    for (const [order, sketch] of outlines.entries()) {
      expect(outlineSchema.safeParse({ ...sketch, id: 'outline:a', order }).success).toBe(true);
    }
    expect(new Set(outlines.map((outline) => outline.name)).size).toBe(outlines.length);
  });
});
